import type { Viewer } from "@/lib/access/viewer";
import { AppError, isAppError } from "@/lib/base/app-error";
import type { Command } from "@/lib/cli/command";
import { getOption } from "@/lib/cli/read-options";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { exportPlots } from "@/lib/data/export-plots";
import { listExercises } from "@/lib/data/list-exercises";
import { closeDatabase } from "@/lib/data/store/database";
import { getOperator } from "@/lib/workflows/command-line/get-operator";

const FORMS = { set: exportExerciseSet, plots: exportPlots };

function findForm(name: string): (typeof FORMS)[keyof typeof FORMS] {
  if (name === "set" || name === "plots") return FORMS[name];
  throw new AppError("bad-input", "`export` was not run.", [
    { path: "--what", message: "must be set or plots" },
  ]);
}

/** Says which exercises there are, so that an id need not be looked for elsewhere. */
async function refuseExercise(operator: Viewer, id: string): Promise<AppError> {
  const known = await listExercises(operator);
  return new AppError("not-found", "There is no such exercise.", [
    { path: "--exercise", message: `"${id}" is none of these:` },
    ...known.map(({ exerciseId, title, sectionName }) => ({
      path: exerciseId,
      message: `${title}, ${sectionName}`,
    })),
  ]);
}

/** `export`: prints an exercise as an exercise set, or what was handed in for it as a plots file. */
export const EXPORT: Command = {
  name: "export",
  purpose: "prints an exercise as an exercise set, or the plots handed in for it",
  options: [
    { name: "exercise", value: "ID", required: true },
    { name: "what", value: "set or plots", required: true },
    { name: "as", value: "LOGIN", required: false },
  ],
  run: async (values) => {
    const exportForm = findForm(getOption(values, "what"));
    const id = getOption(values, "exercise");
    try {
      const operator = await getOperator(values.as);
      try {
        return await exportForm(operator, id);
      } catch (thrown) {
        throw isAppError(thrown, "not-found") ? await refuseExercise(operator, id) : thrown;
      }
    } finally {
      await closeDatabase();
    }
  },
};
