/** Events of sittings that the server has not acknowledged yet, kept in this browser (IndexedDB). */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type SittingEvent, SittingEventSchema } from "@/lib/plot/sitting-event";

/** The events of one sitting. Every promise rejects when the browser refuses to keep anything. */
export interface EventStore {
  /** In order of `seq`. */
  readonly list: () => Promise<SittingEvent[]>;
  readonly put: (events: readonly SittingEvent[]) => Promise<void>;
  /** Forgets the events up to a `seq`, that one included. */
  readonly removeUpTo: (seq: number) => Promise<void>;
  readonly clear: () => Promise<void>;
}

interface BenchDatabase extends DBSchema {
  events: {
    key: [sittingId: string, seq: number];
    value: { sittingId: string; seq: number; event: unknown };
  };
}

let opening: Promise<IDBPDatabase<BenchDatabase>> | null = null;

function openBenchDatabase(): Promise<IDBPDatabase<BenchDatabase>> {
  opening ??= openDB<BenchDatabase>("loupework-bench", 1, {
    upgrade: (database) => {
      database.createObjectStore("events", { keyPath: ["sittingId", "seq"] });
    },
  });
  return opening;
}

const rangeOf = (sittingId: string, upToSeq = Number.MAX_SAFE_INTEGER) =>
  IDBKeyRange.bound([sittingId, 0], [sittingId, upToSeq]);

/** The store of one sitting. What cannot be read as an event any more is left out. */
export function openEventStore(sittingId: string): EventStore {
  return {
    list: async () => {
      const rows = await (await openBenchDatabase()).getAll("events", rangeOf(sittingId));
      return rows.flatMap(({ event }) => {
        const parsed = SittingEventSchema.safeParse(event);
        return parsed.success ? [parsed.data] : [];
      });
    },
    put: async (events) => {
      const work = (await openBenchDatabase()).transaction("events", "readwrite");
      for (const event of events) work.store.put({ sittingId, seq: event.seq, event });
      await work.done;
    },
    removeUpTo: async (seq) => {
      await (await openBenchDatabase()).delete("events", rangeOf(sittingId, seq));
    },
    clear: async () => {
      await (await openBenchDatabase()).delete("events", rangeOf(sittingId));
    },
  };
}
