import { expect, it } from "vitest";
import { createReviewShelf } from "@/components/review/review-shelf";
import type { ReviewView } from "@/lib/plot/review-view";

/** As much of a review as the shelf looks at. */
const makeReview = (sittingId: string, revision: number) =>
  ({ debrief: { sittingId }, revision }) as unknown as ReviewView;

/** A server whose answers come when the test says so, in any order. */
function makeServer() {
  const asked: { sittingId: string; answer: (revision: number) => void; refuse: () => void }[] = [];
  const fetchReview = (sittingId: string) =>
    new Promise<ReviewView>((resolve, reject) => {
      asked.push({
        sittingId,
        answer: (revision) => resolve(makeReview(sittingId, revision)),
        refuse: () => reject(new Error("no network")),
      });
    });
  return { asked, fetchReview };
}

it("gives at once what was read, and nothing of what was not", async () => {
  const { asked, fetchReview } = makeServer();
  const shelf = createReviewShelf(fetchReview);
  expect(shelf.find("a")).toBeNull();
  const reading = shelf.read("a");
  asked[0]?.answer(3);
  expect((await reading).revision).toBe(3);
  expect(shelf.find("a")?.revision).toBe(3);
  expect(shelf.find("b")).toBeNull();
});

it("does not put an answer that was asked for before a change in place of the change", async () => {
  const { asked, fetchReview } = makeServer();
  const shelf = createReviewShelf(fetchReview);
  const reading = shelf.read("a");
  shelf.keep(makeReview("a", 4));
  asked[0]?.answer(3);
  expect((await reading).revision).toBe(4);
  expect(shelf.find("a")?.revision).toBe(4);
});

it("keeps the later of two readings, whichever answer comes first", async () => {
  const { asked, fetchReview } = makeServer();
  const shelf = createReviewShelf(fetchReview);
  const [first, second] = [shelf.read("a"), shelf.read("a")];
  asked[1]?.answer(6);
  expect((await second).revision).toBe(6);
  asked[0]?.answer(5);
  expect((await first).revision).toBe(6);
});

it("takes no answer of an older revision for the newest, though it came last", () => {
  const shelf = createReviewShelf(makeServer().fetchReview);
  shelf.keep(makeReview("a", 4));
  shelf.keep(makeReview("a", 3));
  expect(shelf.find("a")?.revision).toBe(4);
});

it("waits for a reading that is under way, and asks anew when told to read", async () => {
  const { asked, fetchReview } = makeServer();
  const shelf = createReviewShelf(fetchReview);
  const ahead = shelf.await("a");
  expect(shelf.await("a")).toBe(ahead);
  expect(asked).toHaveLength(1);
  const again = shelf.read("a");
  expect(asked).toHaveLength(2);
  asked[0]?.answer(1);
  asked[1]?.answer(2);
  expect((await again).revision).toBe(2);
});

it("asks again after a reading that failed", async () => {
  const { asked, fetchReview } = makeServer();
  const shelf = createReviewShelf(fetchReview);
  const reading = shelf.await("a");
  asked[0]?.refuse();
  await expect(reading).rejects.toThrow("no network");
  expect(shelf.find("a")).toBeNull();
  const again = shelf.await("a");
  asked[1]?.answer(1);
  expect((await again).revision).toBe(1);
});

it("does not show at once what was read long ago", async () => {
  const { asked, fetchReview } = makeServer();
  let nowMs = 0;
  const shelf = createReviewShelf(fetchReview, () => nowMs);
  const reading = shelf.read("a");
  asked[0]?.answer(1);
  await reading;
  nowMs = 4 * 60_000;
  expect(shelf.find("a")).not.toBeNull();
  nowMs = 6 * 60_000;
  expect(shelf.find("a")).toBeNull();
});
