import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findJsonFault } from "@/lib/exchange/find-json-fault";
import { formatJson } from "@/lib/exchange/format-json";

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const dropNegativeZero = (value: unknown) => JSON.parse(JSON.stringify(value)) as unknown;

/** Texts that are nearly JSON: a JSON text with a piece cut out, doubled or replaced. */
const nearJson = fc
  .record({
    value: fc.jsonValue(),
    at: fc.nat(),
    length: fc.nat(3),
    put: fc.constantFrom("", ",", "]", "}", '"', "\\", ":", "0", "-", "1e", "nul", "\n", "\u0001", " "),
  })
  .map(({ value, at, length, put }) => {
    const text = JSON.stringify(value);
    const from = at % (text.length + 1);
    return text.slice(0, from) + put + text.slice(from + length);
  });

describe("finding where a text stops being JSON", () => {
  it("agrees with the engine's parser on what is JSON, for texts that nearly are", () => {
    fc.assert(
      fc.property(nearJson, (text) => {
        expect(findJsonFault(text) === null).toBe(isJson(text));
      }),
      { numRuns: 3000 },
    );
  });

  it("agrees with the engine's parser on any text", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'[]{}:,"\\ \n0123eE+-.truefalsn'.split("")) }),
        (text) => {
          expect(findJsonFault(text) === null).toBe(isJson(text));
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe("writing JSON", () => {
  it("writes what the engine's parser reads back as the same value, with keys in the same order", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = formatJson(value);
        expect(JSON.parse(text)).toStrictEqual(dropNegativeZero(value));
        expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(value));
      }),
    );
  });

  it("writes what it read back as the same bytes", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = formatJson(value);
        expect(formatJson(JSON.parse(text))).toBe(text);
      }),
    );
  });
});
