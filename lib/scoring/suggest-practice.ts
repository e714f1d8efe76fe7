/** What to practise, composed from the result: each sentence rests on something counted in it (SPEC 7.3). */
import type { View } from "@/lib/gem/point";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Cause } from "@/lib/plot/mark";
import type { ViewFit } from "@/lib/plot/score-result";
import type { WouldFit } from "@/lib/scoring/choose-reading";
import type { Exhibit } from "@/lib/scoring/exhibit";
import type { Stray } from "@/lib/scoring/find-causes";
import { nameCount, nameList } from "@/lib/scoring/name-things";
import type { GradeRating } from "@/lib/scoring/rate-grades";
import type { Outcome } from "@/lib/scoring/work-out";

/** What a suggestion draws on. */
export interface PracticeGround extends Exhibit {
  readonly strays: readonly Stray[];
  readonly grades: readonly GradeRating[];
  readonly counted: Pick<Outcome, "reading">;
  readonly wouldFit: WouldFit | null;
  readonly viewFit: ViewFit | null;
  readonly suspectStone: string | null;
}

const strayWords = (count: number) => (count === 1 ? "1 stray is" : `${count} strays are`);

const ADVICE: Readonly<Record<Exclude<Cause, "unexplained">, (count: number) => string>> = {
  dust: (count) =>
    `${strayWords(count)} put down to dust: wipe the stone with a dry lint-free cloth, as your school's rules for this stone allow, and plot a speck only if it is still there.`,
  echo: (count) =>
    `${strayWords(count)} put down to echoes: rock and tilt the stone, and plot a feature where it stays put while its reflections jump from facet to facet.`,
  glint: (count) =>
    `${strayWords(count)} put down to glints of metal: grip the stone anew, table to culet, and see whether the mark moves with the tweezers; beside a prong, look from the other side.`,
  double: (count) =>
    `${strayWords(count)} put down to a feature drawn twice: when you turn the stone over, ask of each mark whether it is one that you have drawn already, and draw it in one view only.`,
  fragment: (count) =>
    `${strayWords(count)} put down to a feature drawn in pieces: follow a feature to its end before you draw it, then draw it as one.`,
  "other-view": (count) =>
    `${strayWords(count)} put down to a feature seen from behind: draw an inside feature in the view in which it shows best.`,
};

function listStrayAdvice({ strays }: PracticeGround): string[] {
  const count = (cause: Cause) =>
    strays.filter((stray) => stray.cause === cause && stray.ruled?.isHeld !== false).length;
  const causes = (Object.keys(ADVICE) as (keyof typeof ADVICE)[]).filter((cause) => count(cause) > 0);
  const words = causes.sort((a, b) => count(b) - count(a)).map((cause) => ADVICE[cause](count(cause)));
  const open = count("unexplained");
  if (open > 0) {
    words.push(`Nothing accounts for ${nameCount(open, "stray")}: look there again with your instructor.`);
  }
  return words;
}

function countByName(names: readonly string[], plural = false): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  const words = [...counts].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
  return nameList(
    words.map(([name, n]) => `${n} ${toCharacteristicLabel(name)}${plural && n > 1 ? "s" : ""}`),
  );
}

function listOverlookedAdvice({ prepared, matching }: PracticeGround): string[] {
  const found = new Set([...matching.matched, ...matching.merges].map(({ reference }) => reference));
  const overlooked = prepared.marks.filter(({ optional }, index) => !optional && !found.has(index));
  if (overlooked.length === 0) return [];
  const names = countByName(overlooked.map(({ mark }) => mark.characteristic));
  const deciding = overlooked.filter(({ mark }) => mark.decidesGrade === true).length;
  const words = [`Overlooked: ${names}. Search facet by facet, in both views, before you hand in.`];
  if (deciding > 0) {
    words.push(
      deciding === 1
        ? "One mark that you overlooked decides the clarity grade."
        : `${deciding} marks that you overlooked decide the clarity grade.`,
    );
  }
  return words;
}

/** A match farther off than this says little of what a mark was taken for. */
const SURE_LOCATION = 0.5;

function listFoundAdvice({ prepared, laid, matching }: PracticeGround): string[] {
  const words: string[] = [];
  const off = matching.matched.filter(({ location }) => location < 1).length;
  if (off > 0) {
    words.push(
      `${off} of ${nameCount(matching.matched.length, "matched mark")} lay too far from the place: take the clock position and the nearest facet edge before you draw.`,
    );
  }
  const taken = matching.matched
    .filter(({ type, location }) => type < 1 && location >= SURE_LOCATION)
    .map(({ reference, plotted }) => {
      const [is, was] = [prepared.marks[reference]?.mark, laid[plotted]?.mark];
      return `${toCharacteristicLabel(is?.characteristic ?? "")} for ${toCharacteristicLabel(was?.characteristic ?? "")}`;
    });
  if (taken.length > 0) {
    words.push(`You took ${nameList([...new Set(taken)].sort())}: compare the two at the loupe.`);
  }
  const behind = matching.matched.filter(({ inOtherView }) => inOtherView).length;
  if (behind > 0) {
    words.push(
      `${nameCount(behind, "mark")} stood in the other view than the reference's and earned less for it.`,
    );
  }
  return words;
}

/**
 * "mirrored and turned by 45 degrees clockwise"; "left as it was drawn" where neither. A turn is clockwise as the crown is seen;
 * seen in the pavilion view it goes the other way round.
 */
function nameReading({ turnDeg, mirrored }: Pick<WouldFit, "turnDeg" | "mirrored">, view: View = "crown") {
  if (turnDeg === 0) return mirrored ? "mirrored" : "left as it was drawn";
  const isClockwise = turnDeg > 0 === (view === "crown");
  const turn = `turned by ${Math.abs(turnDeg)} degrees ${isClockwise ? "clockwise" : "counter-clockwise"}`;
  return mirrored ? `mirrored and ${turn}` : turn;
}

function nameViewFit({ view, gain, ...reading }: ViewFit, countedTurnDeg: number): string {
  // Where the whole plot counts as turned so, the view is mirrored and no more.
  const isMirrorOnly = reading.mirrored && reading.turnDeg === countedTurnDeg;
  const how = isMirrorOnly ? "mirrored" : nameReading(reading, view);
  const why = reading.mirrored
    ? "it may have been drawn from the other side, where left and right change places; find the landmark before you draw a view"
    : "find the landmark again each time you turn the stone over, and hold both views by it";
  return `Your ${view} view would fit better by ${gain} points if it alone were ${how}: ${why}.`;
}

function listReadingAdvice({ counted, wouldFit, viewFit, suspectStone }: PracticeGround): string[] {
  const words: string[] = [];
  if (suspectStone !== null) {
    words.push(`The marks fit stone ${suspectStone} better than this one: make sure which stone you had.`);
  }
  if (wouldFit !== null) {
    const { mirrored, gain } = wouldFit;
    const why = mirrored
      ? "a view may have been drawn from the wrong side"
      : "check how you hold the stone before you draw";
    words.push(`Your plot would fit better by ${gain} points if it were ${nameReading(wouldFit)}: ${why}.`);
  }
  if (viewFit !== null) words.push(nameViewFit(viewFit, counted.reading.turnDeg));
  return words;
}

function listGradeAdvice({ grades }: PracticeGround): string[] {
  const off = grades.filter(
    ({ steps, ruled }) => ruled === undefined && steps !== null && Math.abs(steps) >= 2,
  );
  if (off.length === 0) return [];
  const names = off.map(({ property, steps }) => `${property} by ${Math.abs(steps ?? 0)} steps`);
  return [`Off in ${nameList(names)}: grade again with the reference beside you.`];
}

/** Sentences in the order in which they matter; none for a plot with nothing to better. */
export function suggestPractice(ground: PracticeGround): string[] {
  // Where the whole plot seems turned or of another stone, how far each mark lies off says nothing of its own.
  const isOffReading = ground.wouldFit !== null || ground.viewFit !== null || ground.suspectStone !== null;
  return [
    ...listReadingAdvice(ground),
    ...listOverlookedAdvice(ground),
    ...listStrayAdvice(ground),
    ...(isOffReading ? [] : listFoundAdvice(ground)),
    ...listGradeAdvice(ground),
  ];
}
