import { IntervalChart } from "@/components/charts/interval-chart";
import { type MapPlace, PersonItemMap } from "@/components/charts/person-item-map";
import { toNumberWords } from "@/components/charts/to-figure-words";
import classes from "@/components/section/section-board.module.css";
import { SectionStonesTable } from "@/components/section/section-stones-table";
import type { RaschPlace } from "@/lib/agreement/fit-rasch";
import type { SectionReport } from "@/lib/agreement/section-report";
import { isDefined } from "@/lib/agreement/statistic";

function toPlace(key: string, label: string, place: RaschPlace, sign: 1 | -1): MapPlace {
  return isDefined(place)
    ? { key, label, at: sign * place.value, standardError: place.standardError, reason: "" }
    : { key, label, at: null, standardError: null, reason: place.undefined };
}

const countPlaced = (places: readonly MapPlace[]) => places.filter(({ at }) => at !== null).length;

/** Who has a place on the scale and who lies beyond it, in a sentence. */
function toMapWords(students: readonly MapPlace[], marks: readonly MapPlace[]): string {
  const [s, m] = [countPlaced(students), countPlaced(marks)];
  const away = students.length - s + marks.length - m;
  const rest = away === 0 ? "" : ` ${away} have no place; the numbers say why.`;
  return `${s} students and ${m} reference marks on one scale: a student at a mark's height finds it every second time.${rest}`;
}

function toStoneRows({ stones }: SectionReport) {
  return stones.map(({ stoneId, trayId, label, rates, difficulty, ...beyond }) => ({
    stoneId,
    trayId,
    label,
    plots: rates.plots,
    marks: beyond.marks,
    foundByAll: beyond.foundByAll,
    foundByNobody: beyond.foundByNobody,
    difficulty: isDefined(difficulty) ? difficulty.value : null,
    standardError: isDefined(difficulty) ? difficulty.standardError : null,
    reason: isDefined(difficulty) ? "" : difficulty.undefined,
    found: isDefined(rates.detection) ? rates.detection.value * 100 : null,
    straysPerPlot: isDefined(rates.straysPerPlot) ? rates.straysPerPlot.value : null,
    exact:
      rates.grades.clarity && isDefined(rates.grades.clarity.exact)
        ? rates.grades.clarity.exact.value * 100
        : null,
  }));
}

/** Stones' marks and students on one scale, which allows for who sat what. */
export function SectionScale({ report }: { report: SectionReport }) {
  const { stones, students, marks, itemErrors } = report;
  const studentPlaces = students
    .filter(({ rates }) => rates.plots > 0)
    .map(({ studentId, name, ability }) => toPlace(studentId, name, ability, 1));
  const markPlaces = marks.map(({ item, stoneLabel, markId, easiness }) =>
    toPlace(item, `${stoneLabel}, ${markId}`, easiness, -1),
  );
  const ends = stones.flatMap(({ difficulty }) =>
    isDefined(difficulty) ? [difficulty.low, difficulty.high] : [],
  );
  const reach = Math.ceil(Math.max(1, ...ends.map(Math.abs)));
  const hardest = stones.find(({ difficulty }) => isDefined(difficulty));
  return (
    <section className={classes.part} aria-labelledby="scale-title">
      <h2 id="scale-title">Difficulty and ability on one scale</h2>
      <p className={classes.note}>
        Rasch model of found and overlooked over reference marks, each student&apos;s first plot of a stone,
        fitted by conditional maximum likelihood
        {itemErrors === "approximate" ? " (errors of marks approximate)" : ""}. What all or none found lies
        beyond range and has no place.
      </p>
      <div className={classes.charts}>
        <IntervalChart
          title="Stones by difficulty"
          summary={
            hardest === undefined
              ? "No stone has a place on the scale yet."
              : `Hardest: ${hardest.label}. Where intervals overlap, the order may be chance.`
          }
          fileName="stones-by-difficulty"
          rows={stones.map(({ stoneId, label, difficulty, marks: count }) => ({
            key: stoneId,
            label,
            statistic: difficulty,
            count,
          }))}
          rowLabel="Stone"
          countLabel="Reference marks"
          domain={[-reach, reach]}
          format={(value) => toNumberWords(value, 1)}
          level={{ value: 0, label: "mean mark" }}
          mostRows={20}
        />
        <PersonItemMap
          title="Students and marks"
          summary={toMapWords(studentPlaces, markPlaces)}
          fileName="students-and-marks"
          students={studentPlaces}
          marks={markPlaces}
        />
      </div>
      <SectionStonesTable rows={toStoneRows(report)} />
    </section>
  );
}
