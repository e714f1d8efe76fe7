import Link from "next/link";
import classes from "@/components/staff/older-note.module.css";
import { toOlderWords } from "@/components/staff/to-older-words";
import type { OlderResults, TouchedExercise } from "@/lib/plot/rescore-view";

export interface OlderNoteProps {
  exerciseId: string;
  older: OlderResults;
  openRescore: "working" | "ready" | null;
}

/** A quiet line where results are by an older reference or rubric, with the way to what a rescore would change. */
export function OlderNote({ exerciseId, older, openRescore }: OlderNoteProps) {
  const words = toOlderWords(older);
  if (words === null) return null;
  const link =
    openRescore === "working"
      ? "What a rescore would change is being worked out"
      : openRescore === "ready"
        ? "A rescore is worked out and waits for you"
        : "See what a rescore would change";
  return (
    <p className={classes.root} data-waits={openRescore === "ready"}>
      <span>{words}</span>
      <Link href={`/exercises/${exerciseId}/rescore`}>{link}</Link>
    </p>
  );
}

const count = (results: number) => (results === 1 ? "1 result" : `${results} results`);

/** The same on a stone's page: every exercise with results that are older than its newest reference. */
export function TouchedNote({ exercises }: { exercises: readonly TouchedExercise[] }) {
  const touched = exercises.filter(({ older }) => older > 0);
  if (touched.length === 0) return null;
  return (
    <section className={classes.root} aria-label="Results by an older reference">
      <ul className={classes.list}>
        {touched.map(({ exerciseId, title, sectionName, older }) => (
          <li key={exerciseId}>
            {title}, {sectionName}: {count(older)} scored by an older reference or version of this stone.{" "}
            <Link href={`/exercises/${exerciseId}/rescore`}>See what a rescore would change</Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
