import type { EchoAnswer, EchoRequest } from "@/components/echoes/echo-messages";
import { listEchoes, type PredictedEcho } from "@/lib/editor/list-echoes";
import { getSolid } from "@/lib/gem/build-solid";

/**
 * What answers requests for echoes, one mark at a time. Between marks it pauses, so that a newer request is heard: the
 * older one is then dropped unanswered. Throws AppError "bad-input" for numbers that make no stone.
 */
export function createEchoServer(
  answer: (answer: EchoAnswer) => void,
  pause: () => Promise<void>,
): (request: EchoRequest) => Promise<void> {
  let newest = 0;
  return async (request) => {
    newest += 1;
    const mine = newest;
    if (request.kind === "cancel") return;
    const { cut, proportions, refractiveIndex, sources } = request.input;
    const solid = getSolid(cut, proportions);
    const echoes: PredictedEcho[] = [];
    for (const source of sources) {
      await pause();
      if (newest !== mine) return;
      echoes.push(...listEchoes(solid, source, refractiveIndex));
    }
    answer({ job: request.job, echoes });
  };
}
