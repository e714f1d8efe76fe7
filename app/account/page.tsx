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
        <PageHeader title="Change password" lead={viewer.name} />
        <PasswordForm change={changePasswordAction} />
      </div>
    </AppFrame>
  );
}
