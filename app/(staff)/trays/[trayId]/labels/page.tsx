import type { Metadata } from "next";
import { headers } from "next/headers";
import { getForPage } from "@/app/get-for-page";
import { PAPER_LABELS, readPaperSize } from "@/components/paper/paper-size";
import { LabelSheet } from "@/components/tray/label-sheet";
import { PrintButton } from "@/components/tray/print-button";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { getTray } from "@/lib/data/get-tray";
import { readEnvironment } from "@/lib/data/read-environment";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Labels" };

interface LabelsPageProps {
  params: Promise<{ trayId: string }>;
  searchParams: Promise<{ paper?: string }>;
}

export default async function LabelsPage({ params, searchParams }: LabelsPageProps) {
  const { trayId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const tray = await getForPage(() => getTray(viewer, trayId));
  const paper = readPaperSize((await searchParams).paper);
  const other = paper === "a4" ? "letter" : "a4";
  const { url } = readEnvironment();
  const base = url ?? `http://${(await headers()).get("host") ?? "localhost"}`;
  return (
    <div className="page">
      <PageHeader
        title="Labels"
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${trayId}`, label: tray.name },
        ]}
        lead={`For ${PAPER_LABELS[paper]}, to be cut along the dashes. Print at 100 %, without fitting to the page.`}
        actions={
          <>
            <LinkButton href={`/trays/${trayId}/labels?paper=${other}`} variant="outline">
              For {PAPER_LABELS[other]}
            </LinkButton>
            <PrintButton />
          </>
        }
      />
      <div className="stack">
        {url === null && (
          <p className="muted no-print">
            The codes hold the address {base}, as this page was opened by it. Set LOUPEWORK_URL to the address
            that your school uses before you print for good.
          </p>
        )}
        <LabelSheet trayName={tray.name} stones={tray.stones} base={base} paper={paper} />
      </div>
    </div>
  );
}
