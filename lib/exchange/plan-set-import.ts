/** What an exercise set would change of a tray: stones are matched by their labels, whole references compared. */
import type { Fault } from "@/lib/base/app-error";
import type { JudgedSet, JudgedStone } from "@/lib/exchange/judge-exercise-set";
import type { TrayTerms } from "@/lib/plot/exercise-terms";
import type { SetStonePlan } from "@/lib/plot/set-import";
import {
  type Reference,
  ReferenceSchema,
  type Stone,
  type StoneBody,
  StoneBodySchema,
} from "@/lib/plot/stone";

/** A stone of the tray as it is now. */
export interface TrayStone {
  readonly label: string;
  readonly body: StoneBody;
  /** Null where no reference was saved yet. */
  readonly reference: Reference | null;
  /** 0 where no reference was saved yet. */
  readonly version: number;
}

export interface TrayGround {
  readonly terms: TrayTerms;
  readonly stones: readonly TrayStone[];
}

/** Which parts of a stone that is in the tray already are to be written. */
export interface StoneDifference {
  readonly body: boolean;
  readonly reference: boolean;
}

/** The body and the reference of a stone of a file, each by its own schema: keys stand in one order. */
export function splitStone(stone: Stone): { body: StoneBody; reference: Reference } {
  const { id: _id, grades, marks, decoys, ...body } = stone;
  return { body: StoneBodySchema.parse(body), reference: ReferenceSchema.parse({ grades, marks, decoys }) };
}

const isSame = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** Compares a stone of a file with the one of that label in the tray. */
export function compareStone(stone: Stone, known: TrayStone): StoneDifference {
  const { body, reference } = splitStone(stone);
  return { body: !isSame(body, known.body), reference: !isSame(reference, known.reference) };
}

const BODY_WORDS: Readonly<Record<keyof StoneBody, string>> = {
  cut: "cut",
  proportions: "proportions",
  weightCt: "weight",
  measurementsMm: "measurements",
  refractiveIndex: "refractive index",
  prongsDeg: "prongs",
  landmark: "landmark",
};

function listBodyWords(before: StoneBody, after: StoneBody): string {
  const keys = Object.keys(BODY_WORDS) as (keyof StoneBody)[];
  return keys
    .filter((key) => !isSame(before[key], after[key]))
    .map((key) => BODY_WORDS[key])
    .join(", ");
}

function countById(
  before: readonly { readonly id: string }[],
  after: readonly { readonly id: string }[],
  what: string,
) {
  const old = new Map(before.map((one) => [one.id, one]));
  const added = after.filter(({ id }) => !old.has(id)).length;
  const changed = after.filter((one) => old.has(one.id) && !isSame(old.get(one.id), one)).length;
  const removed = before.length - (after.length - added);
  const parts = [
    [added, "added"],
    [changed, "changed"],
    [removed, "removed"],
  ] as const;
  const words = parts.filter(([count]) => count > 0).map(([count, verb]) => `${count} ${verb}`);
  return words.length === 0 ? [] : [`${what}: ${words.join(", ")}`];
}

function listReferenceWords(before: Reference | null, after: Reference, version: number): string {
  const head = `reference version ${version + 1}`;
  if (before === null) return `${head}: ${after.marks.length} marks`;
  const parts = [
    ...(isSame(before.grades, after.grades) ? [] : ["grades"]),
    ...countById(before.marks, after.marks, "marks"),
    ...countById(before.decoys, after.decoys, "decoys"),
  ];
  return `${head}: ${parts.length === 0 ? "order of the marks" : parts.join("; ")}`;
}

function planStone(
  { path, label, stone }: JudgedStone,
  ground: TrayGround | null,
  faults: readonly Fault[],
): SetStonePlan {
  if (stone === null) {
    const own = faults
      .filter((fault) => fault.path.startsWith(path))
      .map((fault) => `${fault.path}: ${fault.message}`);
    const changes = own.length === 0 ? ["not looked into: the file is at fault elsewhere"] : own.slice(0, 20);
    return { path, label, state: "refused", changes };
  }
  const known = ground?.stones.find((one) => one.label === stone.id);
  const { body, reference } = splitStone(stone);
  if (known === undefined) {
    const decoys = reference.decoys.length === 0 ? "" : `, ${reference.decoys.length} decoys`;
    return { path, label, state: "made", changes: [`reference: ${reference.marks.length} marks${decoys}`] };
  }
  const difference = compareStone(stone, known);
  const changes = [
    ...(difference.body ? [`stone: ${listBodyWords(known.body, body)}`] : []),
    ...(difference.reference ? [listReferenceWords(known.reference, reference, known.version)] : []),
  ];
  return { path, label, state: changes.length === 0 ? "unchanged" : "changed", changes };
}

/** What of the set's scales and characteristics the tray cannot take. A tray without stones takes them all. */
function findTermFaults(judged: JudgedSet, ground: TrayGround | null): Fault[] {
  if (judged.set === null || ground === null || ground.stones.length === 0) return [];
  const message =
    "differ from those of the tray, whose other stones are held against them: make a new tray of this set";
  return [
    ...(isSame(judged.set.scales ?? {}, ground.terms.scales) ? [] : [{ path: "scales", message }]),
    ...(isSame(judged.set.characteristics ?? [], ground.terms.characteristics)
      ? []
      : [{ path: "characteristics", message }]),
  ];
}

/** The terms that the tray has afterwards: what the set says nothing of stays. */
export function mergeTerms({ set }: JudgedSet, ground: TrayGround | null): TrayTerms {
  const rubric = set?.rubric ?? ground?.terms.rubric ?? {};
  if (ground !== null && ground.stones.length > 0) return { ...ground.terms, rubric };
  return { scales: set?.scales ?? {}, characteristics: set?.characteristics ?? [], rubric };
}

function listTermWords(before: TrayTerms, after: TrayTerms): string[] {
  return [
    ...(isSame(before.scales, after.scales) ? [] : ["the grade scales"]),
    ...(isSame(before.characteristics, after.characteristics) ? [] : ["the added characteristics"]),
    ...(isSame(before.rubric, after.rubric) ? [] : ["the rubric that new exercises begin with"]),
  ];
}

/**
 * What a judged set would do to a tray, or to a new one where `ground` is null: the plan without the tray's name and
 * fingerprint. A set with a fault plans nothing, but says of each stone what it would have been.
 */
export function planSetImport(judged: JudgedSet, ground: TrayGround | null) {
  const faults = [...judged.faults, ...findTermFaults(judged, ground)];
  const labels = new Set(judged.stones.map(({ label }) => label));
  const before = ground?.terms ?? { scales: {}, characteristics: [], rubric: {} };
  return {
    stones: judged.stones.map((stone) => planStone(stone, ground, faults)),
    terms: listTermWords(before, mergeTerms(judged, ground)),
    kept: (ground?.stones ?? []).map(({ label }) => label).filter((label) => !labels.has(label)),
    faults,
  };
}
