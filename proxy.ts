/** What every page and route is answered with besides its own: the headers that keep a browser on its guard. */
import { type NextRequest, NextResponse } from "next/server";
import { getFixedHeaders } from "@/app/api/fixed-headers";

/** Development compiles in the browser and is told of changes over a socket. */
const DEVELOPMENT = process.env.NODE_ENV === "development";

/**
 * Nothing is loaded from anywhere but the server itself; a script runs only if it is a file of ours or carries this
 * answer's nonce. Styles may stand in attributes: the interface library puts sizes there.
 */
function toPolicy(nonce: string): string {
  const rules = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}'${DEVELOPMENT ? " 'unsafe-eval'" : ""}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    `connect-src 'self'${DEVELOPMENT ? " ws:" : ""}`,
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ];
  return rules.join("; ");
}

export function proxy(request: NextRequest): NextResponse {
  const policy = toPolicy(btoa(crypto.randomUUID()));
  const headers = new Headers(request.headers);
  // The framework reads the nonce from here and puts it on its own scripts.
  headers.set("Content-Security-Policy", policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("Content-Security-Policy", policy);
  for (const [name, value] of Object.entries(getFixedHeaders())) response.headers.set(name, value);
  return response;
}

/** What every bench sends with each step passes by: to come through here costs as much as the save, and `answerBare` does it. */
export const config = {
  matcher: "/((?!_next/static|_next/image|api/sittings/[^/]+/(?:events|presence)$).*)",
};
