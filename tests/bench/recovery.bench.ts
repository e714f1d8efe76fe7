/**
 * How often the engine finds out what really happened. 2,000 simulated sittings of the demo's error model (seeded)
 * on the stones of exercise-sets/ are scored; the model's own truth says which plotted mark came from which
 * reference mark, in which turn the stone was held, and why each stray is there. The figures speak of this invented
 * model only, not of students. Prints tables for the README besides its figures.
 */
import { createSeededRandom } from "@/lib/base/seeded-random";
import type { GroundTruth, MarkOrigin } from "@/lib/demo/ground-truth";
import { listFeatureImages } from "@/lib/demo/list-feature-images";
import { type SimulatedStone, simulateSitting } from "@/lib/demo/simulate-sitting";
import { drawStudentSkill } from "@/lib/demo/student-skill";
import type { Solid } from "@/lib/gem/solid";
import { CAUSES } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";
import type { ScoredPlot } from "@/lib/plot/score-result";
import { scorePlots } from "@/lib/scoring/score-plot";
import type { Figure } from "@/tests/bench/run";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

const SITTINGS = 2000;

interface Case {
  readonly simulated: SimulatedStone;
  readonly plot: Plot;
  readonly truth: GroundTruth;
  readonly scored: ScoredPlot;
}

function simulateCases(): Case[] {
  const sets = listExerciseSets();
  const stones = sets.flatMap(({ resolved }) =>
    resolved.set.stones.map((stone, index) => {
      const { characteristics, scales } = resolved;
      const solid = resolved.solids[index] as Solid;
      const images = listFeatureImages(stone, solid, characteristics);
      return { resolved, simulated: { stone, solid, characteristics, scales, images } };
    }),
  );
  const drafts = Array.from({ length: SITTINGS }, (_, i) => {
    const at = stones[i % stones.length] as (typeof stones)[number];
    const skill = drawStudentSkill(createSeededRandom(`recovery/skill/${i}`));
    return { ...at, ...simulateSitting(at.simulated, skill, `recovery/sitting/${i}`) };
  });
  return sets.flatMap(({ resolved }) => {
    const own = drafts.filter((draft) => draft.resolved === resolved);
    const plots = own.map(({ plot, simulated }, i) => ({ stone: simulated.stone.id, by: `s${i}`, ...plot }));
    const scored = scorePlots(resolved, { format: "loupework/plots", version: 1, plots });
    return own.map(({ simulated, plot, truth }, i) => ({
      simulated,
      plot,
      truth,
      scored: scored[i] as ScoredPlot,
    }));
  });
}

/** What the engine says of a plotted mark: the reference mark that it gave, or the cause. */
function getVerdict({ result, detail }: ScoredPlot, mark: string): string {
  const given = [...result.found, ...detail.setAside].filter((pair) => pair.mark === mark);
  if (given.length > 0)
    return `reference ${given
      .map(({ reference }) => reference)
      .sort()
      .join("+")}`;
  return result.strays.find((stray) => stray.mark === mark)?.cause ?? "nothing";
}

const toTruth = (origin: MarkOrigin): string => {
  if (origin.kind === "merged") return `reference ${[...origin.references].sort().join("+")}`;
  return origin.kind === "feature" ? `reference ${origin.reference}` : origin.cause;
};

/** The reference marks that a plotted mark is honestly of: a piece of a feature is of it too. */
function listReferences(origin: MarkOrigin): readonly string[] {
  if (origin.kind === "merged") return origin.references;
  if (origin.kind === "feature") return [origin.reference];
  return origin.cause === "fragment" && origin.of !== null ? [origin.of] : [];
}

/** Was it in the sheet's own frame that the engine read the plot? */
const isTurnRight = ({ truth, scored }: Case) => scored.result.alignment.turnDeg === truth.layBackTurnDeg;

/** Was it said that the plot, or its pavilion, fits mirrored? */
const saysMirrored = ({ scored: { result, detail } }: Case) =>
  result.alignment.wouldFit?.mirrored === true ||
  (detail.viewFit?.view === "pavilion" && detail.viewFit.mirrored);

/** How many features of the pavilion view were drawn in it. */
function countPavilionFeatures({ simulated, plot, truth }: Case): number {
  const isOfPavilion = (reference: string) =>
    simulated.stone.marks.some(({ id, view }) => id === reference && view === "pavilion");
  return truth.origins.filter(
    ({ mark, origin }) =>
      origin.kind === "feature" &&
      isOfPavilion(origin.reference) &&
      plot.marks.find(({ id }) => id === mark)?.view === "pavilion",
  ).length;
}

/** A piece of a feature that the engine gave the reference mark in place of the piece that the model calls the whole. */
function isGivenToSibling({ truth, scored }: Case, reference: string): boolean {
  const siblings = truth.origins.filter(
    ({ origin }) =>
      origin.kind === "stray" && origin.of === reference && ["fragment", "double"].includes(origin.cause),
  );
  return siblings.some(({ mark }) => getVerdict(scored, mark) === `reference ${reference}`);
}

/** Why a mark of a real feature was not given its reference mark. */
function explainLoss(one: Case, mark: string, origin: Extract<MarkOrigin, { kind: "feature" }>): string {
  const view = one.plot.marks.find(({ id }) => id === mark)?.view;
  if (isGivenToSibling(one, origin.reference))
    return "another piece or view of the same feature was given it";
  if (!isTurnRight(one)) return "the plot was read in another turn than it was drawn in";
  if (one.truth.isPavilionMirrored && view === "pavilion") return "the pavilion was drawn mirrored";
  if (getVerdict(one.scored, mark).startsWith("reference")) return "it lay nearer to another reference mark";
  const taken = one.scored.result.found.some(({ reference }) => reference === origin.reference);
  if (taken) return "a stray lay nearer to its reference mark";
  return origin.view === "other"
    ? "seen from the other side, it was drawn too far from its image there"
    : "it was drawn too far off or too large";
}

function count<T>(items: readonly T[], toKey: (item: T) => string): Map<string, number> {
  const counts = new Map<string, number>();
  for (const item of items) counts.set(toKey(item), (counts.get(toKey(item)) ?? 0) + 1);
  return counts;
}

const percent = (part: number, whole: number) =>
  whole === 0 ? "–" : `${((100 * part) / whole).toFixed(1)} %`;

function printTable(title: string, head: readonly string[], rows: readonly (readonly (string | number)[])[]) {
  console.log(`\n### ${title}\n\n| ${head.join(" | ")} |\n|${head.map(() => " --- |").join("")}`);
  for (const row of rows) console.log(`| ${row.join(" | ")} |`);
}

interface Share {
  readonly name: string;
  readonly right: number;
  readonly of: number;
}

const share = <T>(name: string, items: readonly T[], isRight: (item: T) => boolean): Share => ({
  name,
  right: items.filter(isRight).length,
  of: items.length,
});

function reportMarks(cases: readonly Case[]): Share[] {
  const marks = cases.flatMap((one) =>
    one.truth.origins.map(({ mark, origin }) => ({
      one,
      mark,
      origin,
      verdict: getVerdict(one.scored, mark),
    })),
  );
  const isRight = (item: (typeof marks)[number]) => item.verdict === toTruth(item.origin);
  const isOfIts = ({ origin, verdict }: (typeof marks)[number]) =>
    listReferences(origin).some((reference) => verdict.split(" ")[1]?.split("+").includes(reference));
  const features = marks.filter(({ origin }) => origin.kind === "feature");
  const ownView = features.filter(({ origin }) => origin.kind === "feature" && origin.view === "own");
  const plain = ownView.filter(({ one }) => one.truth.heldTurnDeg === 0 && !one.truth.isPavilionMirrored);
  const lost = features.filter((item) => !isRight(item));
  const reasons = count(lost, ({ one, mark, origin }) =>
    explainLoss(one, mark, origin as Extract<MarkOrigin, { kind: "feature" }>),
  );
  printTable(
    "Marks of real features that were not given their reference mark",
    ["why", "marks", "of all such marks"],
    [...reasons].sort((a, b) => b[1] - a[1]).map(([why, n]) => [why, n, percent(n, features.length)]),
  );
  const given = marks.filter(({ verdict }) => verdict.startsWith("reference"));
  const merged = marks.filter(({ origin }) => origin.kind === "merged");
  const strays = marks.filter(({ origin }) => origin.kind === "stray");
  reportCauses(strays);
  return [
    share("feature drawn in its own view, held straight: paired with its reference mark", plain, isRight),
    share("the same in any hold", ownView, isRight),
    share(
      "feature drawn in the other view: paired",
      features.filter((f) => !ownView.includes(f)),
      isRight,
    ),
    share("several features drawn as one: one of them found", merged, isOfIts),
    share("several features drawn as one: all of them found", merged, isRight),
    share("pairs that the engine made: of the feature that was drawn", given, isOfIts),
    share("strays: recognised as strays", strays, ({ verdict }) => !verdict.startsWith("reference")),
    share("strays: with their true cause", strays, isRight),
  ];
}

function reportCauses(strays: readonly { origin: MarkOrigin; verdict: string }[]) {
  const columns = [...CAUSES, "taken for a feature"];
  const rows = CAUSES.map((cause) => {
    const own = strays.filter(({ origin }) => origin.kind === "stray" && origin.cause === cause);
    const verdicts = count(own, ({ verdict }) =>
      verdict.startsWith("reference") ? "taken for a feature" : verdict,
    );
    return [cause, own.length, ...columns.map((column) => percent(verdicts.get(column) ?? 0, own.length))];
  });
  printTable(
    "Causes of strays: the truth (rows) and what the engine says",
    ["truth", "marks", ...columns],
    rows,
  );
}

function reportTurns(cases: readonly Case[]): Share[] {
  const isCandidate = ({ truth, simulated }: Case) =>
    truth.heldTurnDeg !== 0 &&
    Math.abs(truth.heldTurnDeg) % (360 / 8) === 0 &&
    simulated.stone.marks.length > 0;
  const turned = cases.filter(isCandidate);
  const straight = cases.filter(({ truth }) => truth.heldTurnDeg === 0);
  const halfOff = cases.filter(({ truth }) => Math.abs(truth.heldTurnDeg) === 22.5);
  const isSupported = ({ truth, simulated }: Case) => {
    const counted = new Set(simulated.stone.marks.filter(({ optional }) => !optional).map(({ id }) => id));
    return (
      truth.origins.filter(({ origin }) => origin.kind === "feature" && counted.has(origin.reference))
        .length >= 3
    );
  };
  const mirrored = cases.filter(({ truth }) => truth.isPavilionMirrored);
  const isReadable = (one: Case) => countPavilionFeatures(one) >= 2;
  const says = ({ scored, truth }: Case) =>
    scored.result.alignment.turnDeg === 0 &&
    scored.result.alignment.wouldFit?.turnDeg === truth.layBackTurnDeg;
  return [
    share("held straight: read straight", straight, isTurnRight),
    share("held turned, three features or more drawn: turn found", turned.filter(isSupported), isTurnRight),
    share(
      "held turned, fewer than three drawn: turn found",
      turned.filter((c) => !isSupported(c)),
      isTurnRight,
    ),
    share("held half a facet off: said so, without points", halfOff, says),
    share(
      "pavilion mirrored, two of its features or more drawn: said so",
      mirrored.filter(isReadable),
      saysMirrored,
    ),
    share(
      "pavilion mirrored, one or none drawn: said so",
      mirrored.filter((one) => !isReadable(one)),
      saysMirrored,
    ),
    share(
      "pavilion not mirrored: no view said to be mirrored",
      cases.filter(({ truth }) => !truth.isPavilionMirrored),
      (one) => !saysMirrored(one),
    ),
  ];
}

/** Runs the simulation; prints the tables; the figures are shares in percent. */
export default async function measure(): Promise<Figure[]> {
  const cases = simulateCases();
  const shares = [...reportTurns(cases), ...reportMarks(cases)];
  const marks = cases.reduce((sum, { plot }) => sum + plot.marks.length, 0);
  printTable(
    `${cases.length} simulated sittings with ${marks} marks`,
    ["what really happened", "cases", "recovered"],
    shares.map(({ name, right, of }) => [name, of, percent(right, of)]),
  );
  console.log("");
  return shares.map(({ name, right, of }) => ({
    name: name.slice(0, 57),
    value: of === 0 ? 0 : (100 * right) / of,
    unit: "%",
    note: `${right} of ${of}`,
  }));
}
