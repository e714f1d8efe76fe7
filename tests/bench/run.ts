/**
 * `npm run bench [NAME …]`: runs every `tests/bench/*.bench.ts` (or those whose name contains a given word) and
 * prints one table of medians and ratios. Benchmarks are seeded; their figures are for reading, never for passing.
 */
import { readdirSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";

/** One measured figure. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly note?: string;
}

const wanted = process.argv.slice(2);
const files = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith(".bench.ts"))
  .filter((file) => wanted.length === 0 || wanted.some((word) => file.includes(word)))
  .sort();

console.log(
  `Node ${process.versions.node}, ${cpus().length} cores, ${cpus()[0]?.model ?? "unknown processor"}`,
);
for (const file of files) {
  console.log(`\n${file}`);
  const { default: measure } = (await import(join(import.meta.dirname, file))) as {
    default: () => Promise<Figure[]>;
  };
  for (const { name, value, unit, note } of await measure()) {
    console.log(
      `  ${name.padEnd(58)} ${value.toPrecision(4).padStart(10)} ${unit}${note ? `   (${note})` : ""}`,
    );
  }
}
