/**
 * Finds where a text stops being JSON (RFC 8259). The engines' own messages differ and some name no place; an
 * author of a file needs the line. Runs without recursion, so that a file of brackets cannot exhaust the stack.
 */

/** Where and why a text is no JSON. Lines and columns count from 1, columns in UTF-16 units. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

type Expected = "value" | "value-or-close" | "key" | "key-or-close" | "colon" | "comma-or-close";

const BLANKS = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const WORD = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

const CLOSERS: Readonly<Record<string, string>> = { "[": "]", "{": "}" };

function measure(pattern: RegExp, text: string, offset: number): number {
  pattern.lastIndex = offset;
  return pattern.exec(text)?.[0].length ?? 0;
}

/** The end of the quoted text that starts at `offset`, or where it goes wrong. */
function scanString(text: string, offset: number): { end: number } | { fault: number; message: string } {
  let at = offset + 1;
  while (at < text.length) {
    const sign = text[at] ?? "";
    if (sign === '"') return { end: at + 1 };
    if (sign < " ") return { fault: at, message: "a line break or control character stands inside a text" };
    const length = sign === "\\" ? measure(ESCAPE, text, at) : 1;
    if (length === 0) return { fault: at, message: "this is no escape that JSON knows" };
    at += length;
  }
  return { fault: offset, message: "this text has no closing quotation mark" };
}

function nameExpected(expected: Expected, closer: string | undefined): string {
  switch (expected) {
    case "value":
      return "a value is expected here";
    case "value-or-close":
      return "a value or ] is expected here";
    case "key":
      return "a key in quotation marks is expected here";
    case "key-or-close":
      return "a key in quotation marks or } is expected here";
    case "colon":
      return "a colon is expected here";
    case "comma-or-close":
      return closer === undefined
        ? "nothing more is expected after the end"
        : `a comma or ${closer} is expected here`;
  }
}

type Step = { offset: number; expected: Expected } | { fault: number; message: string };

/** Takes one token where a value may stand; opens onto the stack. */
function takeValue(text: string, offset: number, stack: string[]): Step | null {
  const opener = text[offset] ?? "";
  const closer = CLOSERS[opener];
  if (closer !== undefined) {
    stack.push(closer);
    return { offset: offset + 1, expected: opener === "[" ? "value-or-close" : "key-or-close" };
  }
  if (opener === '"') {
    const scanned = scanString(text, offset);
    return "fault" in scanned ? scanned : { offset: scanned.end, expected: "comma-or-close" };
  }
  const length = measure(NUMBER, text, offset) || measure(WORD, text, offset);
  return length === 0 ? null : { offset: offset + length, expected: "comma-or-close" };
}

/** Takes one token, or null where what stands there is not what is expected. */
function takeToken(text: string, offset: number, expected: Expected, stack: string[]): Step | null {
  const sign = text[offset];
  const closes = sign !== undefined && sign === stack.at(-1);
  if (closes && (expected === "comma-or-close" || expected.endsWith("-or-close"))) {
    stack.pop();
    return { offset: offset + 1, expected: "comma-or-close" };
  }
  if (expected === "value" || expected === "value-or-close") return takeValue(text, offset, stack);
  if (expected === "colon") return sign === ":" ? { offset: offset + 1, expected: "value" } : null;
  if (expected === "comma-or-close") {
    if (sign !== "," || stack.length === 0) return null;
    return { offset: offset + 1, expected: stack.at(-1) === "]" ? "value" : "key" };
  }
  if (sign !== '"') return null;
  const scanned = scanString(text, offset);
  return "fault" in scanned ? scanned : { offset: scanned.end, expected: "colon" };
}

function toJsonFault(text: string, offset: number, message: string): JsonFault {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf("\n") + 1;
  return { line: before.split("\n").length, column: offset - lineStart + 1, message };
}

/** The first fault of a text, or null when it is JSON. An empty text is a fault: a value is expected. */
export function findJsonFault(text: string): JsonFault | null {
  const stack: string[] = [];
  let offset = 0;
  let expected: Expected = "value";
  for (;;) {
    offset += measure(BLANKS, text, offset);
    if (offset >= text.length) {
      if (stack.length === 0 && expected === "comma-or-close") return null;
      return toJsonFault(text, offset, `the file ends, but ${nameExpected(expected, stack.at(-1))}`);
    }
    const step = takeToken(text, offset, expected, stack);
    if (step === null) return toJsonFault(text, offset, nameExpected(expected, stack.at(-1)));
    if ("fault" in step) return toJsonFault(text, step.fault, step.message);
    offset = step.offset;
    expected = step.expected;
  }
}
