/** A browser's side of the wire for the load script: cookies, JSON and server-sent events, over loopback alone. */
import { Agent, type IncomingMessage, request } from "node:http";

const HOST = "127.0.0.1";

export interface Answer {
  readonly status: number;
  readonly text: string;
}

/** One signed-in person's way to the server. */
export class WebClient {
  private readonly cookies = new Map<string, string>();
  private readonly agent = new Agent({ keepAlive: true, maxSockets: 4 });

  constructor(private readonly port: number) {}

  private send(method: string, path: string, body: string | null, type: string): Promise<IncomingMessage> {
    return new Promise((resolve, reject) => {
      const sent = request(
        {
          host: HOST,
          port: this.port,
          method,
          path,
          agent: this.agent,
          headers: {
            origin: `http://${HOST}:${this.port}`,
            cookie: [...this.cookies].map(([name, value]) => `${name}=${value}`).join("; "),
            ...(body === null ? {} : { "content-type": type, "content-length": Buffer.byteLength(body) }),
          },
        },
        resolve,
      );
      // The server may close a kept connection just as it is used again; a browser then asks once more.
      sent.on("error", (thrown: NodeJS.ErrnoException) => {
        if (sent.reusedSocket && thrown.code === "ECONNRESET") {
          this.send(method, path, body, type).then(resolve, reject);
        } else reject(thrown);
      });
      sent.end(body ?? undefined);
    });
  }

  private async ask(method: string, path: string, body: string | null, type: string): Promise<Answer> {
    const answer = await this.send(method, path, body, type);
    for (const line of answer.headers["set-cookie"] ?? []) {
      const [, name = "", value = ""] = line.match(/^([^=]+)=([^;]*)/) ?? [];
      this.cookies.set(name, value);
    }
    let text = "";
    answer.setEncoding("utf8");
    for await (const chunk of answer) text += chunk;
    return { status: answer.statusCode ?? 0, text };
  }

  get(path: string): Promise<Answer> {
    return this.ask("GET", path, null, "");
  }

  post(path: string, body: unknown): Promise<Answer> {
    return this.ask("POST", path, JSON.stringify(body), "application/json");
  }

  /** Signs in by the program's own door; throws when it is refused. */
  async signIn(login: string, password: string): Promise<void> {
    const { csrfToken } = JSON.parse((await this.get("/api/auth/csrf")).text);
    const form = new URLSearchParams({ csrfToken, login, password, json: "true" }).toString();
    const path = "/api/auth/callback/credentials";
    const answer = await this.ask("POST", path, form, "application/x-www-form-urlencoded");
    const hasSession = [...this.cookies.keys()].some((name) => name.includes("loupework-session"));
    if (answer.status >= 400 || !hasSession) throw new Error(`sign-in of ${login}: ${answer.status}`);
  }

  /** Listens to a stream; gives what ends it. `onEnd` says that the server ended it. */
  async listen(path: string, onEvent: (name: string, data: string) => void, onEnd: () => void) {
    const answer = await this.send("GET", path, null, "");
    if (answer.statusCode !== 200) throw new Error(`${path} answered ${answer.statusCode}`);
    let text = "";
    answer.setEncoding("utf8");
    answer.on("data", (chunk: string) => {
      text += chunk;
      for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
        const block = text.slice(0, end);
        text = text.slice(end + 2);
        const [, name, data] = block.match(/^event: (.+)\ndata: (.+)$/) ?? [];
        if (name !== undefined && data !== undefined) onEvent(name, data);
      }
    });
    answer.on("close", onEnd);
    answer.on("error", () => {});
    return () => void answer.destroy();
  }

  close(): void {
    this.agent.destroy();
  }
}
