/**
 * The agreement object of kept CSV files, byte for byte (bootstrap ends included). `npx vitest run tests/golden/agreement -u`
 * writes the expected files anew; review the difference.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { computeAgreement } from "@/lib/agreement/compute-agreement";
import { parseRatings } from "@/lib/agreement/parse-ratings";
import { DEFAULT_SCALES } from "@/lib/plot/grades";

const folder = new URL("../cases/agreement/", import.meta.url);
const names = readdirSync(folder)
  .filter((name) => name.endsWith(".csv"))
  .map((name) => name.replace(/\.csv$/, ""));

describe("agreement of kept ratings", () => {
  it("has its cases", () => {
    expect(names).toEqual(["four-sections", "two-instructors"]);
  });

  it.each(names)("%s", async (name) => {
    const text = readFileSync(new URL(`${name}.csv`, folder), "utf8");
    const agreement = computeAgreement(parseRatings(text, DEFAULT_SCALES.clarity), DEFAULT_SCALES.clarity);
    const json = `${JSON.stringify(agreement, null, 2)}\n`;
    await expect(json).toMatchFileSnapshot(`../cases/agreement/${name}.agreement.json`);
  });
});
