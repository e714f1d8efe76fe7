import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { updateTrayAction } from "@/app/(staff)/trays/actions";
import { getForPage } from "@/app/get-for-page";
import panel from "@/components/staff/panel.module.css";
import { TrayForm } from "@/components/staff/tray-form";
import { PageHeader } from "@/components/ui/page-header";
import { getTray } from "@/lib/data/get-tray";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Name and notes of a tray" };

export default async function EditTrayPage({ params }: { params: Promise<{ trayId: string }> }) {
  const { trayId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const tray = await getForPage(() => getTray(viewer, trayId));
  if (!tray.mayEdit) notFound();
  return (
    <div className="page">
      <PageHeader
        title="Name and notes"
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${trayId}`, label: tray.name },
        ]}
      />
      <section className={panel.narrow}>
        <TrayForm
          start={{ name: tray.name, notes: tray.notes }}
          save={updateTrayAction.bind(null, trayId)}
          submitLabel="Save"
        />
      </section>
    </div>
  );
}
