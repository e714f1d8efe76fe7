/** An event store that never rejects: a browser that keeps nothing is told of once, and the bench goes on. */
import type { EventStore } from "@/components/bench/event-store";

export function guardEventStore(store: EventStore, onRefused: () => void): EventStore {
  const guard = async <Value>(act: () => Promise<Value>, otherwise: Value): Promise<Value> => {
    try {
      return await act();
    } catch {
      onRefused();
      return otherwise;
    }
  };
  return {
    list: () => guard(store.list, []),
    put: (events) => guard(() => store.put(events), undefined),
    removeUpTo: (seq) => guard(() => store.removeUpTo(seq), undefined),
    clear: () => guard(store.clear, undefined),
  };
}
