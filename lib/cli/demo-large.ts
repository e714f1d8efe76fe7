/**
 * `npm run demo:large [-- SHARE]`: fills a database of its own with the large demo, in `data/large.db` unless DATABASE_URL
 * names another file. SHARE, 0 to 1, takes fewer sections. Refuses a database that holds anybody.
 */
import { statSync } from "node:fs";
import { isAppError } from "@/lib/base/app-error";
import { applyMigrations } from "@/lib/data/apply-migrations";
import { closeDatabase } from "@/lib/data/store/database";
import { loadLargeDemo } from "@/lib/workflows/demo/load-large-demo";

process.env.DATABASE_URL ??= "file:./data/large.db";
process.env.LOUPEWORK_SECRET ??= "of no use here: nobody signs in while it is filled";
const url = process.env.DATABASE_URL;
const share = Number(process.argv[2] ?? 1);

try {
  if (!(share > 0 && share <= 1)) throw new RangeError("the share must be above 0 and at most 1");
  const began = performance.now();
  await applyMigrations(url);
  const { sections, sittings } = await loadLargeDemo(share, new Date(), (done, of) =>
    process.stdout.write(`\r· section ${done} of ${of}`),
  );
  await closeDatabase();
  const megabytes = statSync(url.replace(/^file:/, "")).size / 1e6;
  const seconds = (performance.now() - began) / 1000;
  console.log(
    `\n· ${sections} sections, ${sittings} sittings in ${url}: ${seconds.toFixed(0)} s, ${megabytes.toFixed(0)} MB`,
  );
} catch (thrown) {
  console.error(isAppError(thrown) || thrown instanceof RangeError ? thrown.message : thrown);
  process.exitCode = 1;
}
