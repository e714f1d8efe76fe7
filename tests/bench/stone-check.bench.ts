/**
 * How often the hand-in check is right. The demo's invented model of beginners draws each stone of exercise-sets/
 * again and again (seeded); of each drawing the two or three largest marks are taken, whatever they are, as the
 * features that somebody plots to find out which stone this is. Once within each tray, once with all thirteen stones
 * in one tray, where weights come close. The figures speak of this model only, not of people.
 */
import { createSeededRandom } from "@/lib/base/seeded-random";
import { listFeatureImages } from "@/lib/demo/list-feature-images";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { drawStudentSkill } from "@/lib/demo/student-skill";
import type { Solid } from "@/lib/gem/solid";
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { listVertices } from "@/lib/plot/shape";
import { toReference } from "@/lib/plot/stone";
import type { StoneVerdict } from "@/lib/plot/stone-check";
import {
  identifyStone,
  type PreparedReference,
  prepareReference,
  rankStones,
} from "@/lib/scoring/score-plot";
import type { Figure } from "@/tests/bench/run";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

const ROUNDS = 100;
/** Standard deviation of a weighing, ct: a scale that shows hundredths. */
const WEIGHING_CT = 0.004;

const sets = listExerciseSets();
const stones = sets.flatMap(({ resolved }) =>
  resolved.set.stones.map((stone, index) => {
    const { characteristics, scales } = resolved;
    const solid = resolved.solids[index] as Solid;
    const images = listFeatureImages(stone, solid, characteristics);
    const prepared = prepareReference({
      stoneId: stone.id,
      stone,
      reference: toReference(stone),
      characteristics,
    });
    return { set: resolved, stone, prepared, simulated: { stone, solid, characteristics, scales, images } };
  }),
);

function getSpan({ shape }: PlottedMark): number {
  const points = listVertices(shape);
  return Math.max(...points.flatMap(([x, y]) => points.map(([u, v]) => Math.hypot(x - u, y - v))));
}

interface Trial {
  readonly label: string;
  readonly verdict: StoneVerdict;
  readonly byFound: string | undefined;
  /** The verdict where the stone came back under the label of its neighbour in the tray. */
  readonly swapped: StoneVerdict;
}

function findNeighbour(label: string, tray: readonly PreparedReference[]): string {
  const at = tray.findIndex(({ stoneId }) => stoneId === label);
  return tray[(at + 1) % tray.length]?.stoneId ?? label;
}

const isFlagged = ({ outcome }: StoneVerdict) => outcome === "other" || outcome === "none";

function tryOut(features: number, isWeighed: boolean, isPooled: boolean, isHeldByLandmark: boolean): Trial[] {
  return stones.flatMap(({ set, stone, simulated }) => {
    const tray = stones.filter((one) => isPooled || one.set === set).map(({ prepared }) => prepared);
    return Array.from({ length: ROUNDS }, (_, round): Trial[] => {
      const seed = `${stone.id}/${round}`;
      const random = createSeededRandom(`check/${seed}`);
      const skill = drawStudentSkill(createSeededRandom(`check/skill/${round}`));
      const held = isHeldByLandmark ? { ...skill, turning: 0, halfFacetOff: 0 } : skill;
      const { plot } = simulateSitting(simulated, held, `check/sitting/${seed}`);
      const marks = [...plot.marks].sort((a, b) => getSpan(b) - getSpan(a)).slice(0, features);
      if (marks.length < features) return [];
      const weighed = Math.round(((stone.weightCt ?? 0) + random.normal(0, WEIGHING_CT)) * 100) / 100;
      const weightCt = isWeighed ? weighed : null;
      const evidence = { cut: stone.cut, marks, weightCt, isHeldByLandmark };
      return [
        {
          label: stone.id,
          verdict: identifyStone(evidence, tray, DEFAULT_RUBRIC, stone.id),
          swapped: identifyStone(evidence, tray, DEFAULT_RUBRIC, findNeighbour(stone.id, tray)),
          byFound: rankStones({ grades: {}, marks }, tray, DEFAULT_RUBRIC)[0]?.stoneId,
        },
      ];
    }).flat();
  });
}

const percent = (part: number, whole: number) => (whole === 0 ? 0 : (100 * part) / whole);

export default async function measure(): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const isPooled of [false, true]) {
    for (const [features, isWeighed] of [
      [2, false],
      [3, false],
      [2, true],
      [3, true],
    ] as const) {
      for (const isHeld of [true, false]) {
        const trials = tryOut(features, isWeighed, isPooled, isHeld);
        const right = trials.filter(({ label, verdict }) => verdict.ranks[0]?.label === label);
        const clear = trials.filter(({ verdict }) => verdict.certainty === "clear");
        const alarms = trials.filter(({ verdict }) => isFlagged(verdict));
        const caught = trials.filter(({ swapped }) => isFlagged(swapped));
        const name = `${isPooled ? "13 in one tray" : "its own tray"}, ${features} features${isWeighed ? ", weighed" : ""}, ${isHeld ? "by landmark" : "any turn"}`;
        const clearRight = clear.filter(({ label, verdict }) => verdict.ranks[0]?.label === label);
        const byFound = trials.filter(({ label, byFound }) => byFound === label);
        figures.push({
          name,
          value: percent(right.length, trials.length),
          unit: "% right",
          note: `${trials.length} trials; clear ${percent(clear.length, trials.length).toFixed(1)} %, of those right ${percent(clearRight.length, clear.length).toFixed(1)} %; swapped and flagged ${percent(caught.length, trials.length).toFixed(1)} %; flagged under its own label ${percent(alarms.length, trials.length).toFixed(1)} %; by share found alone ${percent(byFound.length, trials.length).toFixed(1)} %`,
        });
      }
    }
  }
  return figures;
}
