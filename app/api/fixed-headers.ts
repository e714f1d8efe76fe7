/** Half a year: long enough to hold, short enough to leave. */
const STRICT_TRANSPORT = "max-age=15552000";

const FIXED: Readonly<Record<string, string>> = {
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "same-origin",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Permissions-Policy": "camera=(self), microphone=(), geolocation=(), payment=()",
};

/** The headers that keep a browser on its guard, the same for every answer; https only where the program is reached by it. */
export function getFixedHeaders(): Readonly<Record<string, string>> {
  if (!process.env.LOUPEWORK_URL?.startsWith("https:")) return FIXED;
  return { ...FIXED, "Strict-Transport-Security": STRICT_TRANSPORT };
}
