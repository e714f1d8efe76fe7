/** What a section is exported as. Column lists and words of OneRoster: check values 9.1, columns in the order of the table. */
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import type { Gradebook } from "@/lib/exchange/gradebook";
import { writeGradebook } from "@/lib/exchange/write-gradebook";
import { writeItems } from "@/lib/exchange/write-items";
import { writeOneRoster } from "@/lib/exchange/write-one-roster";

const NOW = new Date("2026-11-25T12:00:00Z");
const GRADEBOOK: Gradebook = {
  sectionId: "section-1",
  sectionName: "Morning",
  term: "Autumn 2026",
  exercises: [
    {
      exerciseId: "e1",
      title: "First\nlook",
      opensAt: new Date("2026-11-01T08:00:00Z"),
      dueAt: new Date("2026-11-08T20:00:00Z"),
      stones: 2,
    },
  ],
  students: [
    { studentId: "ada", login: "ada", name: '=HYPERLINK("x","y")' },
    { studentId: "ben", login: "-ben", name: "Ben, the second" },
    { studentId: "cyd", login: "cyd", name: "Cyd" },
    { studentId: "dee", login: "dee", name: "Dee" },
  ],
  extensions: [],
  entries: [
    entry("ada", 2, 2, 15_050, "2026-11-07T10:00:00Z"),
    entry("ben", 1, 1, 0, "2026-11-09T10:00:00Z"),
    entry("cyd", 1, 0, 0, "2026-11-07T10:00:00Z"),
  ],
};

function entry(studentId: string, handedIn: number, scored: number, hundredths: number, at: string) {
  return { exerciseId: "e1", studentId, handedIn, scored, hundredths, lastHandedInAt: new Date(at) };
}

const parse = (csv: string) =>
  Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;

describe("the gradebook as CSV", () => {
  const rows = parse(writeGradebook(GRADEBOOK));

  it("adds points up, leaves what is not scored empty, and tells 0 points from none", () => {
    const points = "First\nlook, points of 200";
    expect(rows.map((row) => row[points])).toEqual(["150.5", "0", "", ""]);
    expect(rows.map((row) => row["First\nlook, stones handed in of 2"])).toEqual(["2", "1", "1", "0"]);
  });

  it("holds no cell that a spreadsheet takes for a formula", () => {
    expect(rows[0]?.Student).toBe(`'=HYPERLINK("x","y")`);
    expect(rows[1]?.["Sign-in name"]).toBe("'-ben");
    expect(rows[1]?.Student).toBe("Ben, the second");
  });
});

describe("items as CSV", () => {
  it("are a row for each reference mark, 1 found and 0 overlooked; a negative number stays a number", () => {
    const csv = writeItems([
      {
        login: "ada",
        name: "Ada",
        exerciseTitle: "First look",
        label: "@A-1",
        attempt: 1,
        handedInAt: NOW,
        hundredths: 5025,
        clarityGap: -1,
        found: ["a"],
        overlooked: ["b", "c"],
      },
    ]);
    const rows = parse(csv);
    expect(rows.map((row) => [row["Reference mark"], row.Found])).toEqual([
      ["a", "1"],
      ["b", "0"],
      ["c", "0"],
    ]);
    expect(rows[0]).toMatchObject({
      Stone: "'@A-1",
      Points: "50.25",
      "Clarity, steps from the reference": "-1",
    });
  });
});

describe("OneRoster 1.2", () => {
  const files = unzipSync(writeOneRoster(GRADEBOOK, NOW));
  const read = (name: string) => strFromU8(files[name] ?? new Uint8Array());

  it("is a zip with three files at its root", () => {
    expect(Object.keys(files).sort()).toEqual(["lineItems.csv", "manifest.csv", "results.csv"]);
  });

  it("names every file of 1.2 in its manifest, bulk or absent", () => {
    const manifest = new Map(
      Papa.parse<string[]>(read("manifest.csv"), { skipEmptyLines: true }).data.map(([name = "", value]) => [
        name,
        value,
      ]),
    );
    expect(manifest.get("propertyName")).toBe("value");
    expect(manifest.get("manifest.version")).toBe("1.0");
    expect(manifest.get("oneroster.version")).toBe("1.2");
    // 9.1, file names of 1.2 but the manifest's own.
    const names =
      "academicSessions, categories, classes, classResources, courseResources, courses, demographics, enrollments, lineItemLearningObjectiveIds, lineItems, lineItemScoreScales, orgs, resources, resultLearningObjectiveIds, results, resultScoreScales, roles, scoreScales, userProfiles, userResources, users";
    for (const name of names.split(", ")) {
      const expected = name === "lineItems" || name === "results" ? "bulk" : "absent";
      expect(manifest.get(`file.${name}`), name).toBe(expected);
    }
    expect(manifest.has("source.systemName") && manifest.has("source.systemCode")).toBe(true);
  });

  it("has the columns of lineItems in their order, one row for each exercise, no line break in a field", () => {
    const csv = read("lineItems.csv");
    expect(csv.split("\r\n")[0]).toBe(
      "sourcedId,status,dateLastModified,title,description,assignDate,dueDate,classSourcedId,categorySourcedId,academicSessionSourcedId,resultValueMin,resultValueMax,schoolSourcedId",
    );
    expect(csv.trimEnd().split("\r\n")).toHaveLength(2);
    const [row] = parse(csv);
    expect(row).toMatchObject({
      status: "",
      dateLastModified: "",
      title: "First look",
      assignDate: "2026-11-01",
      dueDate: "2026-11-08",
      classSourcedId: "section-1",
      resultValueMin: "0",
      resultValueMax: "200",
    });
    // R in the table.
    for (const column of ["categorySourcedId", "academicSessionSourcedId", "schoolSourcedId"]) {
      expect(row?.[column]).not.toBe("");
    }
  });

  it("has the columns of results in their order, and the standard's words for where each stands", () => {
    const csv = read("results.csv");
    expect(csv.split("\r\n")[0]).toBe(
      "sourcedId,status,dateLastModified,lineItemSourcedId,studentSourcedId,scoreStatus,score,scoreDate,comment,textScore,classSourcedId,inProgress,incomplete,late,missing",
    );
    const rows = parse(csv);
    expect(
      rows.map(({ scoreStatus, score, late, missing, incomplete }) => [
        scoreStatus,
        score,
        late,
        missing,
        incomplete,
      ]),
    ).toEqual([
      ["fully graded", "150.5", "false", "false", "false"],
      ["partially graded", "0", "true", "false", "true"],
      ["submitted", "", "false", "false", "true"],
      ["not submitted", "", "false", "true", "true"],
    ]);
    expect(new Set(rows.map(({ sourcedId }) => sourcedId)).size).toBe(4);
    expect(rows.every(({ scoreDate }) => /^\d{4}-\d\d-\d\d$/.test(scoreDate ?? ""))).toBe(true);
  });
});
