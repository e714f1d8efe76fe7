import Link from "next/link";
import type { OpenSitting } from "@/components/my-stones/begin-button";
import classes from "@/components/my-stones/exercise-section.module.css";
import { isStoneWaiting } from "@/components/my-stones/is-stone-waiting";
import { StoneLink } from "@/components/my-stones/stone-link";
import { CutGlyph } from "@/components/ui/cut-glyph";
import { EXERCISE_PHASE_WORDS, STONE_STATE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { toMinutes } from "@/components/ui/to-minutes";
import { When } from "@/components/ui/when";
import { CUT_LABELS } from "@/lib/gem/cut-name";
import type { MyExercise } from "@/lib/plot/student-view";

type MyStone = MyExercise["stones"][number];

/** What is worth saying of a stone in its state, beside the state itself. */
function toStoneDetail(stone: MyStone, isReleasedByHand: boolean): string {
  const marks = stone.markCount === 1 ? "1 mark" : `${stone.markCount} marks`;
  if (stone.total !== null) return `${stone.total.toFixed(2)} of 100 points`;
  if (stone.state === "on-the-bench") return `${marks} so far`;
  if (stone.state === "handed-in") {
    const opens = isReleasedByHand
      ? "The debrief opens once your instructor releases it."
      : "The debrief is not open yet.";
    return `${marks}. ${opens}`;
  }
  if (stone.state === "missed") return "The exercise closed before it was handed in.";
  return "";
}

/** When a stone that waits can be begun; nothing for any other. */
function OpeningWords({ stone: { opensAt, opensAfter } }: { stone: MyStone }) {
  if (opensAt === null) return opensAfter === null ? null : `Opens once ${opensAfter} is handed in`;
  return (
    <>
      Opens <When iso={opensAt} show="both" />
      {opensAfter !== null && `, and once ${opensAfter} is handed in`}
    </>
  );
}

function StoneRow({
  stone,
  isTaken,
  minutes,
  openSitting,
  exerciseId,
  isReleasedByHand,
}: {
  stone: MyStone;
  isReleasedByHand: boolean;
  isTaken: boolean;
  minutes: number | null;
  openSitting: OpenSitting | null;
  exerciseId: string;
}) {
  const { tone, words } = STONE_STATE_WORDS[stone.state];
  const detail = toStoneDetail(stone, isReleasedByHand);
  return (
    <li className={classes.stone}>
      <div className={classes.glyph}>
        <CutGlyph cut={stone.cut} size={44} />
      </div>
      <h3 className={classes.label}>
        {stone.label}
        {stone.isRetake && <span className={classes.note}> retake</span>}
        {!stone.isRetake && stone.attempt > 1 && (
          <span className={classes.note}> attempt {stone.attempt}</span>
        )}
      </h3>
      <p className={classes.body}>
        {CUT_LABELS[stone.cut]}
        {stone.weightCt !== null && `, ${stone.weightCt.toFixed(2)} ct`}
      </p>
      <div className={classes.state}>
        <StatusBadge tone={tone}>{words}</StatusBadge>
      </div>
      <p className={classes.detail}>
        {detail}
        <OpeningWords stone={stone} />
        {stone.endsAt !== null && (
          <>
            , time runs out <When iso={stone.endsAt} show="both" />
          </>
        )}
        {stone.earlierDebriefId !== null && (
          <>
            {detail !== "" && " · "}
            <Link href={`/debrief/${stone.earlierDebriefId}`}>Debrief of an earlier attempt</Link>
          </>
        )}
        {openSitting !== null &&
          isTaken &&
          !isStoneWaiting(stone) &&
          (stone.state === "on-the-bench" || stone.state === "not-begun") && (
            <>
              {detail !== "" && " · "}
              <Link href={`/check/${stone.exerciseStoneId}`}>Is this the right stone?</Link>
            </>
          )}
      </p>
      <div className={classes.action}>
        <StoneLink
          exerciseId={exerciseId}
          stone={stone}
          isTaken={isTaken}
          minutes={minutes}
          openSitting={openSitting}
          variant="outline"
          size="sm"
        />
      </div>
    </li>
  );
}

function ExerciseDates({ exercise }: { exercise: MyExercise }) {
  if (exercise.phase === "ahead") {
    return (
      <>
        opens <When iso={exercise.opensAt} show="both" />, due <When iso={exercise.dueAt} />
      </>
    );
  }
  if (exercise.phase === "late" && exercise.closesAt !== null) {
    return (
      <>
        was due <When iso={exercise.dueAt} />, closes <When iso={exercise.closesAt} show="both" />
      </>
    );
  }
  return (
    <>
      {exercise.phase === "open" ? "due" : "was due"} <When iso={exercise.dueAt} show="both" />
    </>
  );
}

/** An exercise as its student sees it: by when, how it stands, and each of its stones. A preview opens nothing. */
export function ExerciseSection({
  exercise,
  openSitting,
}: {
  exercise: MyExercise;
  openSitting: OpenSitting | null;
}) {
  const { tone, words } = EXERCISE_PHASE_WORDS[exercise.phase];
  const isTaken = exercise.phase === "open" || exercise.phase === "late";
  const headingId = `exercise-${exercise.exerciseId}`;
  return (
    <section className={classes.root} aria-labelledby={headingId}>
      <div className={classes.head}>
        <h2 id={headingId}>{exercise.title}</h2>
        <StatusBadge tone={tone}>{words}</StatusBadge>
      </div>
      <p className={classes.dates}>
        {exercise.sectionName} · <ExerciseDates exercise={exercise} />
        {exercise.debriefsAt !== null && (
          <>
            {" "}
            · debriefs open from <When iso={exercise.debriefsAt} />
          </>
        )}
        {exercise.minutesPerStone !== null && ` · ${toMinutes(exercise.minutesPerStone)} for each stone`}
      </p>
      {isTaken && (
        <p className={classes.dates}>
          <a href={`/api/exercises/${exercise.exerciseId}/worksheets.pdf`} target="_blank" rel="noopener">
            Blank worksheets to print
          </a>
        </p>
      )}
      {exercise.notes !== "" && <p className={classes.notes}>{exercise.notes}</p>}
      <ul className={classes.stones}>
        {exercise.stones.map((stone) => (
          <StoneRow
            key={stone.exerciseStoneId}
            exerciseId={exercise.exerciseId}
            isReleasedByHand={exercise.debriefsAt === null}
            stone={stone}
            isTaken={isTaken}
            minutes={exercise.minutesPerStone}
            openSitting={openSitting}
          />
        ))}
      </ul>
    </section>
  );
}
