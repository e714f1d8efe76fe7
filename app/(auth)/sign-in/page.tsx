import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { SignInForm } from "@/components/forms/sign-in-form";
import { LonePage } from "@/components/ui/lone-page";
import { hasAnyUser } from "@/lib/data/has-any-user";
import { findSignedInViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Sign in" };
export const dynamic = "force-dynamic";

export default async function SignInPage() {
  if (!(await hasAnyUser())) redirect("/welcome");
  if ((await findSignedInViewer()) !== null) redirect("/");
  return (
    <LonePage title="Sign in" lead="Look, plot, grade, compare.">
      <SignInForm />
    </LonePage>
  );
}
