/** What the plots of many students say of one stone: pure; made by `build-stone-evidence`. Never sent to a student. */
import type { Statistic } from "@/lib/agreement/statistic";
import type { Cause, ReferenceMark } from "@/lib/plot/mark";
import type { Shape } from "@/lib/plot/shape";
import type { Reference } from "@/lib/plot/stone";

type View = ReferenceMark["view"];
type Point = readonly [x: number, y: number];

/** A plotted mark as it comes to lie on the reference. */
export interface LaidMark {
  readonly view: View;
  readonly shape: Shape;
  /** Its centre (`getSampleCentre`). */
  readonly at: Point;
  readonly characteristic: string;
  /** Null: no stray. */
  readonly cause: Cause | null;
}

/** A student's first hand-in on the stone: later ones know the debrief. */
export interface FirstHandIn {
  /** Tells students apart; is in nothing that is given back. */
  readonly by: string;
  /** ISO 8601. */
  readonly handedInAt: string;
  readonly marks: readonly LaidMark[];
  /** Reference marks by id. */
  readonly found: readonly string[];
  readonly overlooked: readonly string[];
}

/** A place that staff set aside when so many students marked it. */
export interface Dismissal {
  readonly view: View;
  readonly at: Point;
  readonly students: number;
}

export interface EvidenceInput {
  readonly handIns: readonly FirstHandIn[];
  /** The newest one: what it holds is no stray any more. Null: the stone has none. */
  readonly reference: Reference | null;
  /** The area of a view within the girdle, in square girdle widths. */
  readonly area: number;
  /** Names of the characteristics that damage leaves behind. */
  readonly damage: ReadonlySet<string>;
  readonly dismissals: readonly Dismissal[];
}

/** What staff may make of a place that many mark and the reference does not. */
export const PROPOSALS = ["decoy", "missed", "damage"] as const;
export type Proposal = (typeof PROPOSALS)[number];

/** A name with how many students gave it. */
export interface NameCount<Name extends string = string> {
  readonly name: Name;
  readonly students: number;
}

export interface Suggestion {
  /** Its view and place to three decimals: the same for the same evidence. */
  readonly key: string;
  readonly view: View;
  readonly at: Point;
  /** The drawing among the students' that is nearest to the middle and of the kind that most drew. */
  readonly shape: Shape;
  readonly students: number;
  readonly of: number;
  readonly share: Statistic;
  /** Students who would mark it if strays lay anywhere. */
  readonly expected: number;
  readonly chance: number;
  /** Root mean square distance of the students' marks from its middle, girdle widths. */
  readonly spread: number;
  readonly firstSeenAt: string;
  readonly lastSeenAt: string;
  /** Students who handed in before it was first marked, and how likely so late a start is if nothing changed. */
  readonly before: number;
  readonly lateChance: number;
  /** The most given first. */
  readonly characteristics: readonly NameCount[];
  readonly causes: readonly NameCount<Cause>[];
  readonly proposes: Proposal;
}

/** A cell of the density: how many students marked there. */
export interface DensityCell {
  readonly view: View;
  readonly at: Point;
  readonly students: number;
}

export interface MarkDetection {
  readonly id: string;
  readonly found: number;
  /** Students whose plot was held against a reference with this mark. */
  readonly of: number;
  readonly share: Statistic;
}

export interface StoneEvidence {
  /** Students who handed the stone in, each counted once. */
  readonly students: number;
  readonly firstAt: string | null;
  readonly lastAt: string | null;
  readonly cells: readonly DensityCell[];
  /** Single marks of the last students who handed in, `singlesOf` of them. */
  readonly singles: readonly Pick<LaidMark, "view" | "shape" | "characteristic" | "cause">[];
  readonly singlesOf: number;
  /** The most students first. */
  readonly suggestions: readonly Suggestion[];
  /** Places with enough evidence that are set aside for now. */
  readonly dismissed: number;
  /** Every reference mark that gives points, the most overlooked first. */
  readonly detection: readonly MarkDetection[];
}
