import type { Command } from "@/lib/cli/command";
import { readInFile } from "@/lib/cli/read-in-file";
import { getOption } from "@/lib/cli/read-options";
import { readTextFile } from "@/lib/cli/read-text-file";
import { closeDatabase } from "@/lib/data/store/database";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { getOperator } from "@/lib/workflows/command-line/get-operator";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";

/** `import`: makes a tray of an exercise set, all or nothing. */
export const IMPORT: Command = {
  name: "import",
  purpose: "makes a tray of an exercise set; named after the set unless --tray names it",
  options: [
    { name: "set", value: "FILE", required: true },
    { name: "tray", value: "NAME", required: false },
    { name: "as", value: "LOGIN", required: false },
  ],
  run: async (values) => {
    const file = getOption(values, "set");
    const text = await readTextFile(file);
    const { set } = readInFile(file, () => readExerciseSet(text));
    try {
      const operator = await getOperator(values.as);
      const trayName = values.tray ?? set.title.slice(0, 120);
      const { trayId } = await importExerciseSet(operator, { json: set, trayName });
      return { trayId, name: trayName, stones: set.stones.map(({ id }) => id) };
    } finally {
      await closeDatabase();
    }
  },
};
