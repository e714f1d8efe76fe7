/** The lines of a result: where every point came from, not yet rounded (SPEC 6.5). */

import { getDeduction, sumCharges } from "@/lib/scoring/count-points";
import type { Exhibit } from "@/lib/scoring/exhibit";
import { getWorth } from "@/lib/scoring/explain-found";
import type { Stray } from "@/lib/scoring/find-causes";
import { nameCount, nameNumber, namePlottedMark, nameReferenceMark } from "@/lib/scoring/name-things";
import type { GradeRating } from "@/lib/scoring/rate-grades";

interface ExactLine {
  readonly what: string;
  readonly points: number;
}

function listMarkLines(exhibit: Exhibit): ExactLine[] {
  const { prepared, laid, matching, rubric } = exhibit;
  const finds = new Map([...matching.matched, ...matching.merges].map((find) => [find.reference, find]));
  if (prepared.weightSum === 0) {
    return [{ what: "nothing to find: the reference has no mark that counts", points: rubric.shares.plot }];
  }
  return prepared.marks.flatMap((model, index): ExactLine[] => {
    if (model.optional) return [];
    const worth = getWorth(exhibit, index);
    const name = nameReferenceMark(model.mark);
    const find = finds.get(index);
    const mark = laid[find?.plotted ?? -1]?.mark;
    const ruled = nameRulings(exhibit, index);
    if (find === undefined || mark === undefined) {
      return [{ what: `${name}: overlooked, worth up to ${nameNumber(worth)}${ruled}`, points: 0 }];
    }
    const share = Math.round(100 * find.value);
    const what = `${name}: found by ${namePlottedMark(mark)}, ${share}% of ${nameNumber(worth)}${ruled}`;
    return [{ what, points: worth * find.value }];
  });
}

/** "; overruled: mark m1 is this one (reason)": the rulings on a reference mark, empty without any. */
function nameRulings({ rulings, laid }: Exhibit, index: number): string {
  const name = (plotted: number) => `mark ${laid[plotted]?.mark.id ?? ""}`;
  const laidTo = rulings.together.get(index);
  const words = (rulings.apart.get(index) ?? []).map(
    ({ plotted, reason }) => `${name(plotted)} is not this one (${reason})`,
  );
  if (laidTo !== undefined) words.unshift(`${name(laidTo.plotted)} is this one (${laidTo.reason})`);
  return words.map((one) => `; overruled: ${one}`).join("");
}

/** Each stray that was ruled on has a line of its own, in the order of the plotted marks. */
function listRuledStrays({ laid, rubric }: Exhibit, strays: readonly Stray[]): ExactLine[] {
  const share = rubric.shares.plot;
  return strays.flatMap(({ plotted, cause, charge, ruled }): ExactLine[] => {
    if (ruled === undefined) return [];
    const name = `mark ${laid[plotted]?.mark.id ?? ""}`;
    const held = `${cause}: ${name}, less ${nameNumber(charge)}% of the plot's ${nameNumber(share)}`;
    const what = ruled.isHeld ? held : `${name}: not held against the plot`;
    return [{ what: `${what}; overruled (${ruled.reason})`, points: (-share * charge) / 100 }];
  });
}

function listDeductionLines(exhibit: Exhibit, strays: readonly Stray[]): ExactLine[] {
  const { matching, rubric } = exhibit;
  const share = rubric.shares.plot;
  const lines = sumCharges(strays.filter(({ ruled }) => ruled === undefined)).map(
    ({ cause, count, charge }): ExactLine => ({
      what: `${cause}: ${nameCount(count, "stray")}, less ${nameNumber(charge)}% of the plot's ${nameNumber(share)}`,
      points: (-share * charge) / 100,
    }),
  );
  lines.push(...listRuledStrays(exhibit, strays));
  const { charged, deducted } = getDeduction(strays, rubric);
  if (charged > deducted) {
    const what = `given back: strays together cost no more than ${nameNumber(rubric.deductionCap)}%`;
    lines.push({ what, points: share * (charged - deducted) });
  }
  if (deducted > matching.foundShare) {
    const what = "given back: a plot earns no less than nothing";
    lines.push({ what, points: share * (deducted - matching.foundShare) });
  }
  return lines;
}

function nameGrade({ reference, given, steps }: GradeRating): string {
  if (given === null) return `not given; the reference has ${reference}`;
  if (steps === null) return `${given}, which is not on the scale; the reference has ${reference}`;
  if (steps === 0) return `${given}, right`;
  return `${given}, ${nameCount(Math.abs(steps), "step")} ${steps > 0 ? "worse" : "better"} than the reference's ${reference}`;
}

function listGradeLines(grades: readonly GradeRating[]): ExactLine[] {
  return grades.map((grade) => ({
    what: `${grade.property}: ${nameGrade(grade)}; worth up to ${nameNumber(grade.share)}${
      grade.ruled === undefined ? "" : `; overruled (${grade.ruled.reason})`
    }`,
    points: grade.earned,
  }));
}

/**
 * One line for each reference mark that counts, in the order of ids; then what the strays cost, by cause, and what the cap and
 * the floor give back; then one for each graded property.
 */
export function listLines(
  exhibit: Exhibit,
  strays: readonly Stray[],
  grades: readonly GradeRating[],
): ExactLine[] {
  return [...listMarkLines(exhibit), ...listDeductionLines(exhibit, strays), ...listGradeLines(grades)];
}
