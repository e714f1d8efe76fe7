import { expect, it } from "vitest";
import { findInQueue, type QueueItem } from "@/components/review/list-queue";

const item = (sittingId: string, earlierIds: readonly string[] = []): QueueItem => ({
  sittingId,
  earlierIds,
  studentName: "",
  stoneLabel: "",
});

it("finds an earlier attempt in the place of the one that counts, and nothing else", () => {
  const queue = [item("a"), item("b2", ["b0", "b1"]), item("c")];
  expect(["a", "b0", "b1", "b2", "c", "d"].map((id) => findInQueue(queue, id))).toEqual([0, 1, 1, 1, 2, -1]);
});
