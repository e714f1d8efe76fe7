/** One plot scored by two rubrics: what came of each mark by the one and by the other. Pure. */
import { CAUSE_LABELS, type DebriefRow, listDebriefRows } from "@/components/debrief/debrief-row";
import type { resolveTerms } from "@/lib/plot/exercise-terms";
import type { RubricExample } from "@/lib/plot/rescore-view";
import type { Rubric } from "@/lib/plot/rubric";
import type { ScoredPlot } from "@/lib/plot/score-result";
import type { DebriefView } from "@/lib/plot/student-view";
import { scorePlot } from "@/lib/scoring/score-plot";

export type ResolvedTerms = ReturnType<typeof resolveTerms>;

/** Scores the example by a rubric, as a rescore would, save for the look at the tray's other stones. */
export function scoreExample(example: RubricExample, rubric: Rubric, terms: ResolvedTerms): ScoredPlot {
  const { label, ...stone } = example.stone;
  return scorePlot({
    stoneId: label,
    by: "example",
    // The engine remembers what it measures with the reference object.
    stone: keepBody(example, stone),
    reference: example.reference,
    plot: example.plot,
    rubric,
    ...terms,
  });
}

const bodies = new WeakMap<RubricExample, Omit<RubricExample["stone"], "label">>();

function keepBody(example: RubricExample, stone: Omit<RubricExample["stone"], "label">) {
  const known = bodies.get(example);
  if (known !== undefined) return known;
  bodies.set(example, stone);
  return stone;
}

/** The example as a debrief reads it: what the overlays and the rows are drawn from. */
export function toExampleView(
  example: RubricExample,
  rubric: Rubric,
  terms: ResolvedTerms,
  scored: ScoredPlot,
): DebriefView {
  return {
    sittingId: example.sittingId,
    exerciseId: "",
    exerciseTitle: "",
    studentName: example.studentName,
    stone: example.stone,
    scales: terms.scales,
    characteristics: [...terms.characteristics.values()].map((one) => ({ ...one, like: [...one.like] })),
    openedAt: "",
    handedInAt: "",
    timedOut: false,
    dotting: { isOn: true, burstDots: rubric.dust.burstDots, burstGapMs: rubric.dust.burstGapMs },
    releasedAt: null,
    plot: example.plot,
    prepared: {},
    reference: example.reference,
    referenceVersion: 0,
    rubricVersion: 0,
    near: rubric.near,
    far: rubric.far,
    ...scored,
    events: [],
    notes: [],
    overrules: [],
    comments: [],
  };
}

/** One thing of the plot or of the reference, under both rubrics. */
export interface OutcomePair {
  readonly key: string;
  readonly title: string;
  readonly place: string;
  readonly before: string;
  readonly after: string;
  readonly isChanged: boolean;
}

function toWords(rows: readonly DebriefRow[], key: string): string {
  const row = rows.find((one) => one.key === key);
  if (row === undefined) {
    return rows.some((one) => one.partnerKey === key) ? "found" : "not counted";
  }
  if (row.outcome === "found") return `found, ${Math.round((row.value ?? 0) * 100)} %`;
  if (row.outcome === "stray") return `stray: ${CAUSE_LABELS[row.cause ?? "unexplained"].toLowerCase()}`;
  return row.outcome === "overlooked" ? "overlooked" : "set aside";
}

/** What came of each mark by both, those that differ first. */
export function pairOutcomes(before: DebriefView, after: DebriefView): OutcomePair[] {
  const [rowsBefore, rowsAfter] = [listDebriefRows(before), listDebriefRows(after)];
  const all = new Map([...rowsBefore, ...rowsAfter].map((row) => [row.key, row]));
  const pairs = [...all.values()].map(({ key, title, place }): OutcomePair => {
    const [was, is] = [toWords(rowsBefore, key), toWords(rowsAfter, key)];
    return { key, title, place, before: was, after: is, isChanged: was !== is };
  });
  return pairs.toSorted((a, b) => Number(b.isChanged) - Number(a.isChanged));
}

/** What the points come from, by both; points as shown. */
export function listPointPairs(
  before: { readonly rubric: Rubric; readonly scored: ScoredPlot },
  after: { readonly rubric: Rubric; readonly scored: ScoredPlot },
): { readonly what: string; readonly before: number; readonly after: number }[] {
  const read = ({ rubric, scored: { result, detail } }: typeof before) => {
    const found = rubric.shares.plot * detail.foundShare;
    const plot = rubric.shares.plot * Math.max(0, detail.foundShare - detail.deduction);
    return { found, strays: plot - found, grades: result.total - plot, total: result.total };
  };
  const [was, is] = [read(before), read(after)];
  return [
    { what: "What was found", before: was.found, after: is.found },
    { what: "Strays", before: was.strays, after: is.strays },
    { what: "Grades", before: was.grades, after: is.grades },
    { what: "Total", before: was.total, after: is.total },
  ];
}
