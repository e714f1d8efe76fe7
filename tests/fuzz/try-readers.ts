/** The readers alone, without a database: each broken file through them, and what they took written and read again. */
import { readFileSync } from "node:fs";
import { createSeededRandom, type SeededRandom } from "@/lib/base/seeded-random";
import { decodeText } from "@/lib/exchange/decode-text";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { readPlots } from "@/lib/exchange/read-plots";
import { readRoster } from "@/lib/exchange/read-roster";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { writePlots } from "@/lib/exchange/write-plots";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { scorePlots } from "@/lib/scoring/score-plot";
import { BrokenPromise, type CaseOutcome, judgeCase } from "@/tests/fuzz/judge-case";
import { deepen, mutateBytes } from "@/tests/fuzz/mutate-bytes";
import { mutateJson } from "@/tests/fuzz/mutate-json";
import { drawOneRoster, drawPlainRoster, drawZippedRoster } from "@/tests/fuzz/mutate-roster";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";
import { makeSampleSet } from "@/tests/support/sample-set";

const PLOTS = new URL("../golden/cases/cli/", import.meta.url);

interface Base {
  readonly set: { readonly stones: readonly { readonly id: string }[] };
  readonly resolved: ResolvedSet;
  readonly plots: { readonly plots: readonly { readonly stone: string }[] };
}

/** The library's sets, and the plots of the golden cases on them. */
function readBases(): readonly Base[] {
  return listExerciseSets().map(({ name, text }) => ({
    set: JSON.parse(text),
    resolved: readExerciseSet(text),
    plots: JSON.parse(readFileSync(new URL(name.replace(/(\.json)?$/, ".plots.json"), PLOTS), "utf8")),
  }));
}

/** A set to break: one or two stones of a library's set, or the small sample, so that faults are not lost in bulk. */
function drawSet(bases: readonly Base[], random: SeededRandom): unknown {
  if (random.chance(0.3)) return makeSampleSet();
  const { set } = random.pick(bases);
  const from = random.int(set.stones.length);
  return { ...set, stones: set.stones.slice(from, from + 1 + random.int(2)) };
}

/** The bytes of a file, broken at one of the three levels. */
function breakFile(value: unknown, random: SeededRandom): Uint8Array {
  const level = random.pick(["bytes", "structure", "value", "value"] as const);
  if (level === "bytes") return mutateBytes(new TextEncoder().encode(JSON.stringify(value, null, 1)), random);
  return new TextEncoder().encode(JSON.stringify(mutateJson(value, level, random)));
}

/** A broken set that is JSON, as its text. */
export function drawBrokenSet(random: SeededRandom): string {
  const broken = mutateJson(drawSet(readBasesOnce(), random), random.pick(["structure", "value"]), random);
  const text = JSON.stringify(broken);
  if (!random.chance(0.03)) return text;
  return new TextDecoder().decode(deepen(new TextEncoder().encode(text), random));
}

let bases: readonly Base[] | null = null;
function readBasesOnce(): readonly Base[] {
  bases ??= readBases();
  return bases;
}

/** Plots of the reference itself: what a set that was taken must be able to score. */
function scoreItself(resolved: ResolvedSet): void {
  const plots = resolved.set.stones.map(({ id, grades, marks }) => ({
    stone: id,
    by: "itself",
    grades,
    marks: marks.map((mark) => ({
      id: mark.id,
      view: mark.view,
      characteristic: mark.characteristic,
      shape: mark.shape,
    })),
  }));
  requireFinite(scorePlots(resolved, { format: "loupework/plots", version: 1, plots }));
}

function requireFinite(scored: ReturnType<typeof scorePlots>): void {
  const odd = scored.find(({ result: { total } }) => !(total >= 0 && total <= 100));
  if (odd !== undefined) throw new BrokenPromise(`a total of ${odd.result.total}`);
}

function requireSame(once: string, twice: string): void {
  if (once !== twice) throw new BrokenPromise("written, read and written again it is another");
}

const ONE_IN = 8;

function trySet(random: SeededRandom): () => void {
  const bytes = breakFile(drawSet(readBasesOnce(), random), random);
  const isScored = random.int(ONE_IN) === 0;
  return () => {
    const resolved = readExerciseSet(decodeText(bytes, "set.json"));
    const text = writeExerciseSet(resolved.set);
    requireSame(text, writeExerciseSet(readExerciseSet(text).set));
    if (isScored) scoreItself(resolved);
  };
}

function tryPlots(random: SeededRandom): () => void {
  const { plots, resolved } = random.pick(readBasesOnce());
  const from = random.int(plots.plots.length);
  const bytes = breakFile({ ...plots, plots: plots.plots.slice(from, from + 2) }, random);
  const isScored = random.int(ONE_IN) === 0;
  return () => {
    const file = readPlots(decodeText(bytes, "plots.json"), resolved);
    const text = writePlots(file);
    requireSame(text, writePlots(readPlots(text, resolved)));
    if (isScored) requireFinite(scorePlots(resolved, file));
  };
}

function tryRoster(random: SeededRandom): () => void {
  const files = random.pick([drawPlainRoster, drawOneRoster, drawZippedRoster])(random);
  return () => {
    const { faults, people } = readRoster(files);
    const vague = faults.find(({ path }) => path === "");
    if (vague !== undefined) throw new BrokenPromise(`a fault without a place: ${vague.message}`);
    const logins = new Set(people.map(({ login }) => login));
    if (faults.length === 0 && logins.size !== people.length) throw new BrokenPromise("a person twice");
  };
}

export const READER_KINDS = { set: trySet, plots: tryPlots, roster: tryRoster } as const;
export type ReaderKind = keyof typeof READER_KINDS;

/** The case of that number: the same numbers give the same file, on every machine. */
export async function tryReader(
  kind: ReaderKind,
  seed: number,
  index: number,
): Promise<CaseOutcome & { at: string }> {
  const at = `${kind} ${seed}:${index}`;
  const trial = READER_KINDS[kind](createSeededRandom(at));
  return { at, ...(await judgeCase(trial)) };
}
