import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getForPage } from "@/app/get-for-page";
import { OldReference } from "@/components/stone/old-reference";
import { PageHeader } from "@/components/ui/page-header";
import { When } from "@/components/ui/when";
import { getReferenceVersion } from "@/lib/data/get-reference-version";
import { getStone } from "@/lib/data/get-stone";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Version of a reference" };

interface Props {
  params: Promise<{ stoneId: string; version: string }>;
}

export default async function ReferenceVersionPage({ params }: Props) {
  const { stoneId, version: typed } = await params;
  if (!/^[1-9]\d{0,8}$/.test(typed)) notFound();
  const version = Number(typed);
  const viewer = await getForPage(() => requireViewer());
  const stone = await getForPage(() => getStone(viewer, stoneId));
  const reference = await getForPage(() => getReferenceVersion(viewer, stoneId, version));
  const row = stone.versions.find((one) => one.version === version);
  const stoneHref = `/trays/${stone.trayId}/stones/${stoneId}`;
  return (
    <div className="page-wide">
      <PageHeader
        title={`Version ${version} of ${stone.label}`}
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${stone.trayId}`, label: stone.trayName },
          { href: stoneHref, label: stone.label },
          { href: `${stoneHref}/reference`, label: "Reference" },
        ]}
        lead={
          row !== undefined && (
            <>
              Saved by {row.authorName}, <When iso={row.createdAt} />
              {row.note === "" ? "" : `: “${row.note}”`}. A version is never changed.
            </>
          )
        }
      />
      <h2 className="visually-hidden">Marks and decoys</h2>
      <OldReference
        stone={stone}
        version={version}
        reference={reference}
        userId={viewer.userId}
        referenceHref={`${stoneHref}/reference`}
      />
    </div>
  );
}
