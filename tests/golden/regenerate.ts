/**
 * `npx tsx tests/golden/regenerate.ts [NAME …]`: writes what the engine says now into the cases of tests/golden/cases/scoring
 * (or those whose name contains a given word), and says which changed. Review the difference with `git diff` before it is kept.
 */
import { listGoldenCases, scoreCase, writeCase } from "@/tests/support/scoring/golden-cases";

const wanted = process.argv.slice(2);
const cases = listGoldenCases().filter(
  ({ name }) => wanted.length === 0 || wanted.some((word) => name.includes(word)),
);
const changed = cases.filter((golden) => writeCase(golden, scoreCase(golden)));
for (const { name, expected, ...golden } of changed) {
  const [was, is] = [expected, scoreCase(golden)].map((scored) =>
    scored.map(({ result }) => result.total).join(", "),
  );
  console.log(`${name}: ${was === is ? "the same points, other words" : `${was || "new"} -> ${is}`}`);
}
console.log(`${changed.length} of ${cases.length} cases changed`);
