/** A director's report of the program, from the demo: what it adds up to, who may have it, and what it forgets. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { isDefined } from "@/lib/agreement/statistic";
import { getDatabase } from "@/lib/data/store/database";
import { getProgramReport } from "@/lib/workflows/get-program-report";
import { getSectionReport } from "@/lib/workflows/get-section-report";
import { loadDemo } from "@/lib/workflows/load-demo";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { ensureTallySums, listTallyStamps } from "@/lib/workflows/tally/list-tally-sums";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";

let database: TestDatabase;
let director: Viewer;
beforeAll(async () => {
  database = await createTestDatabase();
  await loadDemo();
  const { id, name } = await getDatabase().user.findFirstOrThrow({ where: { role: "director" } });
  director = { userId: id, role: "director", name };
});
afterAll(() => database.remove());

describe("the program's report", () => {
  it("says of a section what the section's own report says", async () => {
    const report = await getProgramReport(director);
    expect(report.sections.map(({ label }) => label).sort()).toEqual([
      "Clarity plotting, day class",
      "Clarity plotting, last term",
      "Evening practice",
    ]);
    for (const { key, plots, shares, bias } of report.sections) {
      const own = await getSectionReport(director, { sectionId: key });
      expect(plots).toBe(own.rates.plots);
      if (plots === 0) continue;
      expect(shares.found.share).toEqual(own.clusters.detection);
      expect(shares.exact.share).toEqual(own.clusters.exact);
      expect(shares["within-one"].share).toEqual(own.clusters.withinOne);
      expect(bias).toEqual(own.rates.grades.clarity?.bias);
    }
    expect(report.whole.plots).toBe(await getDatabase().resultTally.count());
  });

  it("puts terms in order of time, counts a shared section for both who teach it, and says why a figure is missing", async () => {
    const { terms, instructors, sections } = await getProgramReport(director);
    expect(terms.map(({ sections: count }) => count)).toEqual([1, 2]);
    expect(instructors.map(({ label, sections: count }) => [label, count])).toEqual([
      ["Bram Oldacre", 3],
      ["Ione Marrable", 1],
    ]);
    const evening = sections.find(({ label }) => label === "Evening practice");
    expect(evening?.shares.found.share).toEqual({ undefined: "no reference mark was there to be found" });
  });

  it("adds up second readings, and leaves out what the director reads blind", async () => {
    const before = await getProgramReport(director);
    expect(before.readers.readings).toBe(6);
    expect(isDefined(before.readers.inCommon)).toBe(true);
    const stone = await getDatabase().stone.findFirstOrThrow({ where: { label: "D-03" } });
    expect(before.stones.map(({ label }) => label)).toContain("D-03");
    await startSecondReading(director, { stoneId: stone.id });
    const after = await getProgramReport(director);
    expect(after.stones.map(({ label }) => label)).not.toContain("D-03");
    expect(after.readers.readings).toBe(5);
    expect(after.leftOut).toEqual(["D-03"]);
  });

  it("remembers by the stamps of the sums, and works out anew what has changed", async () => {
    const before = await getProgramReport(director);
    const { id } = await getDatabase().exercise.findFirstOrThrow({ where: { title: "First look" } });
    const [stamp] = [...(await listTallyStamps([id])).values()];
    const tally = await getDatabase().resultTally.findFirstOrThrow({ where: { exerciseId: id } });
    // What a rescore does: the tally goes, and the sums with it. Here its result stays counted no more.
    await getDatabase().resultTally.delete({ where: { resultId: tally.resultId } });
    await getDatabase().result.update({ where: { id: tally.resultId }, data: { isCurrent: false } });
    await getDatabase().tallySum.deleteMany({ where: { exerciseId: id } });
    await ensureTallySums([id]);
    expect([...(await listTallyStamps([id])).values()]).not.toEqual([stamp]);
    const after = await getProgramReport(director);
    expect(after.whole.plots).toBe(before.whole.plots - 1);
  });
});
