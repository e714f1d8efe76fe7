/** Predicts echoes off the main thread. */
import type { EchoRequest } from "@/components/echoes/echo-messages";
import { createEchoServer } from "@/components/echoes/serve-echoes";

const serve = createEchoServer(
  (answer) => self.postMessage(answer),
  () => new Promise((resolve) => setTimeout(resolve)),
);

self.addEventListener("message", (event: MessageEvent<EchoRequest>) => {
  serve(event.data).catch((thrown: unknown) => {
    // Out of the promise, so that whoever made the worker hears of it.
    setTimeout(() => {
      throw thrown;
    });
  });
});
