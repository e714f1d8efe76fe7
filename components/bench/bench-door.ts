/** The bench's one way to the server: claim, save, hand in. Every failure becomes an answer; nothing is thrown. */
import { z } from "zod";
import type { Fault } from "@/lib/base/app-error";
import type { SittingEvent } from "@/lib/plot/sitting-event";

export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly faults: readonly Fault[];
}

export type DoorAnswer<Value> =
  | { readonly kind: "done"; readonly value: Value }
  /** No answer, or one that is none of the program's own: the network, or a server that is down. */
  | { readonly kind: "unreached" }
  | { readonly kind: "refused"; readonly refusal: Refusal };

export interface BenchDoor {
  readonly claim: (takeOver: boolean) => Promise<DoorAnswer<{ lastSeq: number }>>;
  readonly save: (events: readonly SittingEvent[]) => Promise<DoorAnswer<{ lastSeq: number }>>;
  readonly handIn: (lastSeq: number) => Promise<DoorAnswer<{ handedInAt: string }>>;
}

const RefusalSchema = z.object({
  code: z.string(),
  message: z.string(),
  faults: z.array(z.object({ path: z.string(), message: z.string() })).default([]),
});
const SeqSchema = z.object({ lastSeq: z.int() });
const HandedInSchema = z.object({ handedInAt: z.string() });

const PATIENCE_MS = 15_000;

async function post<Value>(
  address: string,
  body: unknown,
  schema: z.ZodType<Value>,
  onServerTime: (serverMs: number) => void,
): Promise<DoorAnswer<Value>> {
  try {
    const response = await fetch(address, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    const said: unknown = await response.json();
    onServerTime(Date.parse(response.headers.get("date") ?? ""));
    if (response.ok) {
      const value = schema.safeParse(said);
      return value.success ? { kind: "done", value: value.data } : { kind: "unreached" };
    }
    // A server that failed is asked again, like one that was not reached: it has not said no.
    if (response.status >= 500) return { kind: "unreached" };
    const refusal = RefusalSchema.safeParse(said);
    return refusal.success ? { kind: "refused", refusal: refusal.data } : { kind: "unreached" };
  } catch {
    return { kind: "unreached" };
  }
}

/** The door of one sitting for one writer. `onServerTime` hears the server's clock with each answer. */
export function openBenchDoor(
  sittingId: string,
  writerId: string,
  onServerTime: (serverMs: number) => void,
): BenchDoor {
  const address = (what: string) => `/api/sittings/${encodeURIComponent(sittingId)}/${what}`;
  return {
    claim: (takeOver) => post(address("claim"), { writerId, takeOver }, SeqSchema, onServerTime),
    save: (events) => post(address("events"), { writerId, events }, SeqSchema, onServerTime),
    handIn: (lastSeq) => post(address("hand-in"), { writerId, lastSeq }, HandedInSchema, onServerTime),
  };
}
