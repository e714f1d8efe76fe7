import type { Viewer } from "@/lib/access/viewer";
import { AppError, isAppError } from "@/lib/base/app-error";
import type { Command, OptionValues } from "@/lib/cli/command";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { exportPlots } from "@/lib/data/export-plots";
import { exportTraySet } from "@/lib/data/export-tray-set";
import { listExercises } from "@/lib/data/list-exercises";
import { listTrays } from "@/lib/data/list-trays";
import { closeDatabase } from "@/lib/data/store/database";
import { getOperator } from "@/lib/workflows/command-line/get-operator";

/** What is exported, and the option that names it. */
interface Source {
  readonly option: "--tray" | "--exercise";
  readonly id: string;
  readonly read: (operator: Viewer, id: string) => Promise<unknown>;
}

function refuse(path: string, message: string): AppError {
  return new AppError("bad-input", "`export` was not run.", [{ path, message }]);
}

function findSource({ tray, exercise, what }: OptionValues): Source {
  if ((tray === undefined) === (exercise === undefined)) {
    throw refuse("--exercise", "name one exercise, or one tray with --tray");
  }
  if (tray !== undefined) {
    if (what !== undefined && what !== "set") throw refuse("--what", "a tray is exported as a set");
    return { option: "--tray", id: tray, read: exportTraySet };
  }
  const id = exercise ?? "";
  if (what === "set") return { option: "--exercise", id, read: exportExerciseSet };
  if (what === "plots") return { option: "--exercise", id, read: exportPlots };
  throw refuse("--what", "must be set or plots");
}

async function listKnown(operator: Viewer, option: Source["option"]) {
  if (option === "--tray") {
    return (await listTrays(operator)).map(({ trayId, name }) => ({ path: trayId, message: name }));
  }
  return (await listExercises(operator)).map(({ exerciseId, title, sectionName }) => ({
    path: exerciseId,
    message: `${title}, ${sectionName}`,
  }));
}

/** Says which there are, so that an id need not be looked for elsewhere. */
async function refuseUnknown(operator: Viewer, { option, id }: Source): Promise<AppError> {
  const what = option === "--tray" ? "tray" : "exercise";
  return new AppError("not-found", `There is no such ${what}.`, [
    { path: option, message: `"${id}" is none of these:` },
    ...(await listKnown(operator, option)),
  ]);
}

/** `export`: prints an exercise or a tray as an exercise set, or what was handed in for an exercise as a plots file. */
export const EXPORT: Command = {
  name: "export",
  purpose: "prints an exercise or a tray as an exercise set, or the plots handed in for an exercise",
  options: [
    { name: "exercise", value: "ID", required: false },
    { name: "what", value: "set or plots", required: false },
    { name: "tray", value: "ID", required: false },
    { name: "as", value: "LOGIN", required: false },
  ],
  run: async (values) => {
    const source = findSource(values);
    try {
      const operator = await getOperator(values.as);
      try {
        return await source.read(operator, source.id);
      } catch (thrown) {
        throw isAppError(thrown, "not-found") ? await refuseUnknown(operator, source) : thrown;
      }
    } finally {
      await closeDatabase();
    }
  },
};
