import type { Command } from "@/lib/cli/command";
import { getOption } from "@/lib/cli/read-options";
import { readEnvironment } from "@/lib/data/read-environment";
import { writeBackup } from "@/lib/workflows/command-line/write-backup";

/** `backup`: a whole, checked copy of the database and the photographs, while the server runs. */
export const BACKUP: Command = {
  name: "backup",
  purpose: "copies the database and the photographs into a new folder, checked, while the server runs",
  options: [{ name: "to", value: "FOLDER", required: true }],
  run: async (values) => {
    const to = getOption(values, "to");
    const databaseFile = readEnvironment().databaseUrl.replace(/^file:/, "");
    const manifest = await writeBackup({ databaseFile, filesFolder: readEnvironment().filesFolder }, to);
    const { madeAt, program, tables, database, files } = manifest;
    return { to, madeAt, program, databaseBytes: database.bytes, files: files.length, tables };
  },
};
