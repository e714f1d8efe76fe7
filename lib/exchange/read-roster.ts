/** A roster from the bytes of its files, whatever form it has. */
import { AppError } from "@/lib/base/app-error";
import { decodeText } from "@/lib/exchange/decode-text";
import { findOneRosterName, readOneRoster } from "@/lib/exchange/read-oneroster";
import { readPlainRoster } from "@/lib/exchange/read-plain-roster";
import { isZip, readZip, type ZipEntry } from "@/lib/exchange/read-zip";
import type { ReadRoster } from "@/lib/plot/roster";

/** What a roster may be at most: a school of some thousands. */
export const ROSTER_LIMITS = {
  fileBytes: 5_000_000,
  rows: 20_000,
  zip: { entries: 64, entryBytes: 10_000_000, allBytes: 30_000_000 },
} as const;

function refuse(path: string, message: string): AppError {
  return new AppError("bad-input", "The roster was refused; nothing was written.", [{ path, message }]);
}

/** The files themselves, or those of the one zip. A zip says so by its content, whatever it is called. */
function listFiles(given: readonly ZipEntry[]): readonly ZipEntry[] {
  for (const { name, bytes } of given) {
    if (bytes.length > ROSTER_LIMITS.fileBytes) {
      throw refuse(name, `is larger than ${ROSTER_LIMITS.fileBytes / 1_000_000} MB`);
    }
  }
  const zip = given.find(({ bytes }) => isZip(bytes));
  if (zip === undefined) return given;
  if (given.length > 1) throw refuse(zip.name, "is a zip: choose it alone");
  const files = readZip(zip.bytes, zip.name, ROSTER_LIMITS.zip);
  const nested = files.find(({ bytes }) => isZip(bytes));
  if (nested !== undefined)
    throw refuse(`${zip.name}/${nested.name.slice(0, 120)}`, "is a zip within the zip");
  return files;
}

/**
 * Reads a roster: one plain CSV file, or the CSV files of OneRoster, loose or in one zip. Throws AppError `bad-input`
 * with file, row and column for what is no roster; faults of single rows are given back with what could be read.
 */
export function readRoster(given: readonly ZipEntry[]): ReadRoster {
  if (given.length === 0) throw refuse("", "no file was chosen");
  const files = listFiles(given);
  const oneRoster = files.filter(({ name }) => findOneRosterName(name) !== null);
  if (oneRoster.some(({ name }) => name === "users.csv")) {
    const texts = new Map(oneRoster.map(({ name, bytes }) => [name, decodeText(bytes, name)]));
    return readOneRoster(texts, ROSTER_LIMITS.rows);
  }
  const [only, ...more] = files;
  if (only === undefined || more.length > 0) {
    throw refuse("users.csv", "is missing among the files, and several files are no plain roster");
  }
  return readPlainRoster(only.name, decodeText(only.bytes, only.name), ROSTER_LIMITS.rows);
}
