import { type ReviewView, ReviewViewSchema } from "@/lib/plot/review-view";

const NO_ANSWER = "The server did not answer. Try again once it does.";

/** Reads a review from the server. Throws an Error with the server's own sentence where it refuses, or one that it did not answer. */
export async function fetchReview(sittingId: string): Promise<ReviewView> {
  const response = await fetch(`/api/sittings/${sittingId}/review`).catch(() => {
    throw new Error(NO_ANSWER);
  });
  const body: unknown = await response.json().catch(() => {
    throw new Error(NO_ANSWER);
  });
  if (!response.ok) {
    const message = (body as { message?: unknown }).message;
    throw new Error(typeof message === "string" ? message : NO_ANSWER);
  }
  return ReviewViewSchema.parse(body);
}
