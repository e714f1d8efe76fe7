/** The steps of the preparation card, in our own words (screens.md, Bench). */
import type { PREPARATION_STEPS } from "@/lib/plot/sitting-event";

export type PreparationStep = (typeof PREPARATION_STEPS)[number];

export const STEP_WORDS: Readonly<Record<PreparationStep, { readonly title: string; readonly how: string }>> =
  {
    cleaned: {
      title: "The stone is clean and wiped",
      how: "Wipe it with a lint-free cloth and look again: dust moves, an inclusion stays.",
    },
    held: {
      title: "It is held the right way round",
      how: "Grip it girdle to girdle, the crown up, and turn it until it lies as the diagram does.",
    },
    tilted: {
      title: "I rock and tilt it before I trust what I see",
      how: "A reflection jumps or vanishes as the stone tilts; a feature moves with the stone.",
    },
    regripped: {
      title: "I will look a second time, gripped table to culet",
      how: "The tweezers hide and reflect at the girdle. From another grip, what they made is gone.",
    },
  };
