/** The engine's kept cases: an exercise set, plots on it, and what the engine said of them when they were last reviewed. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { formatJson } from "@/lib/exchange/format-json";
import { parseExerciseSet } from "@/lib/plot/parse-exercise-set";
import { parsePlots } from "@/lib/plot/parse-plots";
import type { ScoredPlot } from "@/lib/plot/score-result";
import { scorePlots } from "@/lib/scoring/score-plot";

const FOLDER = fileURLToPath(new URL("../../golden/cases/scoring/", import.meta.url));

export interface GoldenCase {
  readonly name: string;
  readonly title: string;
  /** Rules of lib/scoring/SPEC.md that the case is about. */
  readonly rules: readonly string[];
  readonly set: unknown;
  readonly plots: unknown;
  readonly expected: readonly ScoredPlot[];
}

/** Every case, in the order of their names. */
export function listGoldenCases(): GoldenCase[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith(".json"))
    .sort()
    .map((file) => ({
      name: file.replace(/\.json$/, ""),
      ...JSON.parse(readFileSync(FOLDER + file, "utf8")),
    }));
}

/** What the engine says of a case now. */
export function scoreCase({ set, plots }: Pick<GoldenCase, "set" | "plots">): ScoredPlot[] {
  const resolved = parseExerciseSet(set);
  return scorePlots(resolved, parsePlots(plots, resolved));
}

/** The file's text with the given answer. */
export function formatCase(
  { title, rules, set, plots }: GoldenCase,
  expected: readonly ScoredPlot[],
): string {
  return formatJson({ title, rules, set, plots, expected });
}

/** Writes a case with a new answer; true when the file changed. */
export function writeCase(golden: GoldenCase, expected: readonly ScoredPlot[]): boolean {
  const path = `${FOLDER}${golden.name}.json`;
  const text = formatCase(golden, expected);
  const changed = readFileSync(path, "utf8") !== text;
  if (changed) writeFileSync(path, text);
  return changed;
}
