import { readEnvironment } from "@/lib/data/read-environment";

/**
 * Where everything lies that the program keeps outside the database: the photographs, in `photos/`. A backup copies
 * this folder after the database, so that every photograph that the copy of the database names is there; files without
 * a row are harmless. The folder need not exist yet.
 */
export function getFilesFolder(): string {
  return readEnvironment().filesFolder;
}
