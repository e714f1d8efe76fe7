import "server-only";
import { type IncomingMessage, Server } from "node:http";
import { PEER_HEADER } from "@/lib/workflows/find-client-address";

// A second call, after a reload in development, must not wrap what is wrapped already.
const marked = Server.prototype as typeof Server.prototype & { loupeworkNotesPeers?: true };

/**
 * Makes every HTTP server of this process note the other end of each connection in a request header: route handlers
 * see headers alone, and X-Forwarded-For is whatever a client says when no proxy stands in front.
 */
export function notePeers(): void {
  if (marked.loupeworkNotesPeers === true) return;
  marked.loupeworkNotesPeers = true;
  const emit = Server.prototype.emit;
  Server.prototype.emit = function emitWithPeer(
    this: Server,
    event: string | symbol,
    ...args: unknown[]
  ): boolean {
    if (event === "request") {
      const request = args[0] as IncomingMessage;
      request.headers[PEER_HEADER] = request.socket.remoteAddress ?? "";
    }
    return Reflect.apply(emit, this, [event, ...args]) as boolean;
  };
}
