import { expect, it } from "vitest";
import { toCsv } from "@/components/ui/to-csv";

it("quotes as RFC 4180 section 2 says: commas, quotes and line breaks", () => {
  expect(
    toCsv(
      ["a", "b"],
      [
        ["x,y", 'he said "no"'],
        ["two\nlines", null],
      ],
    ),
  ).toBe('a,b\r\n"x,y","he said ""no"""\r\n"two\nlines",\r\n');
});

it.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"])(
  "disarms %j, which a spreadsheet would run",
  (text) => {
    const cell = toCsv(["h"], [[text]]).slice(3);
    expect(cell.startsWith("'") || cell.startsWith("\"'")).toBe(true);
  },
);

it("leaves numbers alone, negative ones too", () => {
  expect(toCsv(["h"], [[-2.5]])).toBe("h\r\n-2.5\r\n");
});
