import { AppError, type Fault } from "@/lib/base/app-error";

/** One rater's grade of one item. */
export interface Rating {
  readonly item: string;
  readonly rater: string;
  readonly grade: string;
  /** Where it was read, for messages: its row in a file whose header is row 1. */
  readonly row?: number;
}

/** How many faults a refusal lists; it counts them all. */
const LISTED_FAULTS = 100;

/** The refusal of a set of ratings: all faults counted, the first hundred listed. */
export function refuseRatings(faults: readonly Fault[]): AppError {
  const count = faults.length === 1 ? "one fault" : `${faults.length} faults`;
  const rest = faults.length > LISTED_FAULTS ? `, of which the first ${LISTED_FAULTS} are listed` : "";
  return new AppError(
    "bad-input",
    `The ratings were refused for ${count}${rest}; nothing was written.`,
    faults.slice(0, LISTED_FAULTS),
  );
}

/** The faults of a scale: no grade at all, a blank grade, or one named twice. */
export function listScaleFaults(scale: readonly string[]): Fault[] {
  if (scale.length === 0) return [{ path: "scale", message: "a scale needs at least one grade" }];
  return scale.flatMap((grade, place) => {
    if (grade.trim() === "") return [{ path: `scale[${place}]`, message: "a grade must not be blank" }];
    if (scale.indexOf(grade) < place)
      return [{ path: `scale[${place}]`, message: `"${grade}" is named twice` }];
    return [];
  });
}

/** The faults of ratings against a scale: a grade that is not on it, and a second grade by one rater for one item. */
export function listRatingFaults(ratings: readonly Rating[], scale: readonly string[]): Fault[] {
  const grades = new Set(scale);
  const seen = new Map<string, Map<string, string>>();
  return ratings.flatMap((rating, index) => {
    const path = rating.row === undefined ? `ratings[${index}]` : `row ${rating.row}`;
    const faults: Fault[] = [];
    if (!grades.has(rating.grade)) {
      faults.push({ path, message: `"${rating.grade}" is not on the scale (${scale.join(", ")})` });
    }
    const ofItem = seen.get(rating.item) ?? new Map<string, string>();
    seen.set(rating.item, ofItem);
    const earlier = ofItem.get(rating.rater);
    if (earlier === undefined) ofItem.set(rating.rater, path);
    else {
      const message = `rater "${rating.rater}" has graded item "${rating.item}" already (${earlier})`;
      faults.push({ path, message });
    }
    return faults;
  });
}
