/** Who is counted as dotting, not prepared, idle or stuck, and in what order the watch shows them. */
import { describe, expect, it } from "vitest";
import {
  countFlags,
  DOTTING_LASTS_MS,
  IDLE_AFTER_MS,
  isShown,
  judgeRow,
  STUCK_AFTER_MS,
  sortRows,
} from "@/components/watch/judge-row";
import { toOnStoneWords, toPreparedWords, toSpanWords } from "@/components/watch/watch-words";
import { makeWatchRow } from "@/tests/unit/watch/make-watch-row";

const NOW = Date.parse("2026-11-25T10:05:00.000Z");
const ago = (ms: number) => new Date(NOW - ms).toISOString();
const flagsOf = (part: Parameters<typeof makeWatchRow>[0]) => judgeRow(makeWatchRow(part), NOW).flags;

describe("a busy bench", () => {
  it("has no flags, and its times are by the server's clock", () => {
    const judged = judgeRow(makeWatchRow(), NOW);
    expect(judged).toMatchObject({ isHere: true, flags: [], onStoneMs: 300_000, quietMs: 10_000 });
  });
});

describe("a timed stone", () => {
  const left = (part: Parameters<typeof makeWatchRow>[0]) => {
    const judged = judgeRow(makeWatchRow(part), NOW);
    return [judged.leftMs, toOnStoneWords(judged)];
  };

  it("says what is left of its time, until it is over or handed in", () => {
    expect(left({})).toEqual([null, "5 min"]);
    expect(left({ endsAt: ago(-12 * 60_000) })).toEqual([720_000, "5 min, 12 min left"]);
    expect(left({ endsAt: ago(1000) })).toEqual([0, "5 min, time is up"]);
    expect(left({ endsAt: ago(-60_000), handedInAt: ago(0) })).toEqual([null, "5 min"]);
  });
});

describe("dotting", () => {
  it("lasts a minute after the last dot", () => {
    const dotting = (ms: number) => ({ dots: 6, lastDotAt: ago(ms) });
    expect(flagsOf({ dotting: dotting(0) })).toEqual(["dotting"]);
    expect(flagsOf({ dotting: dotting(DOTTING_LASTS_MS) })).toEqual(["dotting"]);
    expect(flagsOf({ dotting: dotting(DOTTING_LASTS_MS + 1) })).toEqual([]);
  });
});

describe("not prepared", () => {
  it("is a step not confirmed, where the exercise asks for the card", () => {
    expect(flagsOf({ prepared: ["cleaned"] })).toEqual(["unprepared"]);
    expect(flagsOf({ preparation: "asked", prepared: [] })).toEqual(["unprepared"]);
    expect(flagsOf({ preparation: "off", prepared: [] })).toEqual([]);
  });
});

describe("idle and stuck", () => {
  it("come after a time with nothing done, and stuck takes the place of idle", () => {
    const long = ago(STUCK_AFTER_MS);
    expect(flagsOf({ lastEventAt: ago(IDLE_AFTER_MS - 1) })).toEqual([]);
    expect(flagsOf({ lastEventAt: ago(IDLE_AFTER_MS) })).toEqual(["idle"]);
    expect(flagsOf({ openedAt: long, lastEventAt: ago(2 * IDLE_AFTER_MS - 1) })).toEqual(["idle"]);
    expect(flagsOf({ openedAt: long, lastEventAt: ago(2 * IDLE_AFTER_MS) })).toEqual(["stuck"]);
    expect(flagsOf({ openedAt: long, markCount: 0 })).toEqual(["stuck"]);
    expect(flagsOf({ markCount: 0 })).toEqual([]);
  });
});

describe("a bench that is not open", () => {
  it.each([
    ["closed", { presence: "gone" as const }],
    ["not heard of, and nothing came in lately", { presence: "unheard" as const, lastEventAt: ago(120_000) }],
    ["handed in", { handedInAt: ago(1000) }],
  ])("%s: has no flags", (_what, part) => {
    const judged = judgeRow(
      makeWatchRow({ prepared: [], dotting: { dots: 9, lastDotAt: ago(0) }, ...part }),
      NOW,
    );
    expect(judged).toMatchObject({ isHere: false, flags: [] });
  });

  it("counts as open while work comes in, whatever is known of the page", () => {
    expect(judgeRow(makeWatchRow({ presence: "unheard" }), NOW).isHere).toBe(true);
  });
});

describe("the board", () => {
  const rows = [
    makeWatchRow({ sittingId: "calm", studentName: "Zoe" }),
    makeWatchRow({ sittingId: "idle", studentName: "Ann", lastEventAt: ago(IDLE_AFTER_MS) }),
    makeWatchRow({
      sittingId: "dots",
      studentName: "Yan",
      dotting: { dots: 8, lastDotAt: ago(0) },
      markCount: 9,
    }),
    makeWatchRow({ sittingId: "bare", studentName: "Bo", prepared: [], exerciseId: "e2", markCount: 0 }),
    makeWatchRow({ sittingId: "gone", studentName: "Cy", presence: "gone", openedAt: ago(9e6) }),
  ].map((row) => judgeRow(row, NOW));
  const idsOf = (list: typeof rows) => list.map(({ row }) => row.sittingId);
  const filter = { who: "here", exerciseId: null, flag: null } as const;

  it("counts", () => {
    expect(countFlags(rows)).toEqual({ here: 4, dotting: 1, unprepared: 1, stuck: 0, idle: 1 });
    expect(countFlags([])).toEqual({ here: 0, dotting: 0, unprepared: 0, stuck: 0, idle: 0 });
  });

  it("shows who is there, everyone, one exercise, or one flag", () => {
    const shown = (part: object) => idsOf(rows.filter((row) => isShown(row, { ...filter, ...part })));
    expect(shown({})).toEqual(["calm", "idle", "dots", "bare"]);
    expect(shown({ who: "all" })).toHaveLength(5);
    expect(shown({ exerciseId: "e2" })).toEqual(["bare"]);
    expect(shown({ flag: "dotting" })).toEqual(["dots"]);
  });

  it("sorts", () => {
    expect(idsOf(sortRows(rows, "look"))).toEqual(["dots", "bare", "idle", "calm", "gone"]);
    expect(idsOf(sortRows(rows, "name"))).toEqual(["idle", "bare", "gone", "dots", "calm"]);
    expect(idsOf(sortRows(rows, "time"))[0]).toBe("gone");
    expect(idsOf(sortRows(rows, "marks"))[0]).toBe("bare");
  });
});

describe("words", () => {
  it("say a span as it is read across a room", () => {
    expect([0, 59_999, 60_000, 3_599_999, 3_900_000, 60 * 3_600_000].map(toSpanWords)).toEqual([
      "under 1 min",
      "under 1 min",
      "1 min",
      "59 min",
      "1 h 05 min",
      "2 days",
    ]);
  });

  it("say how far the preparation is", () => {
    expect(toPreparedWords(makeWatchRow())).toBe("all");
    expect(toPreparedWords(makeWatchRow({ prepared: ["held"] }))).toBe("1 of 4");
    expect(toPreparedWords(makeWatchRow({ prepared: [] }))).toBe("none");
    expect(toPreparedWords(makeWatchRow({ preparation: "off" }))).toBe("not asked for");
  });
});
