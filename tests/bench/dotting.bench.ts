/**
 * How often the bench's note on dotting comes to honest careful plotting, and how soon it comes on dust: seeded
 * streams, followed dot by dot as a bench does, by the default rule. Invented models, not students.
 */
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { drawStudentSkill } from "@/lib/demo/student-skill";
import { DEFAULT_RULES } from "@/lib/plot/exercise-rules";
import { findBurstUnderWay } from "@/lib/plot/find-dotting";
import type { Figure } from "@/tests/bench/run";
import { listSimulatedStones } from "@/tests/support/list-simulated-stones";
import { simulateDustDots, simulateHonestDots, type TimedDot } from "@/tests/support/simulate-dot-stream";

const SITTINGS = 4000;

/** At which dot of a stream the note first comes, from 1; null when it never does. */
function findNoted(dots: readonly TimedDot[]): number | null {
  for (let count = 1; count <= dots.length; count += 1) {
    if (findBurstUnderWay(dots.slice(0, count), DEFAULT_RULES.dotting) !== null) return count;
  }
  return null;
}

function toPerThousand(name: string, hits: number, trials: number): Figure {
  const share = computeWilsonInterval(hits, trials);
  if ("undefined" in share) throw new Error(share.undefined);
  const per = (value: number) => (1000 * value).toFixed(1);
  const interval = `95 % interval ${per(share.low)} to ${per(share.high)}`;
  return {
    name,
    value: 1000 * share.value,
    unit: "per 1,000",
    note: `${hits} of ${trials}, ${interval}`,
  };
}

/** Whole sittings of the demo's model, of students who clean the stone. */
function reportCareful(): Figure {
  const stones = listSimulatedStones();
  let noted = 0;
  for (let i = 0; i < SITTINGS; i += 1) {
    const skill = { ...drawStudentSkill(createSeededRandom(`dotting/skill/${i}`)), wiping: 1 };
    const simulated = stones[i % stones.length];
    if (simulated === undefined) throw new Error("no stones");
    const { plot } = simulateSitting(simulated, skill, `dotting/sitting/${i}`);
    const dots = [...plot.marks]
      .filter(({ shape }) => shape.kind === "dot")
      .sort((a, b) => (a.atMs ?? 0) - (b.atMs ?? 0));
    if (findNoted(dots) !== null) noted += 1;
  }
  return toPerThousand("false alarms, careful sittings of the demo's model", noted, SITTINGS);
}

function reportHonest(medianS: number): Figure {
  let noted = 0;
  for (let i = 0; i < SITTINGS; i += 1) {
    const dots = simulateHonestDots(createSeededRandom(`dotting/honest/${i}`), { medianS, spread: 0.4 });
    if (findNoted(dots) !== null) noted += 1;
  }
  return toPerThousand(`false alarms, honest groups at ${medianS} s a dot`, noted, SITTINGS);
}

const median = (values: readonly number[]) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
};

function reportDust(medianS: number): Figure[] {
  const delays: { dots: number; seconds: number }[] = [];
  for (let i = 0; i < SITTINGS; i += 1) {
    const dots = simulateDustDots(createSeededRandom(`dotting/dust/${i}`), { medianS, spread: 0.4 });
    const count = findNoted(dots);
    if (count !== null) delays.push({ dots: count, seconds: (dots[count - 1]?.atMs ?? 0) / 1000 });
  }
  const found = toPerThousand(`dust noted, runs at ${medianS} s a dot`, delays.length, SITTINGS);
  return [
    found,
    { name: `  at which dot, median`, value: median(delays.map(({ dots }) => dots)), unit: "dots" },
    {
      name: `  seconds after the first dot, median`,
      value: median(delays.map(({ seconds }) => seconds)),
      unit: "s",
    },
  ];
}

/** All streams by the default rule. */
export default async function measure(): Promise<Figure[]> {
  return [reportCareful(), ...[3, 2.5, 2, 1.5].map(reportHonest), ...[0.5, 0.8, 1.2].flatMap(reportDust)];
}
