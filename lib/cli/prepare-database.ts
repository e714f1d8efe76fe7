/**
 * Brings the database up to date and loads the demo where there is no account yet (`LOUPEWORK_DEMO=0` leaves the
 * database empty: the first page then asks for a director's account). Part of `npm run up`.
 */
import { isAppError } from "@/lib/base/app-error";
import { applyMigrations } from "@/lib/data/apply-migrations";
import { readEnvironment } from "@/lib/data/read-environment";
import { loadDemo } from "@/lib/workflows/load-demo";

try {
  const { databaseUrl } = readEnvironment();
  const applied = await applyMigrations(databaseUrl);
  if (applied.length > 0) console.log(`· Database brought up to date: ${applied.join(", ")}`);
  if (process.env.LOUPEWORK_DEMO !== "0" && (await loadDemo())) console.log("· Demo school loaded");
  process.exit(0);
} catch (thrown) {
  console.error(isAppError(thrown) ? thrown.message : thrown);
  process.exit(1);
}
