/** What the report of a section holds: made on the server, for staff. */
import type { ClusterRates } from "@/lib/agreement/cluster-rates";
import type { Rates } from "@/lib/agreement/derive-rates";
import type { StudentEvidence, StudentNeed } from "@/lib/agreement/find-needs";
import type { RaschFit } from "@/lib/agreement/fit-rasch";
import type { deriveGradeCoefficients } from "@/lib/agreement/grade-agreement";
import type { JoinedCounts } from "@/lib/agreement/join-counts";
import type { StoneDifficulty } from "@/lib/agreement/rank-difficulty";

/** A week of hand-ins; `week` is its Monday. */
export interface ReportWeek {
  readonly week: string;
  readonly rates: Rates;
}

export interface ReportStone extends StoneDifficulty {
  readonly label: string;
  readonly trayId: string;
  readonly rates: Rates;
}

export interface SectionReport {
  readonly sectionId: string;
  readonly name: string;
  readonly term: string;
  readonly instructors: readonly string[];
  /** All of the section's exercises, by due date; `isShown` where the report covers them. */
  readonly exercises: readonly { exerciseId: string; title: string; isShown: boolean }[];
  readonly rates: Rates;
  /** Of the clarity grades; null where none was given. */
  readonly coefficients: ReturnType<typeof deriveGradeCoefficients> | null;
  readonly clusters: ClusterRates;
  readonly otherScale: JoinedCounts["otherScale"];
  readonly weeks: readonly ReportWeek[];
  readonly stones: readonly ReportStone[];
  readonly students: readonly StudentEvidence[];
  readonly needs: readonly StudentNeed[];
  /** Each reference mark's place on the scale. */
  readonly marks: readonly (RaschFit["items"][number] & {
    readonly stoneLabel: string;
    readonly markId: string;
  })[];
  readonly itemErrors: RaschFit["itemErrors"];
  /** Labels of stones that nothing here covers: the reader of the report is reading them blind. */
  readonly leftOut: readonly string[];
}
