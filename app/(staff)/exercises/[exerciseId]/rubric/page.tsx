import type { Metadata } from "next";
import { saveRubricAction, startRescoreAction } from "@/app/(staff)/exercises/actions";
import { getForPage } from "@/app/get-for-page";
import { RubricEditor } from "@/components/rubric/rubric-editor";
import { PageHeader } from "@/components/ui/page-header";
import { When } from "@/components/ui/when";
import { getRubricBench } from "@/lib/data/get-rubric-bench";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Rubric" };

interface Props {
  params: Promise<{ exerciseId: string }>;
  searchParams: Promise<{ plot?: string | string[] }>;
}

export default async function RubricPage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { plot } = await searchParams;
  const viewer = await getForPage(() => requireViewer());
  const bench = await getForPage(() =>
    getRubricBench(viewer, exerciseId, typeof plot === "string" ? plot : null),
  );
  const [latest] = bench.versions;
  return (
    <div className="page-wide">
      <PageHeader
        title="Rubric"
        trail={[
          { href: "/exercises", label: "Exercises" },
          { href: `/exercises/${exerciseId}`, label: bench.exerciseTitle },
        ]}
        lead={
          latest !== undefined && (
            <>
              The numbers by which plots of this exercise are scored. Version {latest.version} by{" "}
              {latest.authorName}, <When iso={latest.createdAt} />. A version is never changed.
            </>
          )
        }
      />
      <RubricEditor
        bench={bench}
        userId={viewer.userId}
        save={saveRubricAction.bind(null, exerciseId)}
        startRescore={startRescoreAction.bind(null, exerciseId)}
      />
    </div>
  );
}
