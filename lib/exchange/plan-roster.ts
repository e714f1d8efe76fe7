/** What a roster would do to the accounts and sections that there are: people are matched by their sign-in names. */
import type { Fault } from "@/lib/base/app-error";
import type { ReadRoster, RosterPerson, RosterRow, RosterSection } from "@/lib/plot/roster";
import type { Role } from "@/lib/plot/staff-view";

/** Somebody with an account. */
export interface KnownPerson {
  readonly userId: string;
  readonly login: string;
  readonly name: string;
  readonly role: Role;
  readonly active: boolean;
  /** Sections that the person is enrolled in or teaches. */
  readonly sectionIds: readonly string[];
}

export interface KnownSection {
  readonly sectionId: string;
  readonly name: string;
  readonly term: string;
}

export interface RosterGround {
  readonly people: readonly KnownPerson[];
  readonly sections: readonly KnownSection[];
}

/** A section that a person is to be in: one that is there, or one that would be made. */
export type SectionTarget =
  | { readonly kind: "known"; readonly section: KnownSection }
  | { readonly kind: "new"; readonly name: string; readonly term: string };

/** What is to be written of one person; nothing of it where the row is as it was. */
export interface PlannedPerson {
  readonly person: RosterPerson;
  readonly known: KnownPerson | null;
  readonly joins: readonly SectionTarget[];
}

export interface RosterWork {
  readonly rows: readonly RosterRow[];
  readonly sections: readonly { readonly name: string; readonly term: string }[];
  readonly faults: readonly Fault[];
  readonly people: readonly PlannedPerson[];
}

const toKey = ({ name, term }: { name: string; term: string }) => JSON.stringify([name, term]);

/** Finds the section that is meant, or notes why it cannot be told. A name without a term must be one section's. */
function findTarget(
  { name, term: said, path }: RosterSection,
  { sections }: RosterGround,
  termOfNew: string,
  faults: Fault[],
): SectionTarget | null {
  const named = sections.filter((section) => section.name === name && (said === "" || section.term === said));
  const inTerm = named.length > 1 ? named.filter(({ term }) => term === termOfNew) : named;
  const [one, ...more] = inTerm;
  if (one !== undefined && more.length === 0) return { kind: "known", section: one };
  const term = said === "" ? termOfNew : said;
  if (named.length > 1) {
    faults.push({ path, message: `“${name}” is the name of ${named.length} sections: say of which term` });
    return null;
  }
  if (term === "") {
    faults.push({ path, message: `there is no section “${name}”, and to make it a term must be said` });
    return null;
  }
  return { kind: "new", name, term };
}

function listTargets(person: RosterPerson, ground: RosterGround, termOfNew: string, faults: Fault[]) {
  const targets = new Map<string, SectionTarget>();
  for (const section of person.sections) {
    const target = findTarget(section, ground, termOfNew, faults);
    if (target !== null) targets.set(toKey(target.kind === "known" ? target.section : target), target);
  }
  return [...targets.values()];
}

function findPersonFaults(person: RosterPerson, known: KnownPerson | null): Fault[] {
  if (known === null) return [];
  if (!known.active) {
    return [
      { path: person.path, message: `the account “${known.login}” is deactivated: reactivate it first` },
    ];
  }
  if (known.role === person.role) return [];
  const message = `“${known.login}” is ${known.role} here, ${person.role} in the roster: a roster changes no roles`;
  return [{ path: person.path, message }];
}

const toWords = (target: SectionTarget) =>
  target.kind === "known"
    ? `${target.section.name}, ${target.section.term}`
    : `${target.name}, ${target.term} (new)`;

function toRow({ person, known, joins }: PlannedPerson, faults: readonly Fault[]): RosterRow {
  const { path, login, name, role } = person;
  const row = { path, login, name, role };
  if (faults.length > 0) {
    return { ...row, state: "refused", changes: faults.map((fault) => `${fault.path}: ${fault.message}`) };
  }
  const verb = role === "student" ? "enrolled in" : "teaches";
  const changes = [
    ...(known !== null && known.name !== name ? [`name: ${known.name} becomes ${name}`] : []),
    ...joins.map((target) => `${verb} ${toWords(target)}`),
  ];
  if (known === null) return { ...row, state: "made", changes };
  return { ...row, state: changes.length === 0 ? "same" : "changed", changes };
}

function planPerson(
  person: RosterPerson,
  known: KnownPerson | null,
  ground: RosterGround,
  termOfNew: string,
) {
  const faults = findPersonFaults(person, known);
  const targets = listTargets(person, ground, termOfNew, faults);
  const joins = targets.filter(
    (target) => target.kind === "new" || known?.sectionIds.includes(target.section.sectionId) !== true,
  );
  return { planned: { person, known, joins }, faults };
}

/**
 * Works a roster out against what is there: accounts to make, names to change, sections to join or to make. Nobody is
 * ever taken out of a section or changed in role. `termOfNew` is the term of sections for which the roster says none.
 */
export function planRoster(roster: ReadRoster, ground: RosterGround, termOfNew: string): RosterWork {
  const byLogin = new Map(ground.people.map((person) => [person.login, person]));
  const planned = roster.people.map((person) =>
    planPerson(person, byLogin.get(person.login) ?? null, ground, termOfNew),
  );
  const sections = new Map<string, { name: string; term: string }>();
  for (const target of planned.flatMap((one) => one.planned.joins)) {
    if (target.kind === "new") sections.set(toKey(target), { name: target.name, term: target.term });
  }
  const leftOut = roster.leftOut.map(
    ({ why, ...row }): RosterRow => ({ ...row, role: null, state: "left-out", changes: [why] }),
  );
  const isOf =
    ({ path }: RosterPerson) =>
    (fault: Fault) =>
      fault.path === path || fault.path.startsWith(`${path},`);
  return {
    rows: [
      ...planned.map(({ planned: one, faults }) =>
        toRow(one, [...roster.faults.filter(isOf(one.person)), ...faults]),
      ),
      ...leftOut,
    ],
    sections: [...sections.values()],
    faults: [...roster.faults, ...planned.flatMap(({ faults }) => faults)],
    people: planned.map((one) => one.planned),
  };
}
