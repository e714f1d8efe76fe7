/**
 * A process that plots on the sittings that it is given, each by its own student, until it is killed. It prints a line
 * for each answer, only once it has it: what was printed was acknowledged.
 */
import { writeSync } from "node:fs";
import { z } from "zod";
import { saveEvents } from "@/lib/workflows/save-events";

const TaskSchema = z.array(z.object({ sittingId: z.string(), studentId: z.string(), from: z.int() }));

async function plotOn(sittingId: string, studentId: string, from: number): Promise<never> {
  const viewer = { userId: studentId, role: "student" as const, name: "Plotter" };
  for (let seq = from; ; seq += 3) {
    const events = [0, 1, 2].map((step) => ({
      seq: seq + step,
      atMs: seq + step,
      kind: "marks" as const,
      put: [
        {
          id: `m${(seq + step) % 40}`,
          view: "crown" as const,
          characteristic: "pinpoint",
          shape: { kind: "dot" as const, at: [(seq + step) / 1e5, 0.1] as [number, number] },
        },
      ],
      removed: [],
    }));
    const { lastSeq } = await saveEvents(viewer, { sittingId, writerId: "killed-writer", events });
    writeSync(1, `${sittingId} ${lastSeq}\n`);
  }
}

const tasks = TaskSchema.parse(JSON.parse(process.argv[2] ?? "[]"));
Promise.all(tasks.map(({ sittingId, studentId, from }) => plotOn(sittingId, studentId, from))).catch(
  (thrown: unknown) => {
    console.error(thrown);
    process.exit(1);
  },
);
