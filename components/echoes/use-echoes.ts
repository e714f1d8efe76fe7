import { useEffect, useRef, useState } from "react";
import type { EchoAnswer, EchoInput, EchoRequest } from "@/components/echoes/echo-messages";
import type { PredictedEcho } from "@/lib/editor/list-echoes";

/** A drag or a run of typing is over after this pause. */
const DEBOUNCE_MS = 250;

export interface Echoes {
  /** The last ones worked out; while newer ones are under way, still the old. */
  readonly echoes: readonly PredictedEcho[];
  readonly state: "ready" | "working" | "failed";
}

const NONE: readonly PredictedEcho[] = [];

/**
 * The echoes of a stone's inside marks, worked out in a worker a moment after the last change; what a newer change
 * overtakes is dropped. Without input or without marks there are none, and no worker is begun.
 */
export function useEchoes(input: EchoInput | null): Echoes {
  const worker = useRef<Worker | null>(null);
  const job = useRef(0);
  const text = input === null || input.sources.length === 0 ? "" : JSON.stringify(input);
  const [given, setGiven] = useState<Echoes>({ echoes: NONE, state: text === "" ? "ready" : "working" });

  useEffect(
    () => () => {
      worker.current?.terminate();
      worker.current = null;
    },
    [],
  );

  useEffect(() => {
    job.current += 1;
    const mine = job.current;
    if (text === "") {
      setGiven({ echoes: NONE, state: "ready" });
      return;
    }
    const post = (request: EchoRequest) => worker.current?.postMessage(request);
    setGiven(({ echoes }) => ({ echoes, state: "working" }));
    const timer = setTimeout(() => {
      worker.current ??= new Worker(new URL("./echo-worker.ts", import.meta.url), { type: "module" });
      worker.current.onmessage = ({ data }: MessageEvent<EchoAnswer>) => {
        if (data.job === job.current) setGiven({ echoes: data.echoes, state: "ready" });
      };
      worker.current.onerror = () => setGiven({ echoes: NONE, state: "failed" });
      post({ kind: "predict", job: mine, input: JSON.parse(text) as EchoInput });
    }, DEBOUNCE_MS);
    return () => {
      clearTimeout(timer);
      post({ kind: "cancel" });
    };
  }, [text]);
  return given;
}
