/** From students' plots to what they say of the stone: density, places to look at, what is overlooked. Pure. */
import { clusterPlaces, type PlaceCluster } from "@/lib/agreement/cluster-places";
import { EVIDENCE_RULES, findFewestEnough, judgeCluster } from "@/lib/agreement/judge-cluster";
import { computeLateChance } from "@/lib/agreement/late-chance";
import type {
  DensityCell,
  Dismissal,
  EvidenceInput,
  FirstHandIn,
  LaidMark,
  MarkDetection,
  NameCount,
  Proposal,
  StoneEvidence,
  Suggestion,
} from "@/lib/agreement/stone-evidence";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";
import { getShapeDistance } from "@/lib/plot/get-shape-distance";
import type { Reference } from "@/lib/plot/stone";

/** Girdle widths between the cells of the density. */
export const CELL_WIDTH = 0.05;
/** So many students' single marks are shown: more would hide one another. */
const MOST_SINGLES = 40;
/** A stray this near to something that the newest reference holds is explained by it (the default rubric's `near`). */
const EXPLAINED_WITHIN = 0.03;
/** Damage: at least so many students handed in before it was first marked, and chance is this unlikely a reason. */
const DAMAGE_RULES = { before: 5, chance: 0.01 };
/** A place set aside comes back when the students who mark it have grown by this factor and at least by this number. */
const DISMISSAL_RULES = { factor: 1.5, more: 3 };

interface StrayPlace {
  readonly view: LaidMark["view"];
  readonly at: LaidMark["at"];
  readonly by: string;
  readonly mark: LaidMark;
}

/** Earlier first; of two at once, by who: the order in which they came is left out of it. */
function sortByTime(handIns: readonly FirstHandIn[]): FirstHandIn[] {
  const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return [...handIns].sort((a, b) => compare(a.handedInAt, b.handedInAt) || compare(a.by, b.by));
}

function isExplained({ view, at }: LaidMark, reference: Reference | null): boolean {
  if (reference === null) return false;
  return [...reference.marks, ...reference.decoys].some(
    (place) => place.view === view && getShapeDistance(place.shape, at) <= EXPLAINED_WITHIN,
  );
}

function listStrays(handIns: readonly FirstHandIn[], reference: Reference | null): StrayPlace[] {
  return handIns.flatMap(({ by, marks }) =>
    marks
      .filter((mark) => mark.cause !== null && !isExplained(mark, reference))
      .map((mark) => ({ view: mark.view, at: mark.at, by, mark })),
  );
}

/** Counts names, the most first and equal ones by the alphabet. */
function countNames<Name extends string>(names: readonly Name[]): NameCount<Name>[] {
  const counts = new Map<Name, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts]
    .map(([name, students]) => ({ name, students }))
    .sort((a, b) => b.students - a.students || (a.name < b.name ? -1 : 1));
}

/** Each student's own mark of a place: the one nearest to its middle. */
function listOwn({ at, places }: PlaceCluster<StrayPlace>): StrayPlace[] {
  const distance = (place: StrayPlace) => Math.hypot(place.at[0] - at[0], place.at[1] - at[1]);
  const own = new Map<string, StrayPlace>();
  for (const place of places) {
    const known = own.get(place.by);
    if (known === undefined || distance(place) < distance(known)) own.set(place.by, place);
  }
  return [...own.values()].sort((a, b) => distance(a) - distance(b));
}

/** The drawing that stands for a place: of the kind that most drew, the nearest to the middle; a dot is put on it. */
function pickShape(own: readonly StrayPlace[], at: LaidMark["at"]): LaidMark["shape"] {
  const [kind] = countNames(own.map(({ mark }) => mark.shape.kind));
  const nearest = own.find(({ mark }) => mark.shape.kind === kind?.name);
  if (nearest === undefined || nearest.mark.shape.kind === "dot") return { kind: "dot", at: [at[0], at[1]] };
  return nearest.mark.shape;
}

function propose(
  half: number,
  {
    characteristics,
    causes,
    before,
    lateChance,
  }: Pick<Suggestion, "characteristics" | "causes" | "before" | "lateChance">,
  damage: ReadonlySet<string>,
): Proposal {
  const marring = characteristics
    .filter(({ name }) => damage.has(name))
    .reduce((sum, { students }) => sum + students, 0);
  if (marring >= half && before >= DAMAGE_RULES.before && lateChance < DAMAGE_RULES.chance) return "damage";
  const [cause] = causes;
  return cause !== undefined && cause.name !== "unexplained" && cause.students >= half ? "decoy" : "missed";
}

function toSuggestion(
  cluster: PlaceCluster<StrayPlace>,
  ordered: readonly FirstHandIn[],
  ground: Parameters<typeof judgeCluster>[1],
  damage: ReadonlySet<string>,
): Suggestion {
  const { view, at, people, spread } = cluster;
  const own = listOwn(cluster);
  const marked = new Set(own.map(({ by }) => by));
  const seen = ordered.filter(({ by }) => marked.has(by));
  const before = ordered.findIndex(({ by }) => marked.has(by));
  const { share, expected, chance } = judgeCluster(people, ground);
  const facts = {
    before,
    lateChance: computeLateChance(before, people, ordered.length),
    characteristics: countNames(own.map(({ mark }) => mark.characteristic)),
    causes: countNames(own.flatMap(({ mark }) => mark.cause ?? [])),
  };
  return {
    key: `${view}:${at[0].toFixed(3)}:${at[1].toFixed(3)}`,
    view,
    at,
    shape: pickShape(own, at),
    students: people,
    of: ordered.length,
    share,
    expected,
    chance,
    spread,
    firstSeenAt: seen[0]?.handedInAt ?? "",
    lastSeenAt: seen.at(-1)?.handedInAt ?? "",
    ...facts,
    proposes: propose(people / 2, facts, damage),
  };
}

/** Whether a place was set aside and has not gathered enough more since. */
function isDismissed({ view, at, students }: Suggestion, dismissals: readonly Dismissal[]): boolean {
  return dismissals.some(
    (one) =>
      one.view === view &&
      Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) <= EVIDENCE_RULES.radius &&
      students < Math.max(one.students * DISMISSAL_RULES.factor, one.students + DISMISSAL_RULES.more),
  );
}

function listSuggestions(ordered: readonly FirstHandIn[], input: EvidenceInput): Suggestion[] {
  const strays = listStrays(ordered, input.reference);
  return (["crown", "pavilion"] as const)
    .flatMap((view) => {
      const own = strays.filter((stray) => stray.view === view);
      const each = new Map<string, number>();
      for (const { by } of own) each.set(by, (each.get(by) ?? 0) + 1);
      const ground = { students: ordered.length, strays: [...each.values()], area: input.area };
      const fewest = findFewestEnough(ground);
      if (fewest === null) return [];
      return clusterPlaces(own, { radius: EVIDENCE_RULES.radius, fewest }).map((cluster) =>
        toSuggestion(cluster, ordered, ground, input.damage),
      );
    })
    .sort((a, b) => b.students - a.students || (a.key < b.key ? -1 : 1));
}

/** Marks in hexagonally packed cells, each student once a cell. */
function listCells(handIns: readonly FirstHandIn[]): DensityCell[] {
  const height = (CELL_WIDTH * Math.sqrt(3)) / 2;
  const cells = new Map<string, { view: LaidMark["view"]; at: [number, number]; by: Set<string> }>();
  for (const { by, marks } of handIns) {
    for (const { view, at } of marks) {
      const row = Math.round(at[1] / height);
      const shift = row % 2 === 0 ? 0 : 0.5;
      const column = Math.round(at[0] / CELL_WIDTH - shift);
      const key = `${view} ${column} ${row}`;
      const cell = cells.get(key) ?? {
        view,
        at: [(column + shift) * CELL_WIDTH, row * height],
        by: new Set(),
      };
      cells.set(key, cell);
      cell.by.add(by);
    }
  }
  return [...cells]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { view, at, by }]) => ({ view, at, students: by.size }));
}

function listDetection(handIns: readonly FirstHandIn[], reference: Reference | null): MarkDetection[] {
  const counted = (reference?.marks ?? []).filter(({ optional }) => optional !== true);
  return counted
    .map(({ id }): MarkDetection => {
      const found = handIns.filter((one) => one.found.includes(id)).length;
      const of = found + handIns.filter((one) => one.overlooked.includes(id)).length;
      return { id, found, of, share: computeWilsonInterval(found, of, "no plot was held against it yet") };
    })
    .sort((a, b) => {
      const rate = ({ found, of }: MarkDetection) => (of === 0 ? 2 : found / of);
      return rate(a) - rate(b) || (a.id < b.id ? -1 : 1);
    });
}

/**
 * What students' first hand-ins on a stone say of it. Every student counts once, however many marks; the order in which
 * hand-ins come changes nothing. Strays that the newest reference explains are left out, so that what was acted upon is not
 * suggested again before its rescore. No hand-ins: everything empty.
 */
export function buildStoneEvidence(input: EvidenceInput): StoneEvidence {
  const ordered = sortByTime(input.handIns);
  const all = listSuggestions(ordered, input);
  const suggestions = all.filter((one) => !isDismissed(one, input.dismissals));
  const last = ordered.slice(-MOST_SINGLES);
  return {
    students: ordered.length,
    firstAt: ordered[0]?.handedInAt ?? null,
    lastAt: ordered.at(-1)?.handedInAt ?? null,
    cells: listCells(ordered),
    singles: last.flatMap(({ marks }) =>
      marks.map(({ view, shape, characteristic, cause }) => ({ view, shape, characteristic, cause })),
    ),
    singlesOf: last.length,
    suggestions,
    dismissed: all.length - suggestions.length,
    detection: listDetection(ordered, input.reference),
  };
}
