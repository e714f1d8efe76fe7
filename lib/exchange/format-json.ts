/**
 * Writes JSON that a person can read and a version control can compare: a list or a table stands on one line where
 * it fits, and is broken one entry a line where it does not. The same value gives the same bytes.
 */

/** Longest line that a list or a table may be kept on, its indentation included (characters). */
const LINE_WIDTH = 110;
const INDENT = "  ";

function formatPrimitive(value: string | number | boolean | null): string {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be written as JSON`);
    return JSON.stringify(value + 0 === 0 ? 0 : value);
  }
  return JSON.stringify(value);
}

function listEntries(value: object): readonly (readonly [string, unknown])[] {
  return Object.entries(value).filter(([, entry]) => entry !== undefined);
}

/** The value on one line, or null as soon as it is longer than `room`. */
function formatInline(value: unknown, room: number): string | null {
  if (typeof value !== "object" || value === null) {
    const text = formatValue(value, "", room);
    return text.length <= room ? text : null;
  }
  const isList = Array.isArray(value);
  const entries = isList ? value.map((entry) => ["", entry] as const) : listEntries(value);
  if (entries.length === 0) return isList ? "[]" : "{}";
  let text = isList ? "[" : "{ ";
  for (const [index, [key, entry]] of entries.entries()) {
    text += `${index === 0 ? "" : ", "}${isList ? "" : `${JSON.stringify(key)}: `}`;
    const inner = formatInline(entry, room - text.length);
    if (inner === null) return null;
    text += inner;
  }
  text += isList ? "]" : " }";
  return text.length <= room ? text : null;
}

function formatValue(value: unknown, indent: string, room: number): string {
  if (
    value === null ||
    typeof value === "string" ||
    typeof value === "number" ||
    typeof value === "boolean"
  ) {
    return formatPrimitive(value);
  }
  if (typeof value !== "object") throw new TypeError(`a ${typeof value} cannot be written as JSON`);
  const inline = formatInline(value, room);
  if (inline !== null) return inline;
  const deeper = indent + INDENT;
  const roomFor = (key: string) => LINE_WIDTH - deeper.length - key.length - 1;
  if (Array.isArray(value)) {
    const lines = value.map((entry) => deeper + formatValue(entry, deeper, roomFor("")));
    return `[\n${lines.join(",\n")}\n${indent}]`;
  }
  const lines = listEntries(value).map(([key, entry]) => {
    const name = `${JSON.stringify(key)}: `;
    return `${deeper}${name}${formatValue(entry, deeper, roomFor(name))}`;
  });
  return `{\n${lines.join(",\n")}\n${indent}}`;
}

/**
 * Formats a value of plain JSON with a line end at its end. Keys keep their order, keys without a value are left
 * out, -0 is written as 0. Throws RangeError for a number that is not finite and TypeError for what JSON has no
 * word for.
 */
export function formatJson(value: unknown): string {
  return `${formatValue(value, "", LINE_WIDTH)}\n`;
}
