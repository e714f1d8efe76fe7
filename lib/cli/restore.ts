import type { Command } from "@/lib/cli/command";
import { getOption } from "@/lib/cli/read-options";
import { readEnvironment } from "@/lib/data/read-environment";
import { restoreBackup } from "@/lib/workflows/command-line/restore-backup";

/** `restore`: puts a backup into an empty place; the next start brings an older one up to date. */
export const RESTORE: Command = {
  name: "restore",
  purpose:
    "puts a backup into an empty place, by default where the environment says the database lies; --force moves what is there aside",
  options: [
    { name: "from", value: "FOLDER", required: true },
    { name: "to", value: "DATABASE-FILE", required: false },
    { name: "files", value: "FOLDER", required: false },
    { name: "force", value: null, required: false },
  ],
  run: async (values) => {
    const databaseFile = values.to ?? readEnvironment().databaseUrl.replace(/^file:/, "");
    const filesFolder = values.files ?? readEnvironment().filesFolder;
    const { manifest, movedAside } = await restoreBackup(getOption(values, "from"), {
      databaseFile,
      filesFolder,
      force: values.force !== undefined,
    });
    const { madeAt, program, tables, files } = manifest;
    return { to: databaseFile, filesFolder, madeAt, program, files: files.length, tables, movedAside };
  },
};
