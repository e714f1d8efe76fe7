/** Filter, order and way of going on, as they stand in the address of the grid and of a review. Pure. */
import { QUEUE_WAYS, type QueueWay } from "@/components/review/list-queue";
import { GRID_ORDERS, type GridOrder } from "@/components/staff/arrange-grid";

export interface QueueTerms {
  readonly search: string;
  readonly order: GridOrder;
  readonly way: QueueWay;
}

type Given = Readonly<Record<string, string | string[] | undefined>>;

const read = (value: string | string[] | undefined) => (Array.isArray(value) ? value[0] : value) ?? "";

/** What the address says; what it does not say, or says wrongly, is as at first. */
export function readQueueTerms(given: Given): QueueTerms {
  return {
    search: read(given.search).slice(0, 200),
    order: GRID_ORDERS.find((one) => one === read(given.order)) ?? "name",
    way: QUEUE_WAYS.find((one) => one === read(given.next)) ?? "stone",
  };
}

/** The query for it, with the question mark; empty where all is as at first. */
export function toQueueQuery({ search, order, way }: QueueTerms): string {
  const query = new URLSearchParams();
  if (search.trim() !== "") query.set("search", search.trim());
  if (order !== "name") query.set("order", order);
  if (way !== "stone") query.set("next", way);
  return query.size === 0 ? "" : `?${query}`;
}
