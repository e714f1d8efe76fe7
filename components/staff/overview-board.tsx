import { ArrowRight } from "lucide-react";
import Link from "next/link";
import type { ReactNode } from "react";
import classes from "@/components/staff/overview-board.module.css";
import { WorkBar } from "@/components/staff/work-bar";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { EXERCISE_PHASE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { ExerciseRow, Overview } from "@/lib/plot/staff-view";

interface Todo {
  readonly key: string;
  readonly href: string;
  readonly count: number;
  readonly what: ReactNode;
}

const plural = (count: number, one: string, many: string) => (count === 1 ? one : many);

/** Stones whose label is doubted, and stones that are overdue. */
function listDeskTodos({ mismatches, overdue }: Overview): Todo[] {
  const doubted = mismatches.map(({ trayId, trayName, count }) => ({
    key: `check ${trayId}`,
    href: `/trays/${trayId}/check#checks`,
    count,
    what: (
      <>
        {plural(count, "stone does", "stones do")} not fit {plural(count, "its", "their")} label in{" "}
        <strong>{trayName}</strong>, by a hand-in check
      </>
    ),
  }));
  if (overdue === 0) return doubted;
  const late = <>{plural(overdue, "stone is", "stones are")} overdue: handed out and not taken back</>;
  return [...doubted, { key: "overdue", href: "/trays/out", count: overdue, what: late }];
}

/** What waits for the viewer, the most pressing first. */
function listTodos(overview: Overview): Todo[] {
  const { withoutReference, exercises } = overview;
  const release = exercises
    .filter(({ handedIn, released }) => handedIn > released)
    .map(({ exerciseId, title, sectionName, handedIn, released }) => ({
      key: exerciseId,
      href: `/exercises/${exerciseId}`,
      count: handedIn - released,
      what: (
        <>
          {plural(handedIn - released, "hand-in waits", "hand-ins wait")} for release in{" "}
          <strong>{title}</strong>, {sectionName}
        </>
      ),
    }));
  const desk = listDeskTodos(overview);
  if (withoutReference === 0) return [...desk, ...release];
  return [
    ...desk,
    ...release,
    {
      key: "references",
      href: "/trays",
      count: withoutReference,
      what: (
        <>
          {plural(withoutReference, "stone has", "stones have")} no reference yet, so no exercise can use{" "}
          {plural(withoutReference, "it", "them")}
        </>
      ),
    },
  ];
}

function TodoList({ todos }: { todos: readonly Todo[] }) {
  if (todos.length === 0) {
    return <p className={classes.calm}>Nothing waits for you.</p>;
  }
  return (
    <ul className={classes.todos}>
      {todos.map(({ key, href, count, what }) => (
        <li key={key}>
          <Link href={href} className={classes.todo}>
            <span className={classes.count}>{count}</span>
            <span className={classes.what}>{what}</span>
            <ArrowRight size={18} aria-hidden="true" />
          </Link>
        </li>
      ))}
    </ul>
  );
}

function ExerciseCard({ exercise }: { exercise: ExerciseRow }) {
  const { tone, words } = EXERCISE_PHASE_WORDS[exercise.phase];
  return (
    <li className={classes.card}>
      <div className={classes.cardHead}>
        <h3>
          <Link href={`/exercises/${exercise.exerciseId}`}>{exercise.title}</Link>
        </h3>
        <StatusBadge tone={tone}>{words}</StatusBadge>
      </div>
      <p className="muted">
        {exercise.sectionName} · {exercise.stones} {plural(exercise.stones, "stone", "stones")},{" "}
        {exercise.students} {plural(exercise.students, "student", "students")}
      </p>
      <WorkBar {...exercise} />
      <p className={classes.dates}>
        {exercise.phase === "ahead" ? (
          <>
            Opens <When iso={exercise.opensAt} show="both" />
          </>
        ) : (
          <>
            Due <When iso={exercise.dueAt} show="both" />
          </>
        )}
      </p>
    </li>
  );
}

const newExercise = <LinkButton href="/exercises/new">New exercise</LinkButton>;

/** Where staff begin: what waits, and every exercise at a glance. */
export function OverviewBoard({ overview }: { overview: Overview }) {
  if (overview.stones === 0) {
    return (
      <EmptyState
        title="Begin with a tray of stones"
        action={<LinkButton href="/trays/new">Make the first tray</LinkButton>}
      >
        Make a tray, put your practice stones in it and draw their references. Then set them for a section as
        an exercise.
      </EmptyState>
    );
  }
  return (
    <div className={classes.root}>
      <section className={classes.section} aria-labelledby="todo-title">
        <h2 id="todo-title">To do next</h2>
        <TodoList todos={listTodos(overview)} />
      </section>
      <section className={classes.section} aria-labelledby="exercises-title">
        <h2 id="exercises-title">Exercises</h2>
        {overview.exercises.length === 0 ? (
          <EmptyState title="No exercise yet" action={newExercise}>
            Choose stones that have a reference, a section and a date.
          </EmptyState>
        ) : (
          <ul className={classes.cards}>
            {overview.exercises.map((exercise) => (
              <ExerciseCard key={exercise.exerciseId} exercise={exercise} />
            ))}
          </ul>
        )}
      </section>
    </div>
  );
}
