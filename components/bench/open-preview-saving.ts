/** A bench without a server: everything works as for a student, and nothing is sent or kept. */
import type { BenchDoor, DoorAnswer } from "@/components/bench/bench-door";
import type { EventStore } from "@/components/bench/event-store";
import type { HeldWriter } from "@/components/bench/hold-writer-id";

/** What handing in answers in a preview. */
export const PREVIEW_HAND_IN: DoorAnswer<{ handedInAt: string }> = {
  kind: "refused",
  refusal: {
    code: "preview",
    message: "This is a preview. A student would hand in here; nothing was saved or handed in.",
    faults: [],
  },
};

const forget = () => Promise.resolve();

/** The parts that a save client is made of, none of which reaches anything. */
export function openPreviewSaving(): { door: BenchDoor; store: EventStore; writer: HeldWriter } {
  return {
    door: {
      claim: async () => ({ kind: "done", value: { lastSeq: 0 } }),
      save: async (events) => ({ kind: "done", value: { lastSeq: events.at(-1)?.seq ?? 0 } }),
      handIn: async () => ({ kind: "done", value: { handedInAt: new Date().toISOString() } }),
    },
    store: { list: async () => [], put: forget, removeUpTo: forget, clear: forget },
    writer: {
      writerId: "preview",
      keepId: () => {},
      announceTakeOver: () => {},
      release: () => {},
    },
  };
}
