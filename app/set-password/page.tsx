import type { Metadata } from "next";
import { readLinkAction, redeemLinkAction } from "@/app/set-password/actions";
import { LinkPasswordForm } from "@/components/forms/link-password-form";
import { LonePage } from "@/components/ui/lone-page";

export const metadata: Metadata = { title: "Set a password", referrer: "no-referrer" };
export const dynamic = "force-dynamic";

export default function SetPasswordPage() {
  return (
    <LonePage title="Set your password" lead="This link works once.">
      <LinkPasswordForm read={readLinkAction} redeem={redeemLinkAction} />
    </LonePage>
  );
}
