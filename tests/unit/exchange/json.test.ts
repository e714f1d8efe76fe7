import { describe, expect, it } from "vitest";
import { isAppError } from "@/lib/base/app-error";
import { findJsonFault } from "@/lib/exchange/find-json-fault";
import { formatJson } from "@/lib/exchange/format-json";
import { parseJson } from "@/lib/exchange/parse-json";

describe("finding where a text stops being JSON", () => {
  it.each([
    ["", 1, 1, /the file ends.*a value/],
    ['{\n  "a": 1,\n}', 3, 1, /a key in quotation marks/],
    ['{ "a" 1 }', 1, 7, /a colon/],
    ["[1 2]", 1, 4, /a comma or \]/],
    ["[1,]", 1, 4, /a value/],
    ['{"a": 1} x', 1, 10, /nothing more/],
    ['["a\nb"]', 1, 4, /line break/],
    ['["abc]', 1, 2, /no closing quotation mark/],
    ['["\\q"]', 1, 3, /escape/],
    ["[01]", 1, 3, /a comma or \]/],
    ["{'a': 1}", 1, 2, /a key in quotation marks/],
    ["[1", 1, 3, /the file ends.*a comma or \]/],
  ])("says where in %j", (text, line, column, message) => {
    const fault = findJsonFault(text);
    expect(fault).toMatchObject({ line, column });
    expect(fault?.message).toMatch(message);
  });

  it("is not exhausted by a file of brackets", () => {
    const fault = findJsonFault("[".repeat(200_000));
    expect(fault).toMatchObject({ line: 1, column: 200_001 });
  });
});

describe("parsing JSON", () => {
  it("passes over a byte order mark", () => {
    expect(parseJson('\uFEFF{"a":1}')).toEqual({ a: 1 });
  });

  it("refuses with the line and column as the path", () => {
    const attempt = () => parseJson('{\n"a": tru\n}');
    expect(attempt).toThrowError(/not JSON/);
    try {
      attempt();
      expect.unreachable();
    } catch (thrown) {
      expect(isAppError(thrown, "bad-input") && thrown.faults[0]?.path).toBe("line 2, column 6");
    }
  });
});

describe("writing JSON", () => {
  it("keeps what fits on a line and breaks what does not", () => {
    const long = Array.from({ length: 40 }, (_, index) => index / 8);
    const text = formatJson({ short: [1, 2, { a: null }], none: {}, empty: [], long });
    expect(text).toContain(
      '"short": [1, 2, { "a": null }],\n  "none": {},\n  "empty": [],\n  "long": [\n    0,\n',
    );
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(110);
  });

  it("writes no -0, leaves out keys without a value, and refuses what JSON cannot hold", () => {
    expect(formatJson({ a: -0, b: undefined, c: [-0] })).toBe('{ "a": 0, "c": [0] }\n');
    expect(() => formatJson({ a: Number.NaN })).toThrow(RangeError);
    expect(() => formatJson([Number.POSITIVE_INFINITY])).toThrow(RangeError);
    expect(() => formatJson(() => 1)).toThrow(TypeError);
  });
});
