import { redirect } from "next/navigation";
import { getForPage } from "@/app/get-for-page";
import { getHomeHref } from "@/components/ui/nav-links";
import { requireViewer } from "@/lib/data/require-viewer";

export const dynamic = "force-dynamic";

/** Sends everyone to where their role begins. */
export default async function StartPage() {
  const viewer = await getForPage(() => requireViewer());
  redirect(getHomeHref(viewer.role));
}
