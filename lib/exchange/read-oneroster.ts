/**
 * OneRoster 1.2 CSV: `users`, `classes`, `enrollments`, `roles`, and the titles of `academicSessions` where they are
 * there; 1.1, whose users carry their role, is read too. Columns by check-values.md 9.1. Files and columns that are not
 * needed are passed over.
 */
import type { Fault } from "@/lib/base/app-error";
import { AppError } from "@/lib/base/app-error";
import { parseTable, requireColumns, type Table, type TableRow } from "@/lib/exchange/parse-table";
import { readCell } from "@/lib/exchange/read-plain-roster";
import { LoginSchema, PersonNameSchema } from "@/lib/plot/account-input";
import type { ReadRoster, RosterLeftOut, RosterPerson, RosterRole, RosterSection } from "@/lib/plot/roster";

const FILES = {
  users: ["sourcedId", "username", "givenName", "familyName"],
  classes: ["sourcedId", "title"],
  enrollments: ["classSourcedId", "userSourcedId", "role"],
  roles: ["userSourcedId", "role"],
  academicSessions: ["sourcedId", "title"],
} as const;
type FileName = keyof typeof FILES;
type Tables = Partial<Record<FileName, Table>>;

/** The roles of OneRoster that a roster here has; every other is left out. */
const ROLES: ReadonlyMap<string, RosterRole> = new Map([
  ["student", "student"],
  ["teacher", "instructor"],
]);

function refuse(path: string, message: string): AppError {
  return new AppError("bad-input", "The roster was refused; nothing was written.", [{ path, message }]);
}

/** The file's name among those of OneRoster, `users.csv` as `users`; null for another. */
export function findOneRosterName(file: string): FileName | null {
  const names = Object.keys(FILES) as FileName[];
  return names.find((name) => file === `${name}.csv`) ?? null;
}

const isGone = ({ values }: TableRow) => values.status === "tobedeleted";

function readTables(files: ReadonlyMap<string, string>, mostRows: number): Tables {
  const tables: Tables = {};
  for (const [file, text] of files) {
    const name = findOneRosterName(file);
    if (name === null) continue;
    const table = parseTable(file, text, mostRows);
    requireColumns(table, FILES[name]);
    tables[name] = table;
  }
  return tables;
}

/** The role of each user: of `roles`, the primary one first, or of the user's own column (1.1). */
function findRoles({ roles, users }: Tables): Map<string, string> {
  const found = new Map<string, string>();
  for (const { values } of users?.rows ?? []) {
    if (values.role !== undefined && values.role !== "") found.set(values.sourcedId ?? "", values.role);
  }
  const rows = (roles?.rows ?? []).filter((row) => !isGone(row));
  const last = (row: TableRow) => (row.values.roleType === "primary" ? 1 : 0);
  for (const { values } of [...rows].sort((a, b) => last(a) - last(b))) {
    found.set(values.userSourcedId ?? "", values.role ?? "");
  }
  return found;
}

function listClasses({ classes, academicSessions }: Tables): Map<string, RosterSection> {
  const terms = new Map((academicSessions?.rows ?? []).map(({ values }) => [values.sourcedId, values.title]));
  const rows = (classes?.rows ?? []).filter((row) => !isGone(row));
  return new Map(
    rows.map(({ path, values }) => {
      const [first = ""] = (values.termSourcedIds ?? "").split(",");
      const term = (terms.get(first.trim()) ?? "").slice(0, 60);
      return [values.sourcedId ?? "", { name: values.title ?? "", term, path: `${path}, title` }];
    }),
  );
}

interface User {
  readonly person: Omit<RosterPerson, "sections">;
  readonly sections: RosterSection[];
}

/** A sign-in name from a user name; of an address the part before the @. */
function toLogin(username: string): string {
  const [before = ""] = username.split("@");
  return LoginSchema.safeParse(username).success ? username : before;
}

function readUsers(tables: Tables, faults: Fault[], leftOut: RosterLeftOut[]): Map<string, User | null> {
  const roles = findRoles(tables);
  const users = new Map<string, User | null>();
  const logins = new Map<string, string>();
  for (const row of tables.users?.rows ?? []) {
    const { path, values } = row;
    const id = values.sourcedId ?? "";
    if (id === "") faults.push({ path: `${path}, sourcedId`, message: "must not be empty" });
    else if (users.has(id)) faults.push({ path: `${path}, sourcedId`, message: "stands in the file twice" });
    const full = `${values.preferredGivenName || values.givenName} ${values.preferredFamilyName || values.familyName}`;
    const word = roles.get(id) ?? "";
    const why = isGone(row)
      ? "is marked to be deleted"
      : values.enabledUser === "false"
        ? "is not enabled"
        : !ROLES.has(word)
          ? word === ""
            ? "has no role"
            : `has the role ${word.slice(0, 40)}`
          : null;
    if (why !== null) {
      leftOut.push({
        path,
        login: (values.username ?? "").slice(0, 64),
        name: full.trim().slice(0, 120),
        why,
      });
      users.set(id, null);
      continue;
    }
    const login = readCell(LoginSchema, toLogin(values.username ?? ""), `${path}, username`, faults);
    const name = readCell(PersonNameSchema, full, `${path}, familyName`, faults);
    if (login === null || name === null) continue;
    const other = logins.get(login);
    if (other !== undefined)
      faults.push({ path: `${path}, username`, message: `is “${login}” again, as in ${other}` });
    logins.set(login, path);
    users.set(id, { person: { path, login, name, role: ROLES.get(word) ?? "student" }, sections: [] });
  }
  return users;
}

function enrol(
  row: TableRow,
  users: Map<string, User | null>,
  classes: Map<string, RosterSection>,
  faults: Fault[],
): void {
  const { path, values } = row;
  const role = ROLES.get(values.role ?? "");
  if (isGone(row) || role === undefined) return;
  const user = users.get(values.userSourcedId ?? "");
  const section = classes.get(values.classSourcedId ?? "");
  if (user === null) return;
  if (user === undefined) faults.push({ path: `${path}, userSourcedId`, message: "is no user of users.csv" });
  if (section === undefined)
    faults.push({ path: `${path}, classSourcedId`, message: "is no class of classes.csv" });
  if (user === undefined || section === undefined) return;
  if (user.person.role !== role) {
    faults.push({ path: `${path}, role`, message: `is ${values.role}, but the user’s own role is another` });
  }
  user.sections.push(section);
}

/**
 * Reads the files of a OneRoster export, by name. `users.csv` must be there, with `roles.csv` or a role column of its
 * own. Faults carry file, row and column. Throws AppError `bad-input` for files that are no such tables.
 */
export function readOneRoster(files: ReadonlyMap<string, string>, mostRows: number): ReadRoster {
  const tables = readTables(files, mostRows);
  if (tables.users === undefined) throw refuse("users.csv", "is missing");
  if (tables.roles === undefined && !tables.users.heads.includes("role")) {
    throw refuse("roles.csv", "is missing, and users.csv has no role column of its own");
  }
  if (tables.enrollments !== undefined && tables.classes === undefined)
    throw refuse("classes.csv", "is missing");
  const faults: Fault[] = [];
  const leftOut: RosterLeftOut[] = [];
  const classes = listClasses(tables);
  for (const { name, path } of classes.values()) readCell(PersonNameSchema, name, path, faults);
  const users = readUsers(tables, faults, leftOut);
  for (const row of tables.enrollments?.rows ?? []) enrol(row, users, classes, faults);
  const people = [...users.values()].flatMap((user) =>
    user === null ? [] : [{ ...user.person, sections: user.sections }],
  );
  return { form: "oneroster", people, leftOut, faults };
}
