import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import type { Command, OptionValues } from "@/lib/cli/command";
import { readInFile } from "@/lib/cli/read-in-file";
import { getOption } from "@/lib/cli/read-options";
import { readTextFile } from "@/lib/cli/read-text-file";
import { listTrays } from "@/lib/data/list-trays";
import { closeDatabase } from "@/lib/data/store/database";
import { parseJson } from "@/lib/exchange/parse-json";
import type { SetImportPlan } from "@/lib/plot/set-import";
import { getOperator } from "@/lib/workflows/command-line/get-operator";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";

/** The tray that `--into` names, by its id or by a name that only one tray has. */
async function findTrayId(operator: Viewer, into: string | undefined): Promise<string | null> {
  if (into === undefined) return null;
  const trays = await listTrays(operator);
  const [one, ...more] = trays.filter(({ trayId, name }) => trayId === into || name === into);
  if (one !== undefined && more.length === 0) return one.trayId;
  const message = one === undefined ? `"${into}" is none of these:` : `several trays are called "${into}":`;
  const listed = (one === undefined ? trays : [one, ...more]).map(({ trayId, name }) => ({
    path: trayId,
    message: name,
  }));
  throw new AppError("not-found", "There is no one such tray; nothing was written.", [
    { path: "--into", message },
    ...listed,
  ]);
}

/** What is called the set's title where it has one that a tray can have; the file is judged whole all the same. */
function findTitle(json: unknown): string {
  const title = typeof json === "object" && json !== null && "title" in json ? json.title : "";
  return typeof title === "string" && title.trim() !== "" ? title.trim().slice(0, 200) : "Exercise set";
}

/** Refuses as the import itself does, so that a dry run of a faulty file ends with status 2 too. */
function requireFaultless(plan: SetImportPlan, file: string): SetImportPlan {
  if (plan.faults.length === 0) return plan;
  throw new AppError("bad-input", `${file}: The exercise set was refused; nothing was written.`, plan.faults);
}

async function bringIn(operator: Viewer, values: OptionValues, json: unknown): Promise<unknown> {
  const trayId = await findTrayId(operator, values.into);
  const input = { json, trayId, trayName: values.tray ?? findTitle(json) };
  const plan = requireFaultless(await planExerciseSetImport(operator, input), getOption(values, "set"));
  if (values["dry-run"] !== undefined) return plan;
  const done = await importExerciseSet(operator, { ...input, fingerprint: plan.fingerprint });
  return { ...done, name: plan.trayName, stones: plan.stones.map(({ label }) => label) };
}

/** `import`: makes a tray of an exercise set or brings it into one, all or nothing; `--dry-run` only tells. */
export const IMPORT: Command = {
  name: "import",
  purpose:
    "makes a tray of an exercise set, named after the set unless --tray names it, or brings it into the tray --into names; --dry-run lists what would be made or changed and writes nothing",
  options: [
    { name: "set", value: "FILE", required: true },
    { name: "tray", value: "NAME", required: false },
    { name: "into", value: "TRAY", required: false },
    { name: "dry-run", value: null, required: false },
    { name: "as", value: "LOGIN", required: false },
  ],
  run: async (values) => {
    const file = getOption(values, "set");
    const text = await readTextFile(file);
    const json = readInFile(file, () => parseJson(text));
    try {
      return await bringIn(await getOperator(values.as), values, json);
    } finally {
      await closeDatabase();
    }
  },
};
