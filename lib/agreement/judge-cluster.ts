/** Whether a place that several students mark is more than chance: the threshold under which nothing is suggested. */
import { computePoissonTail } from "@/lib/agreement/poisson-tail";
import { type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** The rules, this project's own choice; `EVIDENCE_THRESHOLD_WORDS` says them. */
export const EVIDENCE_RULES = {
  /** Girdle widths: marks nearer than this to a place are marks of it. The rubric's `near` and a little. */
  radius: 0.04,
  /** Fewer students than this have handed the stone in: nothing is said of it. */
  fewestStudents: 8,
  fewestMarking: 4,
  /** The 95 % interval of the share of students who mark it must lie above this. */
  leastShare: 0.1,
  /** How often strays strewn at random would make such a place anywhere on the stone. */
  chance: 0.01,
} as const;

export const EVIDENCE_THRESHOLD_WORDS =
  "A place is only suggested when at least 8 students have handed the stone in, at least 4 of them marked it, the " +
  "interval of their share lies above 10 %, and strays strewn over the stone at random would pile up like that less " +
  "than once in a hundred stones.";

export interface ClusterJudgement {
  /** Share of the students who mark the place, each counted once (Wilson). */
  readonly share: Statistic;
  /** How many students would mark it if their strays lay anywhere. */
  readonly expected: number;
  /** At most so likely is a pile of this size anywhere on the stone by chance. */
  readonly chance: number;
  readonly isEnough: boolean;
}

export interface ClusterGround {
  /** Students who handed the stone in. */
  readonly students: number;
  /** Of each student with strays in the cluster's view: how many. */
  readonly strays: readonly number[];
  /** The area of a view within the girdle, in square girdle widths. */
  readonly area: number;
}

/**
 * Judges a cluster of `marking` students. By chance a student with s strays marks a given place with 1 - (1 - a)^s, a being
 * the place's share of the view; the number of students who do is bounded by a Poisson tail, and multiplied by four times
 * the number of such places in both views, since the densest was picked (Bonferroni; four, for places that overlap).
 * RangeError where more students mark than there are.
 */
export function judgeCluster(marking: number, ground: ClusterGround): ClusterJudgement {
  const { students, strays, area } = ground;
  if (marking > students) throw new RangeError(`judgeCluster: ${marking} of ${students} students`);
  const own = Math.min(1, (Math.PI * EVIDENCE_RULES.radius ** 2) / area);
  const expected = strays.reduce((sum, count) => sum + 1 - (1 - own) ** count, 0);
  const chance = Math.min(1, ((2 * 4) / own) * computePoissonTail(marking, expected));
  const share =
    students < EVIDENCE_RULES.fewestStudents
      ? toUndefined(`fewer than ${EVIDENCE_RULES.fewestStudents} students have handed this stone in`)
      : computeWilsonInterval(marking, students);
  return {
    share,
    expected,
    chance,
    isEnough:
      "value" in share &&
      marking >= EVIDENCE_RULES.fewestMarking &&
      share.low > EVIDENCE_RULES.leastShare &&
      chance < EVIDENCE_RULES.chance,
  };
}

/** The fewest students whose marks of one place would be enough; null where even all of them would not be. */
export function findFewestEnough(ground: ClusterGround): number | null {
  for (let marking = EVIDENCE_RULES.fewestMarking; marking <= ground.students; marking += 1) {
    if (judgeCluster(marking, ground).isEnough) return marking;
  }
  return null;
}
