import { Button } from "@mantine/core";
import type { Metadata } from "next";
import { changePasswordAction } from "@/app/account/actions";
import { getForPage } from "@/app/get-for-page";
import { PasswordForm } from "@/components/forms/password-form";
import { AppFrame } from "@/components/ui/app-frame";
import { PageHeader } from "@/components/ui/page-header";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Account" };
export const dynamic = "force-dynamic";

export default async function AccountPage() {
  const viewer = await getForPage(() => requireViewer());
  return (
    <AppFrame viewer={viewer}>
      <div className="page">
        <PageHeader title="Account" lead={viewer.name} />
        <div className="stack" style={{ gap: "2rem" }}>
          <section className="stack">
            <h2>Change password</h2>
            <PasswordForm change={changePasswordAction} />
          </section>
          <section className="stack">
            <h2>Your data</h2>
            <p>
              Everything that is held of you: your account, your sections, each of your plots with its log,
              and your results where the debrief is released. To have it erased, ask your director.
            </p>
            <div>
              <Button
                component="a"
                variant="outline"
                href={`/api/people/${viewer.userId}/data.json`}
                download
              >
                Download your data (JSON)
              </Button>
            </div>
          </section>
        </div>
      </div>
    </AppFrame>
  );
}
