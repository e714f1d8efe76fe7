import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { sendNotesAction } from "@/app/(staff)/watch/actions";
import { getForPage } from "@/app/get-for-page";
import { WatchBoard } from "@/components/watch/watch-board";
import { listExercises } from "@/lib/data/list-exercises";
import { listWatch } from "@/lib/data/list-watch";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Watch" };

export default async function ExerciseWatchPage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exerciseId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const exercises = await getForPage(() => listExercises(viewer));
  const exercise = exercises.find((one) => one.exerciseId === exerciseId);
  if (exercise === undefined) notFound();
  const first = await getForPage(() => listWatch(viewer));
  return (
    <WatchBoard
      first={first}
      exercise={exercise}
      trail={[
        { href: "/exercises", label: "Exercises" },
        { href: `/exercises/${exerciseId}`, label: exercise.title },
      ]}
      send={sendNotesAction}
    />
  );
}
