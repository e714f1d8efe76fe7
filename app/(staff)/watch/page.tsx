import type { Metadata } from "next";
import { sendNotesAction } from "@/app/(staff)/watch/actions";
import { getForPage } from "@/app/get-for-page";
import { WatchBoard } from "@/components/watch/watch-board";
import { listWatch } from "@/lib/data/list-watch";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Watch" };

export default async function WatchPage() {
  const viewer = await getForPage(() => requireViewer());
  const first = await getForPage(() => listWatch(viewer));
  return <WatchBoard first={first} exercise={null} send={sendNotesAction} />;
}
