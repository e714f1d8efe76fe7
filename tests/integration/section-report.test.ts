/** The section's report and a student's progress: the figures of full results, and nothing that is not released. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { countPlot } from "@/lib/agreement/count-plot";
import { sumCounts } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { fitRasch } from "@/lib/agreement/fit-rasch";
import { getDatabase } from "@/lib/data/store/database";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import { PlotSchema } from "@/lib/plot/plots-file";
import { ProgressViewSchema } from "@/lib/plot/progress-view";
import { ScoreResultSchema } from "@/lib/plot/score-result";
import { ReferenceSchema } from "@/lib/plot/stone";
import { getProgress } from "@/lib/workflows/get-progress";
import { getSectionReport } from "@/lib/workflows/get-section-report";
import { loadDemo } from "@/lib/workflows/load-demo";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, makePerson, plotAndHandIn, type School } from "@/tests/support/school";

interface Scored {
  readonly exerciseId: string;
  readonly studentId: string;
  readonly stoneId: string;
  readonly result: ReturnType<typeof ScoreResultSchema.parse>;
  readonly counts: ReturnType<typeof countPlot>;
}

/** The demo's results, read whole and past the tallies. */
async function readResults(sectionId: string): Promise<Scored[]> {
  const rows = await getDatabase().result.findMany({
    where: { isCurrent: true, handIn: { sitting: { exerciseStone: { exercise: { sectionId } } } } },
    include: { reference: true, handIn: { include: { sitting: { include: { exerciseStone: true } } } } },
    orderBy: { handIn: { handedInAt: "asc" } },
  });
  return rows.map((row) => {
    const { sitting } = row.handIn;
    const result = ScoreResultSchema.parse(row.result);
    return {
      exerciseId: sitting.exerciseStone.exerciseId,
      studentId: sitting.studentId,
      stoneId: sitting.exerciseStone.stoneId,
      result,
      counts: countPlot({
        reference: ReferenceSchema.parse(row.reference.body),
        plotted: PlotSchema.parse(row.handIn.plot),
        result,
        scales: DEFAULT_SCALES,
      }),
    };
  });
}

describe("the report of the demo's section", () => {
  let database: TestDatabase;
  let all: Scored[];
  let report: Awaited<ReturnType<typeof getSectionReport>>;
  const director = { userId: "-", role: "director", name: "-" } as const;
  beforeAll(async () => {
    database = await createTestDatabase();
    await loadDemo();
    const { sectionId } = await getDatabase().exercise.findFirstOrThrow({ select: { sectionId: true } });
    all = await readResults(sectionId);
    report = await getSectionReport(director, { sectionId });
  });
  afterAll(() => database.remove());

  it("gives the rates that lib/agreement derives from the full results", () => {
    const whole = sumCounts(all.map(({ counts }) => counts));
    expect(whole.plots).toBeGreaterThan(60);
    expect(report.rates).toEqual(deriveRates(whole, DEFAULT_SCALES));
    for (const { studentId, rates } of report.students) {
      const own = sumCounts(all.filter((one) => one.studentId === studentId).map(({ counts }) => counts));
      expect(rates).toEqual(deriveRates(own, DEFAULT_SCALES));
    }
    expect(report.weeks.reduce((sum, { rates }) => sum + rates.plots, 0)).toBe(whole.plots);
  });

  it("has shares of the section equal to those rates, with intervals of their own", () => {
    const { exact } = report.clusters;
    const clarity = report.rates.grades.clarity?.exact;
    if (!clarity || !("value" in exact) || !("value" in clarity)) throw new Error("no share");
    expect(exact.value).toBe(clarity.value);
    expect(exact.high - exact.low).toBeGreaterThanOrEqual(clarity.high - clarity.low - 1e-9);
  });

  it("places students and marks as fitRasch does on found and overlooked of each first hand-in", () => {
    const toKey = ({ studentId, stoneId }: Scored) => `${studentId} ${stoneId}`;
    const first = all.filter((one, index) => all.findIndex((other) => toKey(other) === toKey(one)) === index);
    // A stone that was sat again says nothing new of what a student finds.
    expect(first.length).toBeLessThan(all.length);
    const fit = fitRasch(
      first.flatMap(({ studentId, stoneId, result }) => [
        ...result.found.map(({ reference }) => ({
          person: studentId,
          item: `${stoneId}\n${reference}`,
          right: true,
        })),
        ...result.overlooked.map((id) => ({ person: studentId, item: `${stoneId}\n${id}`, right: false })),
      ]),
    );
    const places = new Map(fit.persons.map(({ person, ability }) => [person, ability]));
    for (const { studentId, ability, rates } of report.students) {
      if (rates.plots === 0) continue;
      const expected = places.get(studentId);
      if (expected && "value" in expected && "value" in ability) {
        expect(ability.value).toBeCloseTo(expected.value, 6);
        expect(ability.standardError).toBeCloseTo(expected.standardError, 6);
      } else expect(ability).toEqual(expected);
    }
    expect(report.marks.length).toBe(fit.items.length);
  });

  it("covers one exercise when asked, and is refused for an exercise of another section", async () => {
    const [first] = report.exercises;
    const one = await getSectionReport(director, {
      sectionId: report.sectionId,
      exerciseId: first?.exerciseId,
    });
    expect(one.rates.plots).toBe(all.filter(({ exerciseId }) => exerciseId === first?.exerciseId).length);
    await expect(
      getSectionReport(director, { sectionId: report.sectionId, exerciseId: "other" }),
    ).rejects.toMatchObject({ code: "not-found" });
  });

  it("says nothing of students with little data", () => {
    for (const { studentId, kind } of report.needs) {
      if (kind === "hand-in") continue;
      const student = report.students.find((one) => one.studentId === studentId);
      expect(student?.rates.plots).toBeGreaterThanOrEqual(3);
    }
  });
});

describe("a student's progress", () => {
  let database: TestDatabase;
  let school: School;
  beforeAll(async () => {
    database = await createTestDatabase();
    school = await buildSchool();
  });
  afterAll(() => database.remove());

  const readAda = () => getProgress(school.ada, { studentId: school.ada.userId });

  it("is untouched, to the letter, by whatever is handed in, scored or counted but not released", async () => {
    const before = JSON.stringify(await readAda());
    expect(JSON.parse(before)).toMatchObject({ plots: 0, stones: [], weeks: [], characteristics: [] });
    const eve = await makePerson("eve", "Ada Student", "student");
    const { sectionId } = school;
    await getDatabase().enrolment.create({ data: { sectionId, studentId: eve.userId } });
    await plotAndHandIn(eve, school.exerciseStoneIds[0], 0.1);
    await getSectionReport(school.iris, { sectionId });
    expect(JSON.stringify(await readAda())).toBe(before);
  });

  it("has a debrief from its release to its withdrawal, for staff of the section as well", async () => {
    await releaseDebriefs(school.iris, { sittingIds: [school.adaScored] });
    const released = await readAda();
    expect(ProgressViewSchema.parse(released)).toEqual(released);
    expect(released.plots).toBe(1);
    expect(released.stones.map(({ sittingId }) => sittingId)).toEqual([school.adaScored]);
    const input = { studentId: school.ada.userId, sectionId: school.sectionId };
    expect(await getProgress(school.iris, input)).toEqual(released);
    await withdrawRelease(school.iris, { sittingIds: [school.adaScored] });
    expect((await readAda()).plots).toBe(0);
    expect((await getProgress(school.iris, input)).plots).toBe(0);
  });

  it("is refused to its own student by way of a section: that page is for staff", async () => {
    const input = { studentId: school.ada.userId, sectionId: school.sectionId };
    await expect(getProgress(school.ada, input)).rejects.toMatchObject({ code: "not-found" });
  });

  it("is shown to staff in a section of the student's alone", async () => {
    const elsewhere = { studentId: school.ada.userId, sectionId: school.otherSectionId };
    await expect(getProgress(school.director, elsewhere)).rejects.toMatchObject({ code: "not-found" });
    await expect(getProgress(school.director, { studentId: school.ada.userId })).rejects.toMatchObject({
      code: "not-found",
    });
  });
});
