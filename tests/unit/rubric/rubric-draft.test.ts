/** The rubric's editor: every number is there, read back exactly, and refused just where the schema refuses it. */
import { describe, expect, it } from "vitest";
import { parseRubricDraft, readRubricDraft, toRubricDraft } from "@/components/rubric/rubric-draft";
import { DEFAULT_RUBRIC, type Rubric, RubricSchema } from "@/lib/plot/rubric";
import { fromShown, RUBRIC_FIELDS } from "@/lib/plot/rubric-fields";

const START = toRubricDraft(DEFAULT_RUBRIC);
const type = (path: string, text: string) => ({ ...START, numbers: { ...START.numbers, [path]: text } });

/** The path of every number of a rubric, those of the list left out. */
function listNumbers(value: object, prefix = ""): string[] {
  return Object.entries(value).flatMap(([key, one]) => {
    if (typeof one === "number") return [`${prefix}${key}`];
    return Array.isArray(one) || typeof one !== "object" ? [] : listNumbers(one, `${prefix}${key}.`);
  });
}

/** The default rubric with one number put in, as the schema judges it. */
function isAdmitted(path: string, value: number): boolean {
  const [table = "", key] = path.split(".");
  const whole = structuredClone(DEFAULT_RUBRIC) as unknown as Record<string, Record<string, number> | number>;
  const inner = whole[table];
  if (key === undefined || typeof inner !== "object") whole[table] = value;
  else inner[key] = value;
  return RubricSchema.safeParse(whole).success;
}

describe("the fields", () => {
  it("are all the rubric's numbers, each once, each with a reason", () => {
    expect(RUBRIC_FIELDS.map(({ path }) => path).sort()).toEqual(listNumbers(DEFAULT_RUBRIC).sort());
    expect(RUBRIC_FIELDS.filter(({ why }) => why.length < 10)).toEqual([]);
  });

  it.each(RUBRIC_FIELDS.map((field) => [field.path, field] as const))(
    "%s has the limits of the schema",
    (path, field) => {
      const { min, max, isAboveMin = false, isWhole = false } = field;
      expect(isAdmitted(path, fromShown(field, max))).toBe(true);
      expect(isAdmitted(path, fromShown(field, max * 1.01))).toBe(false);
      expect(isAdmitted(path, fromShown(field, min))).toBe(!isAboveMin);
      expect(isAdmitted(path, fromShown(field, min - 0.01))).toBe(false);
      expect(isAdmitted(path, fromShown(field, min + 1.5 * (isWhole ? 1 : max / 1000)))).toBe(!isWhole);
    },
  );
});

describe("a draft", () => {
  it("that is not touched reads back to the very rubric", () => {
    const odd: Rubric = {
      ...DEFAULT_RUBRIC,
      near: 0.1 / 3,
      parts: { location: 1 / 3, type: 1 / 3, extent: 1 / 3 },
      dust: { ...DEFAULT_RUBRIC.dust, burstGapMs: 1001 },
    };
    for (const rubric of [DEFAULT_RUBRIC, odd]) {
      expect(readRubricDraft(toRubricDraft(rubric), rubric)).toEqual({ rubric, faults: [] });
    }
  });

  it("takes a comma or a point, and shares as percent", () => {
    expect(readRubricDraft(type("near", "0,045"), DEFAULT_RUBRIC).rubric?.near).toBe(0.045);
    expect(readRubricDraft(type("merged", " 35 "), DEFAULT_RUBRIC).rubric?.merged).toBe(0.35);
    expect(readRubricDraft(type("dust.burstGapMs", "1.2"), DEFAULT_RUBRIC).rubric?.dust.burstGapMs).toBe(
      1200,
    );
  });

  it.each([
    ["near", "", "near"],
    ["near", "wide", "near"],
    ["near", "0", "near"],
    ["merged", "101", "merged"],
    ["turnSupport", "2.5", "turnSupport"],
    ["near", "0.2", "far"],
    ["parts.location", "60", "parts"],
    ["shares.plot", "60", "shares"],
  ])("with %s at “%s” is refused at %s", (path, text, at) => {
    const { rubric, faults } = readRubricDraft(type(path, text), DEFAULT_RUBRIC);
    expect(rubric).toBeNull();
    expect(faults.map((fault) => fault.path)).toEqual([at]);
  });

  it("refuses more credit for a farther grade, and reads a list of another length", () => {
    const { faults } = readRubricDraft({ ...START, credits: ["60", "80"] }, DEFAULT_RUBRIC);
    expect(faults.map(({ path }) => path)).toEqual(["gradeCredit[1]"]);
    expect(readRubricDraft({ ...START, credits: ["100"] }, DEFAULT_RUBRIC).rubric?.gradeCredit).toEqual([1]);
  });

  it("that an older program kept is thrown away where a number is missing", () => {
    const { near: _gone, ...numbers } = START.numbers;
    expect(parseRubricDraft(START)).toEqual(START);
    expect(parseRubricDraft({ ...START, numbers })).toBeNull();
    expect(parseRubricDraft("x")).toBeNull();
  });
});
