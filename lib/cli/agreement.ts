import { computeAgreement } from "@/lib/agreement/compute-agreement";
import { parseRatings } from "@/lib/agreement/parse-ratings";
import { AppError } from "@/lib/base/app-error";
import type { Command } from "@/lib/cli/command";
import { readInFile } from "@/lib/cli/read-in-file";
import { getOption } from "@/lib/cli/read-options";
import { readTextFile } from "@/lib/cli/read-text-file";
import { DEFAULT_SCALES, GRADED_PROPERTIES } from "@/lib/plot/grades";

/** A scale by the property's name, or the grades themselves, best to worst, with commas between. */
function readScale(text: string): readonly string[] {
  const property = GRADED_PROPERTIES.find((name) => name === text);
  if (property !== undefined) return DEFAULT_SCALES[property];
  const grades = text.split(",").map((grade) => grade.trim());
  if (grades.length >= 2 && !grades.includes("") && new Set(grades).size === grades.length) return grades;
  throw new AppError("bad-input", "There is no such scale.", [
    {
      path: "--scale",
      message: `must be one of ${GRADED_PROPERTIES.join(", ")}, or two or more grades, each named once, with commas between`,
    },
  ]);
}

/** `agreement`: the statistics of agreement over a table of ratings. */
export const AGREEMENT: Command = {
  name: "agreement",
  purpose: "how far raters agree, from a CSV file of item, rater, grade",
  options: [
    { name: "ratings", value: "FILE.csv", required: true },
    { name: "scale", value: "NAME or LIST", required: true },
  ],
  run: async (values) => {
    const scale = readScale(getOption(values, "scale"));
    const file = getOption(values, "ratings");
    const text = await readTextFile(file);
    return readInFile(file, () => computeAgreement(parseRatings(text, scale), scale));
  },
};
