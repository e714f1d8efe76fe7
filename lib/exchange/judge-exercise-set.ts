import { type Fault, isAppError } from "@/lib/base/app-error";
import type { ExerciseSet } from "@/lib/plot/exercise-set";
import { parseExerciseSet } from "@/lib/plot/parse-exercise-set";
import type { Stone } from "@/lib/plot/stone";

/** A stone as far as its file says what it is. */
export interface JudgedStone {
  readonly path: string;
  readonly label: string;
  /** Null where the stone is at fault. */
  readonly stone: Stone | null;
}

export interface JudgedSet {
  /** Null where there is a fault anywhere. */
  readonly set: ExerciseSet | null;
  readonly stones: readonly JudgedStone[];
  readonly faults: readonly Fault[];
}

const STONE_PATH = /^stones\[(\d+)\](.*)$/;

function findStoneIndex({ path }: Fault): number | null {
  const index = STONE_PATH.exec(path)?.[1];
  return index === undefined ? null : Number(index);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function parse(json: unknown): { set: ExerciseSet | null; faults: readonly Fault[] } {
  try {
    return { set: parseExerciseSet(json).set, faults: [] };
  } catch (thrown) {
    if (!isAppError(thrown, "bad-input")) throw thrown;
    return { set: null, faults: thrown.faults };
  }
}

/** The stones of these indices alone; the places in the faults are those of the whole set. */
function parseSome(
  json: Readonly<Record<string, unknown>>,
  raw: readonly unknown[],
  indices: readonly number[],
) {
  const { set, faults } = parse({ ...json, stones: indices.map((index) => raw[index]) });
  const back = faults.map(({ path, message }): Fault => {
    const [, at, rest] = STONE_PATH.exec(path) ?? [];
    return { path: at === undefined ? path : `stones[${indices[Number(at)] ?? at}]${rest ?? ""}`, message };
  });
  return { set, faults: back };
}

/**
 * Goes on with the stones that have no fault yet: a set that breaks a form is not looked into deeper, so that there
 * are more faults to be found, and only what is left then is sound.
 */
function findDeeper(
  json: Readonly<Record<string, unknown>>,
  raw: readonly unknown[],
  first: readonly Fault[],
) {
  const faults = [...first];
  for (;;) {
    const bad = new Set(faults.map(findStoneIndex));
    const indices = raw.map((_, index) => index).filter((index) => !bad.has(index));
    const some = parseSome(json, raw, indices);
    faults.push(...some.faults);
    const isOver = some.set !== null || some.faults.every((fault) => findStoneIndex(fault) === null);
    if (isOver)
      return { faults, stones: new Map(indices.map((index, at) => [index, some.set?.stones[at] ?? null])) };
  }
}

/**
 * Judges a whole set stone by stone, so that a dry run can say of each what would become of it, also where others are
 * at fault. Never throws for what a file may hold; the faults are those of `parseExerciseSet`.
 */
export function judgeExerciseSet(json: unknown): JudgedSet {
  const { set, faults: first } = parse(json);
  if (set !== null) {
    const stones = set.stones.map((stone, index) => ({ path: `stones[${index}]`, label: stone.id, stone }));
    return { set, stones, faults: [] };
  }
  const raw = isRecord(json) && Array.isArray(json.stones) ? json.stones : [];
  const isFormal = first.every((fault) => findStoneIndex(fault) !== null);
  const nothing = { faults: first, stones: new Map<number, Stone | null>() };
  const { faults, stones: sound } = isRecord(json) && isFormal ? findDeeper(json, raw, first) : nothing;
  const all = new Set(faults.map(findStoneIndex));
  const stones = raw.map((given, index): JudgedStone => {
    const id = isRecord(given) && typeof given.id === "string" ? given.id.slice(0, 64) : `stone ${index + 1}`;
    return {
      path: `stones[${index}]`,
      label: id,
      stone: all.has(index) ? null : (sound.get(index) ?? null),
    };
  });
  return { set: null, stones, faults };
}
