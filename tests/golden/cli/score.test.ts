/**
 * The command line's words, kept: the plots of six simulated students on every set of exercise-sets/, scored and
 * reported. `npx vitest run tests/golden/cli -u` writes the kept answers anew; review the difference.
 */
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { REPORT } from "@/lib/cli/report";
import { SCORE } from "@/lib/cli/score";
import { formatJson } from "@/lib/exchange/format-json";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

const CASES = fileURLToPath(new URL("../cases/cli/", import.meta.url));

describe.each(listExerciseSets().map(({ name, path }) => [name.replace(".json", ""), path]))(
  "%s",
  (name, set) => {
    const plots = `${CASES}${name}.plots.json`;

    it("is scored as before, to the byte", async () => {
      const printed = formatJson(await SCORE.run({ set, plots }));
      await expect(printed).toMatchFileSnapshot(`${CASES}${name}.score.json`);
    });

    it("is reported as before, to the byte", async () => {
      const printed = formatJson(await REPORT.run({ set, plots }));
      await expect(printed).toMatchFileSnapshot(`${CASES}${name}.report.json`);
    });
  },
);
