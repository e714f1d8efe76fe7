import { Skeleton } from "@mantine/core";

/** The shape of a page while its data is read. */
export function PageLoading() {
  return (
    <div className="page" role="status" aria-live="polite">
      <span className="visually-hidden">Loading</span>
      <Skeleton height={30} width="40%" mb="sm" />
      <Skeleton height={14} width="25%" mb="xl" />
      <Skeleton height={120} mb="md" />
      <Skeleton height={120} mb="md" />
    </div>
  );
}
