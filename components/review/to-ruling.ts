/** What the fields of a ruling form come to. Pure. */
import type { DebriefRow } from "@/components/debrief/debrief-row";
import type { Cause } from "@/lib/plot/mark";
import type { PLACE_CREDITS, Ruling } from "@/lib/plot/overrule";

export type PlaceCredit = (typeof PLACE_CREDITS)[number];
export type RulingWay = "apart" | "together" | "cause" | "spare";

export interface RowChoice {
  readonly way: RulingWay;
  /** The id of the mark on the other side; null while none is chosen. */
  readonly other: string | null;
  readonly cause: Cause | null;
  readonly place: PlaceCredit;
}

const WAYS: Readonly<Record<DebriefRow["outcome"], readonly [RulingWay, ...RulingWay[]]>> = {
  found: ["apart", "together"],
  overlooked: ["together"],
  stray: ["spare", "cause", "together"],
  "set-aside": ["apart", "together"],
};

/** What may be so instead, the first as it stands to begin with. */
export const listWays = ({ outcome }: DebriefRow) => WAYS[outcome];

/** What the fields say before any is touched. */
export const beginChoice = (row: DebriefRow): RowChoice => ({
  way: listWays(row)[0],
  other: null,
  cause: null,
  place: "measured",
});

const toId = (key: string | null) => key?.slice(key.indexOf(":") + 1) ?? "";

/** The ruling on a row; null while something is left to choose. */
export function toRuling(row: DebriefRow, { way, other, cause, place }: RowChoice): Ruling | null {
  const own = toId(row.key);
  switch (way) {
    case "apart":
      return { kind: "apart", mark: own, reference: toId(row.partnerKey) };
    case "spare":
      return { kind: "cause", mark: own, cause: null };
    case "cause":
      return cause === null ? null : { kind: "cause", mark: own, cause };
    case "together": {
      if (other === null) return null;
      const [mark, reference] = row.outcome === "overlooked" ? [other, own] : [own, other];
      return { kind: "together", mark, reference, place };
    }
  }
}
