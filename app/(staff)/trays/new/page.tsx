import type { Metadata } from "next";
import { createTrayAction } from "@/app/(staff)/trays/actions";
import { getForPage } from "@/app/get-for-page";
import panel from "@/components/staff/panel.module.css";
import { TrayForm } from "@/components/staff/tray-form";
import { LinkButton } from "@/components/ui/link-button";
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
          <h2>A tray from a set</h2>
          <p className="muted">
            An exercise set, from a file or from the library, brings its stones and their references. What it
            would make is shown first; either all of it comes in or nothing.
          </p>
          <div>
            <LinkButton href="/trays/import" variant="outline">
              Bring a set in
            </LinkButton>
          </div>
        </section>
      </div>
    </div>
  );
}
