import { describe, expect, it } from "vitest";
import { parseRatings } from "@/lib/agreement/parse-ratings";
import { AppError, type Fault } from "@/lib/base/app-error";

const SCALE = ["VS1", "VS2", "SI1"];

/** The faults with which a text is refused. */
function listFaults(text: string, scale: readonly string[] = SCALE): readonly Fault[] {
  try {
    parseRatings(text, scale);
  } catch (thrown) {
    if (thrown instanceof AppError && thrown.code === "bad-input") return thrown.faults;
    throw thrown;
  }
  throw new Error("not refused");
}

describe("reading", () => {
  const expected = [
    { item: "T1-04", rater: "a", grade: "VS1", row: 2 },
    { item: "T1-04", rater: "b", grade: "SI1", row: 3 },
  ];

  it("reads item, rater, grade", () => {
    expect(parseRatings("item,rater,grade\nT1-04,a,VS1\nT1-04,b,SI1\n", SCALE)).toEqual(expected);
  });

  it.each([
    ["carriage returns and line feeds", "item,rater,grade\r\nT1-04,a,VS1\r\nT1-04,b,SI1\r\n"],
    ["carriage returns alone", "item,rater,grade\rT1-04,a,VS1\rT1-04,b,SI1"],
    ["mixed line ends", "item,rater,grade\r\nT1-04,a,VS1\nT1-04,b,SI1\r"],
    ["a byte order mark", "\uFEFFitem,rater,grade\nT1-04,a,VS1\nT1-04,b,SI1"],
    ["columns in any order and letter case", "Grade,ITEM,Rater\nVS1,T1-04,a\nSI1,T1-04,b"],
    ["blanks around cells", "item , rater,grade\n T1-04, a ,VS1\nT1-04,b, SI1 "],
    ["quoted cells", '"item","rater","grade"\n"T1-04","a","VS1"\n"T1-04",b,"SI1"'],
    ["semicolons", "item;rater;grade\nT1-04;a;VS1\nT1-04;b;SI1"],
    ["tabs", "item\trater\tgrade\nT1-04\ta\tVS1\nT1-04\tb\tSI1"],
    ["empty columns at the end", "item,rater,grade,,\nT1-04,a,VS1,,\nT1-04,b,SI1,,"],
  ])("takes %s", (_, text) => {
    expect(parseRatings(text, SCALE)).toEqual(expected);
  });

  it("counts rows as a spreadsheet does: blank rows count, a quoted line end does not", () => {
    const ratings = parseRatings('item,rater,grade\n\n"T1\n04",a,VS1\n,,\nT2,"a ""b"", c",VS2\n', SCALE);
    expect(ratings).toEqual([
      { item: "T1\n04", rater: "a", grade: "VS1", row: 3 },
      { item: "T2", rater: 'a "b", c', grade: "VS2", row: 5 },
    ]);
  });

  it("a header alone gives no rating", () => {
    expect(parseRatings("item,rater,grade", SCALE)).toEqual([]);
  });

  it("names that objects already have are only names", () => {
    const ratings = parseRatings(
      "item,rater,grade\n__proto__,constructor,VS1\n__proto__,toString,VS1",
      SCALE,
    );
    expect(ratings.map((rating) => rating.rater)).toEqual(["constructor", "toString"]);
  });
});

describe("refusing, with the row", () => {
  it("a grade that is not on the scale, letter by letter", () => {
    expect(listFaults("item,rater,grade\n1,a,VS1\n1,b,vs1")).toEqual([
      { path: "row 3", message: '"vs1" is not on the scale (VS1, VS2, SI1)' },
    ]);
  });

  it("a second grade by one rater for one item", () => {
    expect(listFaults("item,rater,grade\n1,a,VS1\n2,a,VS1\n1,a,VS2")).toEqual([
      { path: "row 4", message: 'rater "a" has graded item "1" already (row 2)' },
    ]);
  });

  it("missing, unknown and repeated columns", () => {
    expect(listFaults("item,grade\n1,VS1")).toEqual([
      { path: "row 1", message: 'column "rater" is missing' },
    ]);
    expect(listFaults("item,rater,grade,note\n")).toEqual([
      { path: "row 1", message: 'unknown column "note"' },
    ]);
    expect(listFaults("item,rater,grade,item\n")).toEqual([
      { path: "row 1", message: 'column "item" is named twice' },
    ]);
    expect(listFaults("1,a,VS1\n").map((fault) => fault.path)).toContain("row 1");
  });

  it("empty cells, short rows and cells beyond the header", () => {
    expect(listFaults("item,rater,grade\n1,,VS1\n1,a\n1,b,VS1,extra")).toEqual([
      { path: "row 2", message: "no rater" },
      { path: "row 3", message: "no grade" },
      { path: "row 4", message: '"extra" stands in a column that has no name' },
    ]);
  });

  it("a broken quotation", () => {
    expect(listFaults('item,rater,grade\n1,a,VS1\n"1,b,VS1\n')[0]).toEqual({
      path: "row 3",
      message: "a broken quotation",
    });
  });

  it("an empty file and an unusable scale", () => {
    expect(listFaults(" \n")).toEqual([{ path: "row 1", message: "the file is empty" }]);
    expect(listFaults("item,rater,grade", [])[0]?.path).toBe("scale");
    expect(listFaults("item,rater,grade", ["a", "a"])[0]).toEqual({
      path: "scale[1]",
      message: '"a" is named twice',
    });
    expect(listFaults("item,rater,grade", ["a", " "])[0]?.path).toBe("scale[1]");
  });

  it("counts all faults and lists the first hundred", () => {
    const rows = Array.from({ length: 250 }, (_, i) => `${i},a,XX`).join("\n");
    try {
      parseRatings(`item,rater,grade\n${rows}`, SCALE);
      expect.unreachable();
    } catch (thrown) {
      expect(thrown).toMatchObject({ code: "bad-input", message: expect.stringContaining("250 faults") });
      expect((thrown as AppError).faults).toHaveLength(100);
    }
  });
});
