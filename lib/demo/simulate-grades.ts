/** The grades that a simulated student gives (see student-skill: invented for the demo). */
import type { SeededRandom } from "@/lib/base/seeded-random";
import type { StudentSkill } from "@/lib/demo/student-skill";
import { GRADED_PROPERTIES, type PlotGrades, type ReferenceGrades, type Scales } from "@/lib/plot/grades";

/** What a plot's mistakes do to the clarity grade, in steps: overlooking what decides it, and drawing too much. */
const OVERLOOKED_STEPS = -0.6;
const STRAY_STEPS = 0.12;
const MOST_STRAY_STEPS = 1;
/** Properties besides clarity are left blank this often, and are off by this much (standard deviation, steps). */
const BLANK_CHANCE = 0.06;
const OTHER_SCATTER = 0.6;

/** What the student's plot does to the grade. */
export interface GradeEvidence {
  readonly isDecidingMarkOverlooked: boolean;
  readonly strays: number;
}

function pickGrade(scale: readonly string[], from: string, steps: number): string | null {
  const at = scale.indexOf(from);
  if (at < 0) return null;
  return scale[Math.min(scale.length - 1, Math.max(0, at + Math.round(steps)))] ?? null;
}

/** A grade for every property that the reference has, some left blank; clarity is always given. */
export function simulateGrades(
  random: SeededRandom,
  reference: ReferenceGrades,
  scales: Scales,
  skill: StudentSkill,
  evidence: GradeEvidence,
): PlotGrades {
  const grades: PlotGrades = {};
  for (const property of GRADED_PROPERTIES) {
    const known = reference[property];
    if (known === undefined) continue;
    const isClarity = property === "clarity";
    if (!isClarity && random.chance(BLANK_CHANCE)) continue;
    const steps = isClarity
      ? random.normal(skill.gradeBias, skill.gradeScatter) +
        (evidence.isDecidingMarkOverlooked ? OVERLOOKED_STEPS : 0) +
        Math.min(MOST_STRAY_STEPS, STRAY_STEPS * evidence.strays)
      : random.normal(0.3 * skill.gradeBias, OTHER_SCATTER);
    const grade = pickGrade(scales[property], known, steps);
    if (grade !== null) grades[property] = grade;
  }
  return grades;
}
