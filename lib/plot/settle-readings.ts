/** One reference out of two readings. Pure. */
import { AppError } from "@/lib/base/app-error";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import { type PlotGrades, ReferenceGradesSchema } from "@/lib/plot/grades";
import type { Decoy, ReferenceMark } from "@/lib/plot/mark";
import { type Choice, listChoices, type ReadingDifference, type Settling } from "@/lib/plot/second-reading";
import { mapVertices } from "@/lib/plot/shape";
import type { Reference } from "@/lib/plot/stone";

const isDecoy = (place: ReferenceMark | Decoy): place is Decoy => "cause" in place;

/** What is chosen for a difference; the first reading's where nothing is. Throws AppError "bad-input" for what is no choice of it. */
function getChoice(difference: ReadingDifference, settling: Settling): Choice {
  const choice = settling[difference.key] ?? "first";
  if (!listChoices(difference).includes(choice)) {
    throw new AppError("bad-input", "These choices cannot be taken.", [
      { path: `choices.${difference.key}`, message: `“${choice}” is no choice of it` },
    ]);
  }
  return choice;
}

/** The first's drawing moved halfway to the second's; as it is where they were drawn in different views. */
function mergePair(first: ReferenceMark, second: ReferenceMark): ReferenceMark {
  if (first.view !== second.view) return first;
  const [ax, ay] = getSampleCentre(first.shape);
  const [bx, by] = getSampleCentre(second.shape);
  const shape = mapVertices(first.shape, ([x, y]) => [x + (bx - ax) / 2, y + (by - ay) / 2]);
  return { ...first, shape };
}

/** The second's view, drawing and name in the place of the first; what only the first says of it stays. */
function takeSecond(first: ReferenceMark, second: ReferenceMark): ReferenceMark {
  const { id: _id, ...drawn } = second;
  return { ...first, ...drawn };
}

function settleMark({ first, second }: ReadingDifference, choice: Choice): ReferenceMark[] {
  const [one, two] = [first, second].map((place) => (place === null || isDecoy(place) ? null : place));
  if (one && two) {
    return [choice === "first" ? one : choice === "second" ? takeSecond(one, two) : mergePair(one, two)];
  }
  if (one) return choice === "second" ? [] : [choice === "merge" ? { ...one, optional: true } : one];
  if (two) return choice === "first" ? [] : [choice === "merge" ? { ...two, optional: true } : two];
  return [];
}

function settleDecoy({ first, second }: ReadingDifference, choice: Choice): Decoy[] {
  const kept = choice === "first" ? first : second;
  return kept !== null && isDecoy(kept) ? [kept] : [];
}

/** Gives every place an id of its own: the first reading's keep theirs. */
function keepApart<P extends ReferenceMark | Decoy>(places: readonly P[]): P[] {
  const used = new Set<string>();
  return places.map((place) => {
    let id = place.id;
    for (let n = 2; used.has(id); n += 1) id = `${place.id.slice(0, 58)}-${n}`;
    used.add(id);
    return { ...place, id };
  });
}

function settleGrades(first: PlotGrades, differences: readonly ReadingDifference[], settling: Settling) {
  const grades: Partial<Record<string, string>> = { ...first };
  for (const difference of differences) {
    if (difference.grades === null || getChoice(difference, settling) === "first") continue;
    const { property, second } = difference.grades;
    if (second === null) delete grades[property];
    else grades[property] = second;
  }
  return ReferenceGradesSchema.parse({ ...grades, clarity: grades.clarity ?? first.clarity });
}

/**
 * The reference that choices make of two readings; a difference without a choice keeps the first. Merged: a pair keeps the
 * first's mark, moved halfway to the second's; a mark that only one reader has becomes optional, which gives no points and
 * takes none. Clarity is never taken away. Throws AppError `bad-input` for a key that names no difference, or a choice that a
 * difference does not leave.
 */
export function settleReadings(
  reference: Reference,
  differences: readonly ReadingDifference[],
  settling: Settling,
): Reference {
  const known = new Set(differences.map(({ key }) => key));
  const unknown = Object.keys(settling).filter((key) => !known.has(key));
  if (unknown.length > 0) {
    throw new AppError(
      "bad-input",
      "These choices cannot be taken.",
      unknown.map((key) => ({ path: `choices.${key}`, message: "there is no such difference" })),
    );
  }
  const isOf = (kinds: readonly ReadingDifference["kind"][]) =>
    differences.filter(({ kind }) => kinds.includes(kind));
  return {
    grades: settleGrades(reference.grades, differences, settling),
    marks: keepApart(
      isOf(["pair", "only-first", "only-second"]).flatMap((one) => settleMark(one, getChoice(one, settling))),
    ),
    decoys: keepApart([
      ...listSharedDecoys(reference, differences),
      ...isOf(["decoy-only-first", "decoy-only-second"]).flatMap((one) =>
        settleDecoy(one, getChoice(one, settling)),
      ),
    ]),
  };
}

/** The first's decoys that the second reader has as well: no difference lists them. */
function listSharedDecoys({ decoys }: Reference, differences: readonly ReadingDifference[]): Decoy[] {
  const alone = new Set(
    differences.filter(({ kind }) => kind === "decoy-only-first").flatMap(({ first }) => first?.id ?? []),
  );
  return decoys.filter(({ id }) => !alone.has(id));
}
