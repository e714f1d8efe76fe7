/** What each student of the demo is like at the bench: departures from the middling beginner, so that every cause shows. */
import { MIDDLING_SKILL, type StudentSkill } from "@/lib/demo/student-skill";

const DEPARTURES: Readonly<Record<string, Partial<StudentSkill>>> = {
  // Steady: a little better than most in everything.
  student1: { scatter: 0.01, eye: 1.9, naming: 0.86, wiping: 0.85, turning: 0.05 },
  // Does not clean the stone, and dots what lies on it.
  student2: { wiping: 0.08, dustBurstsPerPlot: 1.1, dustDotsPerPlot: 1.5, paceS: 15 },
  // Pays no heed to how the stone is held.
  student3: { turning: 0.75, halfFacetOff: 0.3, scatter: 0.01, eye: 2 },
  // Grades harshly.
  student4: { gradeBias: 1.3, gradeScatter: 0.4 },
  // Draws what lies inside once from each side.
  student5: { doubling: 0.45, otherView: 0.15, pavilionCare: 0.3 },
  // Does not tilt: takes reflections for inclusions.
  student6: { echoesPerFeature: 0.55, gullible: 0.65, eye: 1.8 },
  // Never regrips: draws the shine of the tweezers.
  student7: { glintsPerPlot: 1.3 },
  // A trained eye and a steady hand.
  student8: {
    scatter: 0.006,
    sizeScatter: 0.15,
    eye: 3.2,
    pavilionCare: 0,
    naming: 0.96,
    doubling: 0.01,
    otherView: 0,
    fragments: 0.02,
    merging: 0.05,
    wiping: 1,
    echoesPerFeature: 0.02,
    glintsPerPlot: 0,
    imaginedPerPlot: 0.05,
    gullible: 0.03,
    turning: 0,
    mirroring: 0,
    gradeBias: 0,
    gradeScatter: 0.3,
    paceS: 38,
  },
  // In a hurry.
  student9: { paceS: 9, scatter: 0.026, sizeScatter: 0.5, fragments: 0.6, wiping: 0.3, secondThoughts: 0 },
  // Draws the pavilion as if seen through the crown.
  student10: { mirroring: 0.75, pavilionCare: 0.8, turning: 0 },
  // Overlooks what is small, and grades kindly.
  student11: { eye: -0.3, gradeBias: -0.8, imaginedPerPlot: 0 },
  // Sees well, and calls things by other names.
  student12: { naming: 0.35, merging: 0.9, eye: 2.2 },
};

/** The skill of a student of the demo; a stranger is a middling beginner. */
export function getDemoSkill(login: string): StudentSkill {
  return { ...MIDDLING_SKILL, ...DEPARTURES[login] };
}
