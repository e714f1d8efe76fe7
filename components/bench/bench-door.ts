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
  /** `isTimeOut`: because the time ran out. */
  readonly handIn: (lastSeq: number, isTimeOut: boolean) => Promise<DoorAnswer<{ handedInAt: string }>>;
}

/** What is heard besides the answers themselves. */
export interface BenchEars {
  /** The server's clock, with each answer. */
  readonly onServerTime: (serverMs: number) => void;
  /** When the time runs out, as it stands now; null without a limit. */
  readonly onEndsAt: (endsAt: string | null) => void;
}

const RefusalSchema = z.object({
  code: z.string(),
  message: z.string(),
  faults: z.array(z.object({ path: z.string(), message: z.string() })).default([]),
});
const SeqSchema = z.object({ lastSeq: z.int(), endsAt: z.string().nullable() });
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
    const refusal = RefusalSchema.safeParse(said);
    // A server that failed is asked again, like one that was not reached: it has not said no. One that has no room says so.
    const hasSaidNo = response.status < 500 || refusal.data?.code === "no-room";
    if (!hasSaidNo) return { kind: "unreached" };
    return refusal.success ? { kind: "refused", refusal: refusal.data } : { kind: "unreached" };
  } catch {
    return { kind: "unreached" };
  }
}

/** The door of one sitting for one writer. */
export function openBenchDoor(
  sittingId: string,
  writerId: string,
  { onServerTime, onEndsAt }: BenchEars,
): BenchDoor {
  const postForSeq = async (what: string, body: object) => {
    const answer = await post(address(what), { writerId, ...body }, SeqSchema, onServerTime);
    if (answer.kind === "done") onEndsAt(answer.value.endsAt);
    return answer;
  };
  const address = (what: string) => `/api/sittings/${encodeURIComponent(sittingId)}/${what}`;
  return {
    claim: (takeOver) => postForSeq("claim", { takeOver }),
    save: (events) => postForSeq("events", { events }),
    handIn: (lastSeq, isTimeOut) =>
      post(address("hand-in"), { writerId, lastSeq, isTimeOut }, HandedInSchema, onServerTime),
  };
}
