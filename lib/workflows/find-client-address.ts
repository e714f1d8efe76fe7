/** The header in which the server notes the other end of the connection; what a client sends in it is thrown away. */
export const PEER_HEADER = "x-loupework-peer";

type Headers = Readonly<Record<string, unknown>>;

function listForwarded(headers: Headers): string[] {
  const forwarded = headers["x-forwarded-for"];
  if (typeof forwarded !== "string") return [];
  return forwarded.split(",").map((one) => one.trim());
}

/**
 * The address that a request came from. Behind `proxies` proxies of one's own, each of which adds whom it heard from
 * to X-Forwarded-For, it is the last but that many; what stands before was written by the client and is not believed.
 * Without one it is the connection's other end.
 */
export function findClientAddress(headers: Headers, proxies: number): string {
  const peer = headers[PEER_HEADER];
  if (proxies > 0) {
    const seen = listForwarded(headers);
    const address = seen[seen.length - proxies];
    if (address !== undefined && address !== "") return address;
  }
  return typeof peer === "string" && peer !== "" ? peer : "unknown";
}
