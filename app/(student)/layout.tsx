import type { ReactNode } from "react";
import { getForPage } from "@/app/get-for-page";
import { AppFrame } from "@/components/ui/app-frame";
import { ForgetStaffWork } from "@/components/ui/forget-staff-work";
import { requireViewer } from "@/lib/data/require-viewer";

export default async function StudentLayout({ children }: { children: ReactNode }) {
  const viewer = await getForPage(() => requireViewer());
  return (
    <AppFrame viewer={viewer}>
      <ForgetStaffWork />
      {children}
    </AppFrame>
  );
}
