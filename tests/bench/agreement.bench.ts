/**
 * Agreement statistics on up to 60,000 ratings, counts of 60,000 plots, and the Rasch model, with how each grows. All times
 * are processor time.
 */
import { computeAgreement } from "@/lib/agreement/compute-agreement";
import { addCounts, type Counts, NO_COUNTS } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { fitRasch } from "@/lib/agreement/fit-rasch";
import { parseRatings } from "@/lib/agreement/parse-ratings";
import type { RaschResponse } from "@/lib/agreement/rasch-responses";
import type { Rating } from "@/lib/agreement/rating";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import type { Figure } from "@/tests/bench/run";

const SCALE = DEFAULT_SCALES.clarity;

/** Median processor time of a few runs, in milliseconds, after one that is not timed: other programs count less so. */
function timeMedian(work: () => unknown, runs: number): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] ?? Number.NaN;
}

function makeRatings(items: number, raters: number): Rating[] {
  const random = createSeededRandom(`ratings ${items} ${raters}`);
  return Array.from({ length: items }, (_, item) => {
    const truth = random.int(SCALE.length);
    return Array.from({ length: raters }, (_, rater) => {
      const place = Math.round(truth + random.normal(0, 0.9));
      const grade = SCALE[Math.max(0, Math.min(SCALE.length - 1, place))] ?? "";
      return { item: `stone-${item}`, rater: `rater-${rater}`, grade };
    });
  }).flat();
}

/** Students who each sit some stones of ten marks each. */
function makeResponses(students: number, stones: number, perStudent: number): RaschResponse[] {
  const random = createSeededRandom(`rasch ${students} ${stones}`);
  const easiness = Array.from({ length: stones * 10 }, () => random.normal(0, 1.2));
  return Array.from({ length: students }, (_, student) => {
    const ability = random.normal(0.3, 1);
    const sat = random.shuffle(Array.from({ length: stones }, (_, stone) => stone)).slice(0, perStudent);
    return sat.flatMap((stone) =>
      Array.from({ length: 10 }, (_, mark) => {
        const logit = ability + (easiness[stone * 10 + mark] ?? 0);
        return {
          person: `p${student}`,
          item: `${stone}/${mark}`,
          right: random.chance(1 / (1 + Math.exp(-logit))),
        };
      }),
    );
  }).flat();
}

function makeCounts(plots: number): Counts[] {
  const random = createSeededRandom("counts");
  const names = ["cloud", "crystal", "feather", "needle", "pinpoint"];
  return Array.from({ length: plots }, (): Counts => {
    const name = random.pick(names);
    const [found, overlooked, strays] = [random.int(6), random.int(4), random.int(3)];
    const [reference, plotted] = [random.int(10), random.int(10)];
    const steps = plotted - reference;
    const hundredths = random.int(10_001);
    return {
      plots: 1,
      hundredths,
      hundredthsSquared: hundredths ** 2,
      found,
      overlooked,
      strays: { dust: strays },
      straysSquared: strays ** 2,
      characteristics: {
        [name]: { reference: found + overlooked, found, takenFor: { [name]: found }, strays },
      },
      grades: {
        clarity: {
          graded: 1,
          exact: steps === 0 ? 1 : 0,
          withinOne: Math.abs(steps) <= 1 ? 1 : 0,
          steps,
          stepsSquared: steps ** 2,
          confusion: { [SCALE[reference] ?? ""]: { [SCALE[plotted] ?? ""]: 1 } },
        },
      },
      freeResponse: { found: [0, 0, found, 0, 0], strays: [strays, 0, 0, 0, 0] },
    };
  });
}

function measureAgreement(): Figure[] {
  const shapes: readonly (readonly [number, number])[] = [
    [300, 2],
    [3_000, 2],
    [30_000, 2],
    [6_000, 10],
    [60, 1_000],
  ];
  return shapes.map(([items, raters]) => {
    const ratings = makeRatings(items, raters);
    const median = timeMedian(() => computeAgreement(ratings, SCALE), 5);
    return {
      name: `agreement of ${ratings.length} ratings (${items} items x ${raters} raters)`,
      value: median,
      unit: "ms",
      note: `${((1000 * median) / ratings.length).toFixed(2)} us a rating, 1000 resamples`,
    };
  });
}

function measureRasch(): Figure[] {
  const shapes: readonly (readonly [number, number, number])[] = [
    [30, 6, 6],
    [120, 20, 10],
    [480, 40, 20],
    [1_200, 60, 50],
  ];
  return shapes.map(([students, stones, perStudent]) => {
    const responses = makeResponses(students, stones, perStudent);
    const { iterations, itemErrors } = fitRasch(responses);
    return {
      name: `Rasch fit of ${responses.length} answers (${students} students, ${stones * 10} marks)`,
      value: timeMedian(() => fitRasch(responses), 3),
      unit: "ms",
      note: `${iterations} iterations, item errors ${itemErrors}`,
    };
  });
}

/** Measures everything; run by `npm run bench agreement`. */
export default async function measure(): Promise<Figure[]> {
  const csv = `item,rater,grade\n${makeRatings(30_000, 2)
    .map(({ item, rater, grade }) => `${item},${rater},${grade}`)
    .join("\n")}\n`;
  const counts = makeCounts(60_000);
  const add = () => counts.reduce(addCounts, NO_COUNTS);
  const whole = add();
  return [
    ...measureAgreement(),
    {
      name: "CSV of 60000 ratings read and checked",
      value: timeMedian(() => parseRatings(csv, SCALE), 5),
      unit: "ms",
    },
    { name: "60000 plots' counts added up", value: timeMedian(add, 5), unit: "ms" },
    {
      name: "rates of 60000 plots derived",
      value: timeMedian(() => deriveRates(whole, DEFAULT_SCALES), 5),
      unit: "ms",
    },
    ...measureRasch(),
  ];
}
