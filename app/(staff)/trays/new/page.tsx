import type { Metadata } from "next";
import { createTrayAction, importSetAction } from "@/app/(staff)/trays/actions";
import { getForPage } from "@/app/get-for-page";
import { ImportSetForm } from "@/components/staff/import-set-form";
import panel from "@/components/staff/panel.module.css";
import { TrayForm } from "@/components/staff/tray-form";
import { PageHeader } from "@/components/ui/page-header";
import { listTrays } from "@/lib/data/list-trays";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "New tray" };

export default async function NewTrayPage() {
  const viewer = await getForPage(() => requireViewer());
  await getForPage(() => listTrays(viewer));
  return (
    <div className="page">
      <PageHeader title="New tray" trail={[{ href: "/trays", label: "Trays" }]} />
      <div className={panel.two}>
        <section className={panel.root}>
          <h2>An empty tray</h2>
          <p className="muted">
            Name it as it is labelled in the cupboard, then put stones in it one by one.
          </p>
          <TrayForm start={{ name: "", notes: "" }} save={createTrayAction} submitLabel="Make the tray" />
        </section>
        <section className={panel.root}>
          <h2>A tray from a file</h2>
          <p className="muted">
            An exercise set file brings its stones and their references. It is checked first; either all of it
            comes in or nothing.
          </p>
          <ImportSetForm importSet={importSetAction} />
        </section>
      </div>
    </div>
  );
}
