import { AppError } from "@/lib/base/app-error";
import { findJsonFault } from "@/lib/exchange/find-json-fault";

const BYTE_ORDER_MARK = "\uFEFF";

/**
 * The value of a JSON text; a byte order mark in front is passed over. Throws AppError `bad-input` with one fault
 * whose path is `line L, column C` when the text is no JSON.
 */
export function parseJson(text: string): unknown {
  const json = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  try {
    return JSON.parse(json);
  } catch (thrown) {
    if (!(thrown instanceof SyntaxError)) throw thrown;
    const fault = findJsonFault(json);
    throw new AppError("bad-input", "The file is not JSON; nothing was written.", [
      fault === null
        ? { path: "", message: thrown.message }
        : { path: `line ${fault.line}, column ${fault.column}`, message: fault.message },
    ]);
  }
}
