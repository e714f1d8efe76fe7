import { answerStream } from "@/app/api/answer-stream";
import { followWatch } from "@/lib/data/follow-watch";

/** Whose session was ended sees nothing more after this long, ms. */
const CHECK_MS = 5000;
/** Everything is told again so often, so that no screen stays wrong for longer, whatever went astray. */
const CHECKS_PER_WHOLE = 6;

/** The class as it happens: `event: whole` first, `event: change` from then on, `event: beat` in between. */
export async function GET(request: Request) {
  return answerStream(request, {
    checkMs: CHECK_MS,
    open: async (viewer, send) => {
      const following = await followWatch(viewer, (word) =>
        word.kind === "whole" ? send("whole", word.watch) : send("change", word.change),
      );
      let checks = 0;
      const onCheck = async () => {
        checks += 1;
        if (checks % CHECKS_PER_WHOLE === 0) await following.tellWhole();
      };
      return { end: following.end, onCheck };
    },
  });
}
