import { type ReviewView, ReviewViewSchema } from "@/lib/plot/review-view";

/** Reads a review from the server. Throws an Error with the server's own sentence where it refuses. */
export async function fetchReview(sittingId: string): Promise<ReviewView> {
  const response = await fetch(`/api/sittings/${sittingId}/review`);
  const body: unknown = await response.json();
  if (!response.ok) {
    const message = (body as { message?: unknown }).message;
    throw new Error(typeof message === "string" ? message : "The server did not answer.");
  }
  return ReviewViewSchema.parse(body);
}
