import type { ReactNode } from "react";
import { getForPage } from "@/app/get-for-page";
import { AppFrame } from "@/components/ui/app-frame";
import { requireViewer } from "@/lib/data/require-viewer";

export default async function StaffLayout({ children }: { children: ReactNode }) {
  const viewer = await getForPage(() => requireViewer());
  return <AppFrame viewer={viewer}>{children}</AppFrame>;
}
