/** A value of a row that is written past the client; JSON is given as text. */
export type Value = string | number | boolean | Date | null;

/** A value as the driver writes it, so that rows written either way compare and sort alike. */
export function toStored(value: Value): string | number | null {
  if (value instanceof Date) return value.toISOString().replace("Z", "+00:00");
  return typeof value === "boolean" ? Number(value) : value;
}
