import type { Metadata } from "next";
import { createExerciseAction } from "@/app/(staff)/exercises/actions";
import { listPickableTrays } from "@/app/(staff)/exercises/list-pickable-trays";
import { getForPage } from "@/app/get-for-page";
import type { ExerciseDraft } from "@/components/staff/exercise-draft";
import { ExerciseForm } from "@/components/staff/exercise-form";
import { NoSectionState } from "@/components/staff/no-section-state";
import { PageHeader } from "@/components/ui/page-header";
import { getRubricDefaults } from "@/lib/data/get-rubric-defaults";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";
import { DEFAULT_RULES } from "@/lib/plot/exercise-rules";
import type { Rubric } from "@/lib/plot/rubric";

export const metadata: Metadata = { title: "New exercise" };

const HOUR_MS = 3_600_000;
const WEEK_MS = 7 * 24 * HOUR_MS;

/** A blank exercise: opens now, is due in a week at the full hour, and is held as the program's rubric says. */
function createDraft(sectionId: string, { orientation }: Rubric): ExerciseDraft {
  const now = Date.now();
  const toMinute = (ms: number) => new Date(Math.floor(ms / 60_000) * 60_000).toISOString();
  return {
    sectionId,
    title: "",
    notes: "",
    opensAt: toMinute(now),
    dueAt: toMinute(Math.ceil((now + WEEK_MS) / HOUR_MS) * HOUR_MS),
    closesAt: "",
    debriefsAt: "",
    preparation: "asked",
    schoolRules: "",
    proofs: DEFAULT_RULES.proofs,
    areProofsRequired: DEFAULT_RULES.areProofsRequired,
    isDottingOn: DEFAULT_RULES.dotting.isOn,
    burstDots: DEFAULT_RULES.dotting.burstDots,
    burstGapS: DEFAULT_RULES.dotting.burstGapMs / 1000,
    minutesPerStone: "",
    attempts: 1,
    isInOrder: false,
    areLabelsHidden: false,
    orientation,
    stoneIds: [],
    stoneOpenings: {},
  };
}

export default async function NewExercisePage() {
  const viewer = await getForPage(() => requireViewer());
  const sections = await getForPage(() => listSections(viewer));
  const trays = await getForPage(() => listPickableTrays(viewer));
  const rubric = await getForPage(() => getRubricDefaults(viewer));
  const only = sections.length === 1 ? sections[0]?.sectionId : undefined;
  return (
    <div className="page">
      <PageHeader title="New exercise" trail={[{ href: "/exercises", label: "Exercises" }]} />
      {sections.length === 0 ? (
        <NoSectionState role={viewer.role} />
      ) : (
        <ExerciseForm
          storageKey={`loupework:exercise:${viewer.userId}:new`}
          start={createDraft(only ?? "", rubric)}
          revision={0}
          sections={sections}
          trays={trays}
          rubric={rubric}
          save={createExerciseAction}
        />
      )}
    </div>
  );
}
