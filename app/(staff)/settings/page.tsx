import type { Metadata } from "next";
import { saveSettingsAction } from "@/app/(staff)/settings/actions";
import { getForPage } from "@/app/get-for-page";
import { RubricDefaultsForm } from "@/components/settings/rubric-defaults-form";
import { PageHeader } from "@/components/ui/page-header";
import { When } from "@/components/ui/when";
import { getProgramSettings } from "@/lib/data/get-program-settings";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Settings" };

export default async function SettingsPage() {
  const viewer = await getForPage(() => requireViewer());
  const settings = await getForPage(() => getProgramSettings(viewer));
  const { changed } = settings;
  return (
    <div className="page-wide">
      <PageHeader
        title="Settings"
        lead={
          changed === null ? (
            "What holds for the whole program. Nothing has been changed yet."
          ) : (
            <>
              What holds for the whole program. Last changed by {changed.byName}, <When iso={changed.at} />.
            </>
          )
        }
      />
      <RubricDefaultsForm settings={settings} userId={viewer.userId} save={saveSettingsAction} />
    </div>
  );
}
