/** What became of one broken file: taken as valid, refused with the place of each fault, or neither, which is a crash. */
import { type AppErrorCode, isAppError } from "@/lib/base/app-error";

export type Verdict = "accepted" | "refused" | "crashed";

export interface CaseOutcome {
  readonly verdict: Verdict;
  readonly ms: number;
  /** Of a crash: what was thrown. */
  readonly why: string;
}

/** Thrown by a trial where something was taken, and did not come out again as it went in. */
export class BrokenPromise extends Error {}

/** A refusal must say where: each fault has a path, but for a file whose whole content is of the wrong kind. */
function findVagueness(thrown: unknown, codes: readonly AppErrorCode[]): string | null {
  if (codes.some((code) => isAppError(thrown, code))) return null;
  if (!isAppError(thrown, "bad-input"))
    return thrown instanceof Error ? (thrown.stack ?? "") : String(thrown);
  if (thrown.faults.length === 0) return `refused without a fault: ${thrown.message}`;
  const vague = thrown.faults.find(
    ({ path, message }) => path === "" && !message.includes("expected object"),
  );
  return vague === undefined ? null : `refused without a place: ${vague.message}`;
}

/**
 * Runs one case. The trial throws what the importer throws, and BrokenPromise for what was taken wrongly. `codes` are
 * refusals besides `bad-input` that need no place.
 */
export async function judgeCase(
  trial: () => void | Promise<void>,
  codes: readonly AppErrorCode[] = [],
): Promise<CaseOutcome> {
  const start = performance.now();
  let verdict: Verdict = "accepted";
  let why = "";
  try {
    await trial();
  } catch (thrown) {
    const vagueness = findVagueness(thrown, codes);
    verdict = vagueness === null ? "refused" : "crashed";
    why = (vagueness ?? "").slice(0, 600);
  }
  return { verdict, ms: performance.now() - start, why };
}

export interface Tally {
  readonly cases: number;
  readonly accepted: number;
  readonly refused: number;
  readonly slowestMs: number;
  /** Case and what went wrong. */
  readonly crashes: readonly { readonly at: string; readonly why: string }[];
}

/** Adds outcomes up; each with the words by which its case is drawn again. */
export function tally(outcomes: readonly (CaseOutcome & { readonly at: string })[]): Tally {
  const count = (verdict: Verdict) => outcomes.filter((one) => one.verdict === verdict).length;
  return {
    cases: outcomes.length,
    accepted: count("accepted"),
    refused: count("refused"),
    slowestMs: Math.max(0, ...outcomes.map(({ ms }) => ms)),
    crashes: outcomes.filter(({ verdict }) => verdict === "crashed").map(({ at, why }) => ({ at, why })),
  };
}
