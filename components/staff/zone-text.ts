/** Instants as the `datetime-local` text of the browser's zone, and back. Browser only: the server has another zone. */

const two = (value: number) => String(value).padStart(2, "0");

/** An ISO instant as `2026-11-25T09:30`; an empty text for an empty or unreadable one. */
export function toZoneText(iso: string): string {
  const at = new Date(iso);
  if (iso === "" || Number.isNaN(at.getTime())) return "";
  const date = `${String(at.getFullYear()).padStart(4, "0")}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${date}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** A whole date and time: browsers also read half a date, as the first of its month. */
const WHOLE = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?$/;

/** The ISO instant of a zone's text; an empty text where it is none yet. */
export function fromZoneText(text: string): string {
  const at = new Date(text);
  return !WHOLE.test(text) || Number.isNaN(at.getTime()) ? "" : at.toISOString();
}
