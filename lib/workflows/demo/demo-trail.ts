import type { Transaction } from "@/lib/data/store/database";
import type { TrailNote } from "@/lib/data/store/write-trail";

/** Somebody of the demo, as the trail names them. */
export interface DemoActor {
  readonly userId: string;
  readonly name: string;
}

/**
 * Gathers what the demo's people did, with the time of each deed; written at the end in order of time, as the trail of
 * a program in use would have it.
 */
export class DemoTrail {
  readonly #entries: { at: Date; actor: DemoActor; note: TrailNote }[] = [];

  add(at: Date, actor: DemoActor, note: TrailNote): void {
    this.#entries.push({ at, actor, note });
  }

  async write(transaction: Transaction): Promise<void> {
    const inOrder = [...this.#entries].sort((a, b) => a.at.getTime() - b.at.getTime());
    await transaction.trailEntry.createMany({
      data: inOrder.map(({ at, actor, note }) => ({
        at,
        actorId: actor.userId,
        actorName: actor.name,
        action: note.action,
        subjectKind: note.subjectKind,
        subjectId: note.subjectId,
        detail: note.detail ?? "",
      })),
    });
  }
}
