/** Zod's issues as faults with the path that an author reads: `stones[2].marks[0].shape.points[3]`. */
import type { z } from "zod";
import type { Fault } from "@/lib/base/app-error";

/** Writes a path of keys and indices, an empty key as `[""]`; the empty path is written as an empty text. */
export function toFaultPath(path: readonly PropertyKey[]): string {
  let text = "";
  for (const step of path) {
    if (step === "") text += '[""]';
    else if (typeof step === "number") text += `[${step}]`;
    else text += text === "" ? String(step) : `.${String(step)}`;
  }
  return text;
}

/** One fault for each issue; an unknown key gets a fault of its own, at the key. */
export function toFaults(error: z.ZodError): Fault[] {
  return error.issues.flatMap((issue): Fault[] => {
    if (issue.code === "unrecognized_keys") {
      return issue.keys.map((key) => ({ path: toFaultPath([...issue.path, key]), message: "unknown key" }));
    }
    return [{ path: toFaultPath(issue.path), message: issue.message }];
  });
}
