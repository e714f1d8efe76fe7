import { notFound, redirect } from "next/navigation";
import { isAppError } from "@/lib/base/app-error";

/**
 * Reads what a page shows. Signed out goes to sign-in; what is not there or not for this viewer is the not-found
 * page, the two never told apart; what is kept from a second reader goes to the page that says so; anything else is the
 * error page's.
 */
export async function getForPage<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (thrown) {
    if (isAppError(thrown, "signed-out")) redirect("/sign-in");
    if (isAppError(thrown, "reading-blind")) redirect("/second-readings?kept=1");
    if (isAppError(thrown, "not-found") || isAppError(thrown, "not-allowed")) notFound();
    throw thrown;
  }
}
