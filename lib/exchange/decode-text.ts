import { AppError } from "@/lib/base/app-error";

const MARKS = [
  { words: "UTF-32", bytes: [0xff, 0xfe, 0, 0] },
  { words: "UTF-16", bytes: [0xff, 0xfe] },
  { words: "UTF-16", bytes: [0xfe, 0xff] },
] as const;

function refuse(path: string, message: string): AppError {
  return new AppError("bad-input", "The file was refused; nothing was written.", [{ path, message }]);
}

/**
 * The text of a file's bytes, which must be UTF-8, with or without a byte order mark; the mark is dropped. Throws
 * AppError `bad-input` at `path` for any other encoding and for bytes that are no text at all.
 */
export function decodeText(bytes: Uint8Array, path: string): string {
  const other = MARKS.find((mark) => mark.bytes.every((byte, at) => bytes[at] === byte));
  const how = "save it as “CSV UTF-8” and choose it again";
  if (other !== undefined) throw refuse(path, `is ${other.words} text, not UTF-8: ${how}`);
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw refuse(path, `is not UTF-8 text: ${how}`);
  }
  if (text.includes("\0")) throw refuse(path, `is no text: ${how}`);
  return text;
}
