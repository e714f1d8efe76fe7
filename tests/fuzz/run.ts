/**
 * `npm run fuzz [CASES [SEED]]`: broken exercise sets, plots and rosters, CASES (10,000) in all through the readers and a
 * fifth as many more through the importers and their database. Each must be taken as valid and come out again as it
 * went in, or be refused with the place of each fault; the exit status is 1 where one was neither, wrote something and
 * was refused, or took longer than a person waits.
 */
import { type CaseOutcome, tally } from "@/tests/fuzz/judge-case";
import { IMPORTER_KINDS, type ImporterKind, tryImporter } from "@/tests/fuzz/try-database";
import { READER_KINDS, type ReaderKind, tryReader } from "@/tests/fuzz/try-readers";
import { createTestDatabase } from "@/tests/support/database";
import { buildSchool } from "@/tests/support/school";

/** Generous: what takes longer is a hang (ms). */
const HANG_MS = 15_000;

/** Accepted cases make the database grow; it begins anew after so many. */
const CASES_PER_DATABASE = 250;

type Outcome = CaseOutcome & { readonly at: string };

/** Prints one line of figures, and every crash and hang; true where there is none. */
function report(kind: string, outcomes: readonly Outcome[]): boolean {
  const { cases, accepted, refused, crashes, slowestMs } = tally(outcomes);
  const hangs = outcomes.filter(({ ms }) => ms > HANG_MS);
  console.log(
    `${kind.padEnd(14)} ${cases} cases: ${accepted} accepted, ${refused} refused, ${crashes.length} crashes, slowest ${Math.round(slowestMs)} ms`,
  );
  for (const { at, why } of crashes) console.log(`  ${at}: ${why}`);
  for (const { at, ms } of hangs) console.log(`  ${at}: took ${Math.round(ms)} ms`);
  return crashes.length === 0 && hangs.length === 0;
}

async function fuzzReader(kind: ReaderKind, seed: number, cases: number): Promise<boolean> {
  const outcomes: Outcome[] = [];
  for (let index = 0; index < cases; index += 1) outcomes.push(await tryReader(kind, seed, index));
  return report(kind, outcomes);
}

async function fuzzImporter(kind: ImporterKind, seed: number, cases: number): Promise<boolean> {
  const outcomes: Outcome[] = [];
  for (let from = 0; from < cases; from += CASES_PER_DATABASE) {
    const database = await createTestDatabase();
    const school = await buildSchool();
    for (let index = from; index < Math.min(cases, from + CASES_PER_DATABASE); index += 1) {
      outcomes.push(await tryImporter(kind, school, seed, index));
    }
    await database.remove();
  }
  return report(kind, outcomes);
}

async function main(): Promise<void> {
  const [cases = 10_000, seed = 1] = process.argv.slice(2).map(Number);
  process.env.LOUPEWORK_SECRET ??= "a secret of the fuzz alone, 32 signs long";
  const readers = Object.keys(READER_KINDS) as ReaderKind[];
  const importers = Object.keys(IMPORTER_KINDS) as ImporterKind[];
  const isClean: boolean[] = [];
  for (const kind of readers) isClean.push(await fuzzReader(kind, seed, Math.ceil(cases / readers.length)));
  for (const kind of importers)
    isClean.push(await fuzzImporter(kind, seed, Math.ceil(cases / 5 / importers.length)));
  const isAll = isClean.every(Boolean);
  console.log(isAll ? "every one was taken or refused" : "SOME WERE NEITHER TAKEN NOR REFUSED");
  if (!isAll) process.exitCode = 1;
}

main().catch((thrown: unknown) => {
  console.error(thrown);
  process.exit(1);
});
