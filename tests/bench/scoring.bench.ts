/** The engine: a plot of 60 marks against a reference of 30, its growth, where the time goes, and a rescore of 10,000. */
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import type { Reference, StoneBody } from "@/lib/plot/stone";
import { boundReadings } from "@/lib/scoring/bound-readings";
import { findCauses } from "@/lib/scoring/find-causes";
import { listPairs } from "@/lib/scoring/list-pairs";
import { matchMarks } from "@/lib/scoring/match-marks";
import { preparePlot } from "@/lib/scoring/prepare-plot";
import { prepareReference } from "@/lib/scoring/prepare-reference";
import { rankStones, type ScoreInput, scorePlot } from "@/lib/scoring/score-plot";
import type { Figure } from "@/tests/bench/run";
import {
  makeBody,
  makeInput,
  makePlot,
  makeReference,
  type PlotOptions,
} from "@/tests/support/scoring/make-case";

function timeAll(runs: number, work: (run: number) => unknown): number[] {
  return Array.from({ length: runs }, (_, run) => {
    const start = performance.now();
    work(run);
    return performance.now() - start;
  });
}

const getMedian = (times: readonly number[]) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;

/** Processor time that work took, all threads, in milliseconds: what counts where other programs keep the machine busy. */
function measureCpu(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Plots of different students on a few stones, all of one size: 60 marks are 30 that were seen and 30 strays. */
function makeInputs(
  count: number,
  references: number,
  marks: number,
  options: PlotOptions = {},
): ScoreInput[] {
  const stones = Array.from({ length: references }, (_, i) => makeReference(`bench ${i} ${count}`, count));
  const body: StoneBody = makeBody();
  return Array.from({ length: 40 }, (_, i) => {
    const reference = stones[i % stones.length] as Reference;
    const strays = Math.max(0, marks - count);
    const plot = makePlot(`bench ${i}`, reference, { overlooked: 0, strays, ...options });
    return makeInput(reference, plot, { stone: body, stoneId: `S-${i % stones.length}` });
  });
}

/** Warms the engine up on the inputs, then times each of them `rounds` times. */
function measureScoring(inputs: readonly ScoreInput[], rounds: number): number[] {
  const score = (run: number) => scorePlot(inputs[run % inputs.length] as ScoreInput);
  timeAll(2 * inputs.length, score);
  return timeAll(rounds * inputs.length, score);
}

function measureShares(inputs: readonly ScoreInput[], rounds = 20): Figure[] {
  const rubric = DEFAULT_RUBRIC;
  const cases = inputs.map((input) => {
    const prepared = prepareReference(input);
    const plotted = preparePlot(input.plot);
    const pairs = listPairs(prepared, plotted, rubric);
    return { input, prepared, plotted, pairs, matching: matchMarks(prepared, plotted, pairs, rubric) };
  });
  const at = (run: number) => cases[run % cases.length] as (typeof cases)[number];
  const runs = rounds * cases.length;
  const steps: [string, (run: number) => unknown][] = [
    ["measuring the plot's shapes", (run) => preparePlot(at(run).input.plot)],
    [
      "distances and values of pairs, one reading",
      (run) => listPairs(at(run).prepared, at(run).plotted, rubric),
    ],
    [
      "assignment, one reading",
      (run) => matchMarks(at(run).prepared, at(run).plotted, at(run).pairs, rubric),
    ],
    [
      "causes, one reading",
      (run) => findCauses(at(run).prepared, at(run).plotted, at(run).matching, [], rubric),
    ],
    ["bounds of 96 readings", (run) => boundReadings(at(run).prepared, at(run).plotted, true, rubric)],
  ];
  return steps.map(([name, work]) => {
    timeAll(cases.length, work);
    return { name: `  of which ${name}`, value: getMedian(timeAll(runs, work)), unit: "ms" };
  });
}

function measureMain(): Figure[] {
  const inputs = makeInputs(30, 4, 60);
  let times: number[] = [];
  measureScoring(inputs, 5);
  const cpu = measureCpu(() => {
    times = measureScoring(inputs, 18);
  });
  const sorted = [...times].sort((a, b) => a - b);
  const turned = measureScoring(makeInputs(30, 4, 60, { scatter: 0.06 }), 5);
  return [
    {
      name: "60 marks against 30, free orientation",
      value: getMedian(times),
      unit: "ms",
      note: "median; the aim is 2",
    },
    { name: "  90% of them within", value: sorted[Math.floor(0.9 * sorted.length)] ?? 0, unit: "ms" },
    {
      name: "  processor time of each",
      value: cpu / (20 * inputs.length),
      unit: "ms",
      note: "mean, compiling and clearing memory included",
    },
    ...measureShares(inputs),
    { name: "the same, drawn three times as badly", value: getMedian(turned), unit: "ms", note: "median" },
  ];
}

function measureGrowth(): Figure[] {
  return [10, 30, 100, 300].flatMap((count) => {
    const inputs = makeInputs(count, 1, count).slice(0, count > 50 ? 8 : 40);
    const whole = getMedian(measureScoring(inputs, 3));
    const shares = measureShares(inputs, count > 50 ? 3 : 20).map(({ name, value }) => ({
      name,
      value: (100 * value) / whole,
      unit: "%",
    }));
    return [{ name: `${count} marks against ${count}`, value: whole, unit: "ms" }, ...shares];
  });
}

function measureRescore(): Figure[] {
  const stones = Array.from({ length: 13 }, (_, i) => makeReference(`class ${i}`, 8));
  const body = makeBody();
  const inputs = Array.from({ length: 10_000 }, (_, i) => {
    const reference = stones[i % stones.length] as Reference;
    return makeInput(reference, makePlot(`class ${i}`, reference, { strays: i % 7 }), { stone: body });
  });
  let [whole = 0, cpu] = [0, 0];
  cpu = measureCpu(() => {
    [whole = 0] = timeAll(1, () => {
      for (const input of inputs) scorePlot(input);
    });
  });
  return [
    { name: "10,000 sittings rescored, processor time", value: cpu / 1000, unit: "s" },
    {
      name: "10,000 sittings rescored",
      value: whole / 1000,
      unit: "s",
      note: "8 marks a stone; the aim is 30",
    },
  ];
}

function measureTray(): Figure[] {
  const body = makeBody();
  const tray = Array.from({ length: 20 }, (_, i) =>
    makeInput(makeReference(`tray ${i}`, 12), { grades: {}, marks: [] }, { stone: body, stoneId: `T-${i}` }),
  );
  const prepared = tray.map((input) => prepareReference(input));
  const plot = makePlot("tray", (tray[3] as ScoreInput).reference, { overlooked: 0.5 });
  const times = timeAll(50, () => rankStones(plot, prepared, DEFAULT_RUBRIC));
  return [{ name: "stone check against a tray of 20", value: getMedian(times), unit: "ms", note: "median" }];
}

/** A stone of a cut that was not built before, then a second reference on the same stone. */
function measurePreparing(): Figure[] {
  const body = makeBody({ proportions: { tablePct: 58, crownAngleDeg: 34, pavilionAngleDeg: 41 } });
  const empty = { grades: {}, marks: [] };
  const inputs = [0, 1, 2].map((i) =>
    makeInput(makeReference(`cold ${i}`, 30, { flat: 0 }), empty, { stone: body }),
  );
  const [cold = 0, ...warm] = timeAll(3, (run) => prepareReference(inputs[run] as ScoreInput));
  return [
    {
      name: "a stone of 30 marks made ready: solid, beams, images",
      value: cold,
      unit: "ms",
      note: "once a stone",
    },
    {
      name: "another reference of 30 on the same stone",
      value: getMedian(warm),
      unit: "ms",
      note: "the aim is 100",
    },
  ];
}

/** The figures of the engine. */
export default async function (): Promise<Figure[]> {
  return [...measureMain(), ...measureGrowth(), ...measureRescore(), ...measureTray(), ...measurePreparing()];
}
