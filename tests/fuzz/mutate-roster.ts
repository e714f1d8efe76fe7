/** Rosters to break: a plain table, OneRoster's tables loose or in a zip, and what may be wrong with each. */
import { strToU8, zipSync } from "fflate";
import type { SeededRandom } from "@/lib/base/seeded-random";
import type { ZipEntry } from "@/lib/exchange/read-zip";
import { mutateBytes } from "@/tests/fuzz/mutate-bytes";
import { ODD_TEXTS } from "@/tests/fuzz/odd-values";

type Rows = readonly (readonly string[])[];

const PLAIN: Rows = [
  ["login", "name", "role", "section", "term"],
  ["anna", "Anna Apt", "student", "Morning", "2026 autumn"],
  ["bert", "Bert Bold", "student", "Morning", "2026 autumn"],
  ["cora", "Cora Calm", "instructor", "Evening", "2026 autumn"],
];

const ONE_ROSTER: Readonly<Record<string, Rows>> = {
  "users.csv": [
    ["sourcedId", "status", "enabledUser", "username", "givenName", "familyName"],
    ["u1", "active", "true", "anna", "Anna", "Apt"],
    ["u2", "active", "true", "bert@school.invalid", "Bert", "Bold"],
    ["u3", "active", "true", "cora", "Cora", "Calm"],
  ],
  "classes.csv": [
    ["sourcedId", "title", "termSourcedIds"],
    ["c1", "Morning", "t1"],
    ["c2", "Evening", "t1"],
  ],
  "academicSessions.csv": [
    ["sourcedId", "title"],
    ["t1", "2026 autumn"],
  ],
  "roles.csv": [
    ["sourcedId", "userSourcedId", "roleType", "role"],
    ["r1", "u1", "primary", "student"],
    ["r2", "u2", "primary", "student"],
    ["r3", "u3", "primary", "teacher"],
  ],
  "enrollments.csv": [
    ["sourcedId", "classSourcedId", "userSourcedId", "role"],
    ["e1", "c1", "u1", "student"],
    ["e2", "c1", "u2", "student"],
    ["e3", "c2", "u3", "teacher"],
  ],
};

const quote = (cell: string) => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

function write(rows: Rows, random: SeededRandom): Uint8Array {
  const mark = random.chance(0.1) ? "\uFEFF" : "";
  const sign = random.chance(0.9) ? "," : ";";
  return strToU8(mark + rows.map((row) => row.map(quote).join(sign)).join(random.pick(["\n", "\r\n"])));
}

function changeRows(rows: Rows, random: SeededRandom): Rows {
  const copy = rows.map((row) => [...row]);
  const row = random.pick(copy);
  const at = random.int(Math.max(1, row.length));
  const ways = [
    () => row.splice(at, 1, random.pick(ODD_TEXTS)),
    () => row.splice(at, 1, random.pick(copy)[at] ?? ""),
    () => row.splice(at, 1),
    () => row.push(random.pick(ODD_TEXTS)),
    () => copy.push([...random.pick(copy)]),
    () => copy.splice(random.int(copy.length), copy.length > 1 ? 1 : 0),
    () => copy.unshift([]),
    () => row.reverse(),
  ];
  random.pick(ways)();
  return copy;
}

/** A table with one to three faults in its cells or rows, at times in its bytes. */
function breakTable(rows: Rows, random: SeededRandom): Uint8Array {
  let broken = rows;
  for (let left = random.int(4); left > 0 && broken.length > 0; left -= 1)
    broken = changeRows(broken, random);
  const bytes = write(broken, random);
  return random.chance(0.25) ? mutateBytes(bytes, random) : bytes;
}

/** A plain roster, broken. */
export function drawPlainRoster(random: SeededRandom): ZipEntry[] {
  return [{ name: random.pick(["roster.csv", "users.xlsx", "=1+1.csv"]), bytes: breakTable(PLAIN, random) }];
}

function drawTables(random: SeededRandom): ZipEntry[] {
  const names = Object.keys(ONE_ROSTER);
  const broken = random.pick(names);
  return names
    .filter((name) => name !== broken || random.chance(0.8))
    .map((name) => {
      const rows = ONE_ROSTER[name] ?? [];
      return { name, bytes: name === broken ? breakTable(rows, random) : write(rows, random) };
    });
}

const ODD_NAMES = [
  "../users.csv",
  "constructor",
  "a/b/users.csv",
  "users.csv\u0000",
  "x".repeat(300),
  "a.zip",
];

function drawExtra(random: SeededRandom): [string, Uint8Array] {
  const inner = strToU8("PK\u0003\u0004 no zip, though it begins like one");
  const bomb = new Uint8Array(12_000_000);
  const bytes = random.pick([inner, strToU8("a,b\n1,2"), ...(random.chance(0.05) ? [bomb] : [])]);
  return [random.pick(ODD_NAMES), bytes];
}

/** OneRoster's tables, loose, with one of them broken or missing. */
export function drawOneRoster(random: SeededRandom): ZipEntry[] {
  const tables = drawTables(random);
  return random.chance(0.1) ? [...tables, ...drawPlainRoster(random)] : tables;
}

/** The same as one zip, at times with entries that do not belong there, and with broken bytes. */
export function drawZippedRoster(random: SeededRandom): ZipEntry[] {
  const entries = drawTables(random).map(({ name, bytes }): [string, Uint8Array] => [name, bytes]);
  if (random.chance(0.3)) entries.push(drawExtra(random));
  const zip = zipSync(Object.fromEntries(entries), { level: random.pick([0, 6] as const) });
  const bytes = random.chance(0.5) ? mutateBytes(zip, random) : zip;
  return [{ name: random.pick(["roster.zip", "roster.csv", "photo.jpg"]), bytes }];
}
