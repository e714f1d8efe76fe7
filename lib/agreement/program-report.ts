/** What the report of a program holds: made on the server, for directors. */
import type { ClusterCount } from "@/lib/agreement/clustered-share";
import type { JoinedCounts } from "@/lib/agreement/join-counts";
import type { ReaderAgreement } from "@/lib/agreement/reader-agreement";
import type { Statistic } from "@/lib/agreement/statistic";

/** What sections are held side by side by: reference marks found, clarity exact, clarity within one step. */
export const PROGRAM_MEASURES = ["found", "exact", "within-one"] as const;
export type ProgramMeasure = (typeof PROGRAM_MEASURES)[number];

/** A section added up, with each of its students as a cluster. */
export interface SectionSummary {
  readonly sectionId: string;
  readonly name: string;
  readonly term: string;
  readonly instructors: readonly { readonly id: string; readonly name: string }[];
  /** When its first exercise opened, or it was made: what terms are put in order by. */
  readonly beganAt: string;
  readonly students: number;
  readonly whole: JoinedCounts;
  readonly clusters: Readonly<Record<ProgramMeasure, readonly ClusterCount[]>>;
  /** By the stone's id. */
  readonly stones: ReadonlyMap<string, JoinedCounts>;
}

/** A share of a group with what it rests on. */
export interface GroupShare {
  readonly hits: number;
  readonly trials: number;
  /** Its interval knows that one student's marks are alike. */
  readonly share: Statistic;
}

/** A section, a term or an instructor. */
export interface ProgramGroup {
  readonly key: string;
  readonly label: string;
  /** Of a section: its term and who teaches it. */
  readonly detail: string;
  readonly sections: number;
  readonly students: number;
  readonly plots: number;
  readonly shares: Readonly<Record<ProgramMeasure, GroupShare>>;
  /** Of the clarity grades, steps. */
  readonly bias: Statistic;
  readonly straysPerPlot: Statistic;
}

/** A stone over all sections, and why it is worth a look. */
export interface ProgramStone {
  readonly stoneId: string;
  readonly trayId: string;
  readonly label: string;
  readonly trayName: string;
  readonly plots: number;
  readonly found: Statistic;
  readonly exact: Statistic;
  /** Echoes, glints and strays that nothing explains, on a plot. */
  readonly seemingPerPlot: number | null;
  /** Sentences; none where nothing stands out. */
  readonly reasons: readonly string[];
}

export interface ProgramReport {
  readonly whole: ProgramGroup;
  readonly sections: readonly ProgramGroup[];
  /** In order of time. */
  readonly terms: readonly ProgramGroup[];
  /** A section that two teach counts for both. */
  readonly instructors: readonly ProgramGroup[];
  /** How much one student's marks are alike, by measure: what the funnel's limits allow for. */
  readonly designEffects: Readonly<Record<ProgramMeasure, number>>;
  /** Those with a reason first, then the most plotted. */
  readonly stones: readonly ProgramStone[];
  readonly readers: ReaderAgreement;
  /** Labels of stones left out of `stones` and `readers`: the director is reading them blind. */
  readonly leftOut: readonly string[];
}
