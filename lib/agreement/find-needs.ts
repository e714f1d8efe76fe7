/** Which students an instructor should have a word with, by rules that can be said in a sentence. */
import type { Rates } from "@/lib/agreement/derive-rates";
import type { RaschPlace } from "@/lib/agreement/fit-rasch";
import { isDefined } from "@/lib/agreement/statistic";
import { getCount, sumTally } from "@/lib/agreement/tally";

export interface StudentEvidence {
  readonly studentId: string;
  readonly name: string;
  readonly rates: Rates;
  readonly found: number;
  readonly overlooked: number;
  /** Of `fitRasch`: what the student finds, whichever stones they sat. */
  readonly ability: RaschPlace;
  /** Stones that are past due, and how many of them were handed in. */
  readonly due: number;
  readonly handedInOfDue: number;
}

export const NEED_KINDS = ["overlooks", "strays", "harsh", "lenient", "hand-in"] as const;
export type NeedKind = (typeof NEED_KINDS)[number];

export interface StudentNeed {
  readonly studentId: string;
  readonly name: string;
  readonly kind: NeedKind;
  /** The numbers that the rule rests on, in a sentence. */
  readonly evidence: string;
}

/** Below this many plots nothing is said of how a student plots. */
export const LEAST_PLOTS = 3;
/** Fewer students with a place on the scale than this have no middle to be held against. */
export const LEAST_PLACED = 5;
/** A bias is told where even the near end of its interval is beyond this, steps. */
export const BIAS_STEPS = 0.5;

/** The rules as they are shown with what they find. */
export const NEED_RULES: Readonly<Record<NeedKind, string>> = {
  overlooks: `Overlooks much: on the scale that allows for which stones were sat, the whole 95 % interval lies below the section's middle student (${LEAST_PLOTS} plots or more, ${LEAST_PLACED} students or more with a place).`,
  strays: `Draws what is not there: the whole 95 % interval of strays on a stone lies above the section's mean (${LEAST_PLOTS} plots or more).`,
  harsh: `Grades harshly: the whole 95 % interval of the clarity bias lies above half a step (${LEAST_PLOTS} grades or more).`,
  lenient: `Grades leniently: the whole 95 % interval of the clarity bias lies below half a step (${LEAST_PLOTS} grades or more).`,
  "hand-in": "Hands little in: fewer than half of the stones that are past due (two stones or more).",
};

const toOne = (value: number) => value.toFixed(1);

/** The middle of the abilities that have a value; null where too few have one. */
function findMiddle(students: readonly StudentEvidence[]): number | null {
  const values = students.flatMap(({ ability }) => (isDefined(ability) ? [ability.value] : []));
  if (values.length < LEAST_PLACED) return null;
  const sorted = values.sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const [low, high] = [sorted[sorted.length % 2 === 0 ? half - 1 : half] ?? 0, sorted[half] ?? 0];
  return (low + high) / 2;
}

function findLittleFound(student: StudentEvidence, middle: number | null): string | null {
  const { ability, found, overlooked, rates } = student;
  if (rates.plots < LEAST_PLOTS || middle === null) return null;
  const isBelow = isDefined(ability)
    ? ability.high < middle
    : "beyond" in ability && ability.beyond === "below";
  return isBelow ? `Found ${found} of ${found + overlooked} reference marks.` : null;
}

function findManyStrays({ rates }: StudentEvidence, section: Rates): string | null {
  const [own, all] = [rates.straysPerPlot, section.straysPerPlot];
  if (rates.plots < LEAST_PLOTS || !isDefined(own) || !isDefined(all) || own.low <= all.value) return null;
  const total = sumTally(rates.strays);
  const [cause = ""] = Object.keys(rates.strays).sort(
    (a, b) => getCount(rates.strays, b) - getCount(rates.strays, a),
  );
  const most = getCount(rates.strays, cause);
  const mostly = most * 2 > total ? ` ${most} of ${total} are of the cause ${cause}.` : "";
  return `${toOne(own.value)} strays on a stone (${toOne(own.low)} to ${toOne(own.high)}); the section ${toOne(all.value)}.${mostly}`;
}

function findBias({ rates }: StudentEvidence): { kind: "harsh" | "lenient"; evidence: string } | null {
  const clarity = rates.grades.clarity;
  if (clarity === undefined || clarity.graded < LEAST_PLOTS || !isDefined(clarity.bias)) return null;
  const { value, low, high } = clarity.bias;
  const kind = low > BIAS_STEPS ? "harsh" : high < -BIAS_STEPS ? "lenient" : null;
  if (kind === null) return null;
  const [near, far] = kind === "harsh" ? [low, high] : [-high, -low];
  return {
    kind,
    evidence: `${toOne(Math.abs(value))} steps ${kind} on average (${toOne(near)} to ${toOne(far)}) over ${clarity.graded} grades.`,
  };
}

/**
 * Who needs a word and why, by NEED_RULES; a student can be named by several. Intervals at 95 % that lie wholly on one side
 * name about one student in forty by chance alone, so the screen says so. This project's own rules, not a published
 * method. No student: nobody.
 */
export function findNeeds(students: readonly StudentEvidence[], section: Rates): StudentNeed[] {
  const middle = findMiddle(students);
  return students.flatMap((student) => {
    const { studentId, name, due, handedInOfDue } = student;
    const needs: StudentNeed[] = [];
    const add = (kind: NeedKind, evidence: string | null) => {
      if (evidence !== null) needs.push({ studentId, name, kind, evidence });
    };
    add("overlooks", findLittleFound(student, middle));
    add("strays", findManyStrays(student, section));
    const bias = findBias(student);
    if (bias) add(bias.kind, bias.evidence);
    if (due >= 2 && handedInOfDue * 2 < due) {
      add("hand-in", `Handed in ${handedInOfDue} of ${due} stones that are past due.`);
    }
    return needs;
  });
}
