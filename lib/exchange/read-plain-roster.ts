/** The plain roster: one CSV file, a row for each person and section (README, Rosters). */
import type { Fault } from "@/lib/base/app-error";
import { AppError } from "@/lib/base/app-error";
import { parseTable, requireColumns, type TableRow } from "@/lib/exchange/parse-table";
import { LoginSchema, PersonNameSchema } from "@/lib/plot/account-input";
import {
  type ReadRoster,
  ROSTER_ROLES,
  type RosterPerson,
  type RosterRole,
  type RosterSection,
} from "@/lib/plot/roster";

const COLUMNS = ["login", "name", "section", "role", "term"] as const;

/** Parts several sections of one cell. */
const BETWEEN_SECTIONS = "|";

/** Reads a text by its schema, or notes a fault at the column. */
export function readCell<T>(
  schema: {
    safeParse: (
      value: unknown,
    ) => { success: true; data: T } | { success: false; error: { issues: { message: string }[] } };
  },
  value: string,
  path: string,
  faults: Fault[],
): T | null {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  faults.push({ path, message: parsed.error.issues[0]?.message ?? "cannot be taken" });
  return null;
}

function readRole(value: string, path: string, faults: Fault[]): RosterRole {
  const role = ROSTER_ROLES.find((one) => one === value.toLowerCase());
  if (role !== undefined) return role;
  if (value !== "") {
    const message =
      value.toLowerCase() === "director"
        ? "a director is added by hand, not by a roster"
        : `“${value.slice(0, 40)}” is no role: student or instructor`;
    faults.push({ path, message });
  }
  return "student";
}

function readSections({ path, values }: TableRow, faults: Fault[]): RosterSection[] {
  const at = `${path}, section`;
  const term = values.term ?? "";
  if (term.length > 60) faults.push({ path: `${path}, term`, message: "is longer than 60 characters" });
  const names = (values.section ?? "").split(BETWEEN_SECTIONS).map((name) => name.trim());
  return names
    .filter((name) => name !== "")
    .map((name) => {
      if (readCell(PersonNameSchema, name, at, faults) === null) return { name: "", term, path: at };
      return { name, term, path: at };
    });
}

/** Adds a row's person, or its sections to the person of an earlier row. */
function addPerson(people: Map<string, RosterPerson>, person: RosterPerson, faults: Fault[]): void {
  const before = people.get(person.login);
  if (before === undefined) {
    people.set(person.login, person);
    return;
  }
  for (const column of ["name", "role"] as const) {
    if (before[column] !== person[column]) {
      faults.push({
        path: `${person.path}, ${column}`,
        message: `differs from ${before.path}, which is of the same person`,
      });
    }
  }
  people.set(person.login, { ...before, sections: [...before.sections, ...person.sections] });
}

/**
 * Reads a plain roster. Columns `login` and `name` must be there, `section` (several parted by `|`), `role` (student
 * where it is empty) and `term` may; any other is refused, so that a misspelt one is not passed over. Faults carry
 * file, row and column. Throws AppError `bad-input` for a file that is no such table.
 */
export function readPlainRoster(file: string, text: string, mostRows: number): ReadRoster {
  const table = parseTable(
    file,
    text.replace(/^[^\r\n]*/, (head) => head.toLowerCase()),
    mostRows,
  );
  requireColumns(table, ["login", "name"]);
  const odd = table.heads.filter((head) => !COLUMNS.some((column) => column === head));
  if (odd.length > 0) {
    throw new AppError(
      "bad-input",
      "The roster was refused; nothing was written.",
      odd.map((head) => ({
        path: `${file} row 1`,
        message: `“${head.slice(0, 60)}” is none of the columns ${COLUMNS.join(", ")}`,
      })),
    );
  }
  const faults: Fault[] = [];
  const people = new Map<string, RosterPerson>();
  for (const row of table.rows) {
    const { path, values } = row;
    const login = readCell(LoginSchema, values.login ?? "", `${path}, login`, faults);
    const name = readCell(PersonNameSchema, values.name ?? "", `${path}, name`, faults);
    const role = readRole(values.role ?? "", `${path}, role`, faults);
    const sections = readSections(row, faults);
    if (login !== null && name !== null) addPerson(people, { path, login, name, role, sections }, faults);
  }
  return { form: "plain", people: [...people.values()], leftOut: [], faults };
}
