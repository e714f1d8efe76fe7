import Link from "next/link";
import classes from "@/components/section/needs-list.module.css";
import { EmptyState } from "@/components/ui/empty-state";
import { NEED_KINDS, NEED_RULES, type NeedKind, type StudentNeed } from "@/lib/agreement/find-needs";

/** What is said of a student in a few words. */
export const NEED_WORDS: Readonly<Record<NeedKind, string>> = {
  overlooks: "overlooks much",
  strays: "draws what is not there",
  harsh: "grades harshly",
  lenient: "grades leniently",
  "hand-in": "hands little in",
};

export interface NeedsListProps {
  readonly sectionId: string;
  readonly needs: readonly StudentNeed[];
}

/** Students who need a word, with what and on which numbers; the rules stand under them in words. */
export function NeedsList({ sectionId, needs }: NeedsListProps) {
  const byStudent = new Map<string, StudentNeed[]>();
  for (const need of needs) byStudent.set(need.studentId, [...(byStudent.get(need.studentId) ?? []), need]);
  const used = NEED_KINDS.filter((kind) => needs.some((need) => need.kind === kind));
  return (
    <section className={classes.root} aria-labelledby="needs-title">
      <h2 id="needs-title">Needs a word ({byStudent.size})</h2>
      {needs.length === 0 ? (
        <EmptyState title="Nobody stands out">
          No student differs from the section by more than chance explains, or there are too few plots to
          tell.
        </EmptyState>
      ) : (
        <ul className={classes.list}>
          {[...byStudent].map(([studentId, own]) => (
            <li key={studentId}>
              <Link href={`/sections/${sectionId}/students/${studentId}`} className={classes.name}>
                {own[0]?.name}
              </Link>
              <ul className={classes.reasons}>
                {own.map(({ kind, evidence }) => (
                  <li key={kind}>
                    <strong>{NEED_WORDS[kind]}</strong>: {evidence}
                  </li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
      )}
      <details className={classes.rules}>
        <summary>How this is decided</summary>
        <ul>
          {(used.length === 0 ? NEED_KINDS : used).map((kind) => (
            <li key={kind}>{NEED_RULES[kind]}</li>
          ))}
          <li>By chance alone each rule on intervals names about one student in forty.</li>
        </ul>
      </details>
    </section>
  );
}
