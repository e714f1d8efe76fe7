import { AppError, isAppError } from "@/lib/base/app-error";

/**
 * Runs a reader of a file's text; a refusal is passed on with the file named in its sentence, so that of two files the
 * one at fault is known. The paths of the faults stay as they are.
 */
export function readInFile<T>(file: string, read: () => T): T {
  try {
    return read();
  } catch (thrown) {
    if (!isAppError(thrown)) throw thrown;
    throw new AppError(thrown.code, `${file}: ${thrown.message}`, thrown.faults);
  }
}
