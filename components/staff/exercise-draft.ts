/** An exercise while it is filled in. Pure. */
import { z } from "zod";
import type { Fault } from "@/lib/base/app-error";
import {
  type ExerciseRules,
  ExerciseRulesSchema,
  LONGEST_MINUTES,
  MOST_ATTEMPTS,
  PROOF_SCOPES,
} from "@/lib/plot/exercise-rules";
import { RubricSchema } from "@/lib/plot/rubric";

/** A number that is being typed; empty: none. */
const numberText = z.union([z.number(), z.literal("")]);
const instantText = z.union([z.iso.datetime(), z.literal("")]);

export const ExerciseDraftSchema = z.strictObject({
  sectionId: z.string(),
  title: z.string().max(400),
  notes: z.string().max(20_000),
  opensAt: instantText,
  dueAt: instantText,
  /** Empty: it stays open. */
  closesAt: instantText,
  /** Empty: when staff release them. */
  debriefsAt: instantText,
  preparation: ExerciseRulesSchema.shape.preparation.unwrap(),
  schoolRules: z.string().max(8000),
  proofs: z.enum(PROOF_SCOPES),
  areProofsRequired: z.boolean(),
  isDottingOn: z.boolean(),
  burstDots: numberText,
  burstGapS: numberText,
  /** Empty: no limit. */
  minutesPerStone: numberText,
  attempts: numberText,
  isInOrder: z.boolean(),
  areLabelsHidden: z.boolean(),
  orientation: RubricSchema.shape.orientation,
  /** In the order in which students see them. */
  stoneIds: z.array(z.string()),
  /** By stone; empty or missing: with the exercise. Of stones that are not chosen too, should they be again. */
  stoneOpenings: z.record(z.string(), instantText).default({}),
});
export type ExerciseDraft = z.infer<typeof ExerciseDraftSchema>;

/** What is sent once nothing is at fault. */
export interface ExerciseInput {
  readonly sectionId: string;
  readonly title: string;
  readonly notes: string;
  readonly opensAt: string;
  readonly dueAt: string;
  readonly closesAt: string | null;
  readonly debriefsAt: string | null;
  readonly rules: ExerciseRules;
  readonly orientation: ExerciseDraft["orientation"];
  readonly stoneIds: readonly string[];
  readonly stoneOpenings: Readonly<Record<string, string>>;
}

/** Faults of the numbers that the bench goes by. */
function findRuleFaults(draft: ExerciseDraft): Fault[] {
  const { isDottingOn, burstDots, burstGapS, minutesPerStone: minutes, attempts } = draft;
  const isWhole = (value: number | "", least: number, most: number) =>
    value !== "" && Number.isInteger(value) && value >= least && value <= most;
  const faults: Fault[] = [];
  if (isDottingOn && !isWhole(burstDots, 2, 100)) {
    faults.push({ path: "burstDots", message: "a whole number from 2 to 100" });
  }
  if (isDottingOn && (burstGapS === "" || burstGapS <= 0 || burstGapS > 60)) {
    faults.push({ path: "burstGapS", message: "more than 0 and at most 60 seconds" });
  }
  if (!isWhole(attempts, 1, MOST_ATTEMPTS)) {
    faults.push({ path: "attempts", message: `a whole number from 1 to ${MOST_ATTEMPTS}` });
  }
  if (minutes !== "" && !isWhole(minutes, 1, LONGEST_MINUTES)) {
    faults.push({
      path: "minutesPerStone",
      message: `a whole number from 1 to ${LONGEST_MINUTES}, or empty`,
    });
  }
  return faults;
}

/** What the bench asks for. Numbers that are off or empty are the defaults. */
function toRules(draft: ExerciseDraft): ExerciseRules {
  const { isDottingOn, burstDots, burstGapS, minutesPerStone, attempts, proofs } = draft;
  return ExerciseRulesSchema.parse({
    preparation: draft.preparation,
    schoolRules: draft.schoolRules.trim(),
    proofs,
    areProofsRequired: draft.areProofsRequired && proofs !== "none",
    dotting: {
      isOn: isDottingOn,
      ...(isDottingOn && burstDots !== "" ? { burstDots } : {}),
      ...(isDottingOn && burstGapS !== "" ? { burstGapMs: Math.round(1000 * burstGapS) } : {}),
    },
    minutesPerStone: minutesPerStone === "" ? null : minutesPerStone,
    ...(attempts === "" ? {} : { attempts }),
    isInOrder: draft.isInOrder,
    areLabelsHidden: draft.areLabelsHidden,
  });
}

/** The openings of the chosen stones that have one of their own. */
function listOpenings({ stoneIds, stoneOpenings }: ExerciseDraft): [stoneId: string, iso: string][] {
  return stoneIds.flatMap((stoneId) => {
    const iso = stoneOpenings[stoneId] ?? "";
    return iso === "" ? [] : [[stoneId, iso]];
  });
}

/** Faults of the stones' openings; a date of the exercise that is still empty is no measure. */
function findOpeningFaults(draft: ExerciseDraft): Fault[] {
  return listOpenings(draft).flatMap(([stoneId, iso]) => {
    const path = `stoneOpenings.${stoneId}`;
    const at = Date.parse(iso);
    if (at < Date.parse(draft.opensAt)) return [{ path, message: "must not be earlier than the exercise" }];
    if (at >= Date.parse(draft.dueAt)) return [{ path, message: "must be earlier than it is due" }];
    return [];
  });
}

/** What keeps a draft from being sent, each at its field. */
export function findExerciseFaults(draft: ExerciseDraft): Fault[] {
  const faults: Fault[] = [];
  const add = (path: keyof ExerciseDraft, message: string) => faults.push({ path, message });
  if (draft.sectionId === "") add("sectionId", "choose the section that it is set for");
  if (draft.title.trim() === "") add("title", "give the exercise a title");
  if (draft.opensAt === "") add("opensAt", "say when it opens");
  if (draft.dueAt === "") add("dueAt", "say when it is due");
  if (draft.opensAt !== "" && draft.dueAt !== "" && Date.parse(draft.dueAt) <= Date.parse(draft.opensAt)) {
    add("dueAt", "must be later than it opens");
  }
  if (draft.closesAt !== "" && draft.dueAt !== "" && Date.parse(draft.closesAt) < Date.parse(draft.dueAt)) {
    add("closesAt", "must not be earlier than it is due");
  }
  if (
    draft.debriefsAt !== "" &&
    draft.dueAt !== "" &&
    Date.parse(draft.debriefsAt) < Date.parse(draft.dueAt)
  ) {
    add("debriefsAt", "must not be earlier than it is due");
  }
  if (draft.stoneIds.length === 0) add("stoneIds", "choose at least one stone");
  return [...faults, ...findOpeningFaults(draft), ...findRuleFaults(draft)];
}

/** The draft as it is sent. */
export function toExerciseInput(draft: ExerciseDraft): ExerciseInput {
  return {
    sectionId: draft.sectionId,
    title: draft.title.trim(),
    notes: draft.notes.trim(),
    opensAt: draft.opensAt,
    dueAt: draft.dueAt,
    closesAt: draft.closesAt === "" ? null : draft.closesAt,
    debriefsAt: draft.debriefsAt === "" ? null : draft.debriefsAt,
    rules: toRules(draft),
    orientation: draft.orientation,
    stoneIds: draft.stoneIds,
    stoneOpenings: Object.fromEntries(listOpenings(draft)),
  };
}
