import type { Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { type Reference, ReferenceSchema, type Stone, StoneBodySchema, toReference } from "@/lib/plot/stone";
import type { DemoActor, DemoTrail } from "@/lib/workflows/demo/demo-trail";

const DAY_MS = 86_400_000;
/** A tray is filled this long before the demo is loaded, and one reference is mended a few days later. */
const FILLED_DAYS = 45;
const MENDED_DAYS = 38;

/** The mark that was overlooked when the reference was first drawn, by stone. */
const MENDED: Readonly<Record<string, { readonly mark: string; readonly note: string }>> = {
  "A-04": { mark: "nick", note: "A second look by the girdle: the nick at 9 o'clock was missing." },
};

export interface DemoTray {
  /** In the order of the set. */
  readonly stones: readonly {
    readonly label: string;
    readonly stoneId: string;
    readonly referenceId: string;
  }[];
}

export interface TrayPlan {
  readonly name: string;
  readonly resolved: ResolvedSet;
  readonly owner: DemoActor;
  /** Who mends a reference. */
  readonly secondReader: DemoActor;
  readonly now: Date;
}

function toBody({ id: _id, grades: _grades, marks: _marks, decoys: _decoys, ...body }: Stone) {
  return body;
}

function dropMark(reference: Reference, id: string): Reference {
  return { ...reference, marks: reference.marks.filter((mark) => mark.id !== id) };
}

async function writeStone(
  transaction: Transaction,
  trail: DemoTrail,
  plan: TrayPlan,
  trayId: string,
  at: number,
) {
  const { owner, secondReader, now, resolved } = plan;
  const stone = resolved.set.stones[at] as Stone;
  const mended = MENDED[stone.id];
  const reference = toReference(stone);
  const first = mended === undefined ? reference : dropMark(reference, mended.mark);
  const createdAt = new Date(now.getTime() - FILLED_DAYS * DAY_MS);
  const row = await transaction.stone.create({
    data: {
      trayId,
      label: stone.id,
      position: at + 1,
      body: toColumn(StoneBodySchema, toBody(stone)),
      createdAt,
    },
  });
  const write = (version: number, body: Reference, note: string, author: DemoActor, when: Date) =>
    transaction.reference.create({
      data: {
        stoneId: row.id,
        version,
        body: toColumn(ReferenceSchema, body),
        note,
        authorId: author.userId,
        createdAt: when,
      },
    });
  let latest = await write(1, first, "", owner, createdAt);
  if (mended !== undefined) {
    const when = new Date(now.getTime() - MENDED_DAYS * DAY_MS);
    latest = await write(2, reference, mended.note, secondReader, when);
    trail.add(when, secondReader, {
      action: "save-reference",
      subjectKind: "stone",
      subjectId: row.id,
      detail: "version 2",
    });
  }
  return { label: stone.id, stoneId: row.id, referenceId: latest.id };
}

/** A tray of a set: its stones and their references, one of them in two versions. */
export async function writeDemoTray(
  transaction: Transaction,
  trail: DemoTrail,
  plan: TrayPlan,
): Promise<DemoTray> {
  const { set } = plan.resolved;
  const createdAt = new Date(plan.now.getTime() - FILLED_DAYS * DAY_MS);
  const terms = toColumn(TrayTermsSchema, {
    scales: set.scales ?? {},
    characteristics: set.characteristics ?? [],
    rubric: set.rubric ?? {},
  });
  const tray = await transaction.tray.create({
    data: { name: plan.name, notes: set.notes ?? "", ownerId: plan.owner.userId, terms, createdAt },
  });
  trail.add(createdAt, plan.owner, {
    action: "import-exercise-set",
    subjectKind: "tray",
    subjectId: tray.id,
    detail: `${set.stones.length} stones`,
  });
  const stones: DemoTray["stones"][number][] = [];
  for (const at of set.stones.keys()) stones.push(await writeStone(transaction, trail, plan, tray.id, at));
  return { stones };
}
