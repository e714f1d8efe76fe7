import { readEnvironment } from "@/lib/data/read-environment";

/** Where the photographs lie: as the environment says; null for a program that keeps none. */
export function findFilesFolder(): string | null {
  const environment: object = readEnvironment();
  const folder: unknown = "filesFolder" in environment ? environment.filesFolder : null;
  return typeof folder === "string" && folder !== "" ? folder : null;
}
