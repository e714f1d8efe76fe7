/** Reads server-sent events from an answer, as a browser would. */

export interface StreamEvent {
  readonly name: string;
  readonly data: unknown;
}

export interface StreamReader {
  /** The next event of a name, beats and others left out; null when the stream ends first. */
  readonly next: (name: string) => Promise<StreamEvent | null>;
  readonly cancel: () => Promise<void>;
}

function parseEvent(block: string): StreamEvent | null {
  const name = block.match(/^event: (.+)$/m)?.[1];
  const data = block.match(/^data: (.+)$/m)?.[1];
  return name === undefined || data === undefined ? null : { name, data: JSON.parse(data) };
}

/** A reader of an answer's body. Throws when there is none. */
export function readStream(response: Response): StreamReader {
  if (response.body === null) throw new Error("the answer has no body");
  const reader = response.body.getReader();
  const decoder = new TextDecoder();
  let text = "";
  const take = async (): Promise<StreamEvent | null | "end"> => {
    const end = text.indexOf("\n\n");
    if (end >= 0) {
      const block = text.slice(0, end);
      text = text.slice(end + 2);
      return parseEvent(block);
    }
    const { value, done } = await reader.read();
    if (done) return "end";
    text += decoder.decode(value, { stream: true });
    return null;
  };
  return {
    next: async (name) => {
      for (;;) {
        const event = await take();
        if (event === "end") return null;
        if (event?.name === name) return event;
      }
    },
    cancel: () => reader.cancel(),
  };
}
