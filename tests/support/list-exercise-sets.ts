import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";

const FOLDER = fileURLToPath(new URL("../../exercise-sets/", import.meta.url));

/** Every set of exercise-sets/ by file name, as text and as read. */
export function listExerciseSets(): { name: string; path: string; text: string; resolved: ResolvedSet }[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => {
      const path = `${FOLDER}${name}`;
      const text = readFileSync(path, "utf8");
      return { name, path, text, resolved: readExerciseSet(text) };
    });
}
