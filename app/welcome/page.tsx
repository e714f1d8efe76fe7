import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { createFirstDirectorAction } from "@/app/welcome/actions";
import { FirstDirectorForm } from "@/components/forms/first-director-form";
import { LonePage } from "@/components/ui/lone-page";
import { hasAnyUser } from "@/lib/data/has-any-user";

export const metadata: Metadata = { title: "First account" };
export const dynamic = "force-dynamic";

export default async function WelcomePage() {
  if (await hasAnyUser()) redirect("/sign-in");
  return (
    <LonePage
      title="Make the first account"
      lead="It is a director’s: it sees every section and makes the accounts of instructors and students."
    >
      <FirstDirectorForm create={createFirstDirectorAction} />
    </LonePage>
  );
}
