import { describe, expect, it } from "vitest";
import { findNextStep } from "@/components/my-stones/find-next-step";
import { sortByUrgency } from "@/components/my-stones/sort-by-urgency";
import { toRelative } from "@/components/ui/when";
import type { MyExercise, StoneState } from "@/lib/plot/student-view";

const exercise = (
  title: string,
  phase: MyExercise["phase"],
  dueDay: number,
  states: readonly StoneState[],
): MyExercise => ({
  exerciseId: title,
  title,
  notes: "",
  sectionName: "A section",
  opensAt: `2026-11-${String(dueDay - 1).padStart(2, "0")}T08:00:00.000Z`,
  dueAt: `2026-11-${String(dueDay).padStart(2, "0")}T08:00:00.000Z`,
  closesAt: null,
  debriefsAt: null,
  minutesPerStone: null,
  phase,
  stones: states.map((state, index) => ({
    exerciseStoneId: `${title}-${index}`,
    label: `${title}-${index + 1}`,
    cut: "round-brilliant",
    weightCt: null,
    state,
    sittingId: state === "not-begun" ? null : `${title}-${index}`,
    attempt: state === "not-begun" ? 0 : 1,
    attemptsLeft: state === "not-begun" ? 1 : 0,
    isRetake: false,
    opensAfter: null,
    opensAt: null,
    earlierDebriefId: null,
    markCount: 0,
    handedInAt: state === "debrief-ready" ? `2026-11-0${index + 1}T08:00:00.000Z` : null,
    endsAt: null,
    total: null,
  })),
});

describe("the one thing to do next", () => {
  it("is the stone on the bench of what is due first, though another exercise stands before it", () => {
    const step = findNextStep([
      exercise("later", "open", 20, ["on-the-bench"]),
      exercise("sooner", "open", 10, ["handed-in", "not-begun", "on-the-bench"]),
    ]);
    expect(step).toMatchObject({ kind: "plot", stone: { label: "sooner-3" } });
  });

  it("is a stone whose time is running, whatever else is due before it; of two, the one that ends first", () => {
    const timed = exercise("timed", "open", 20, [
      "not-begun",
      "on-the-bench",
      "on-the-bench",
      "on-the-bench",
    ]);
    const [first, none, late, soon] = timed.stones;
    if (!first || !none || !late || !soon) throw new Error("four stones");
    const running = {
      ...timed,
      stones: [
        first,
        none,
        { ...late, endsAt: "2026-11-09T10:30:00.000Z" },
        { ...soon, endsAt: "2026-11-09T10:20:00.000Z" },
      ],
    };
    const sooner = exercise("sooner", "open", 10, ["on-the-bench"]);
    expect(findNextStep([sooner, running])).toMatchObject({ kind: "plot", stone: { label: "timed-4" } });
    expect(findNextStep([sooner, timed])).toMatchObject({ kind: "plot", stone: { label: "sooner-1" } });
  });

  it("is a stone that was not begun when none is on the bench, late ones included", () => {
    const step = findNextStep([exercise("late", "late", 5, ["debrief-ready", "not-begun"])]);
    expect(step).toMatchObject({ kind: "plot", stone: { label: "late-2" } });
  });

  it("is never a stone of an exercise that takes no work", () => {
    const closed = exercise("closed", "closed", 5, ["not-begun", "on-the-bench", "missed"]);
    expect(findNextStep([closed])).toEqual({ kind: "nothing" });
  });

  it("is the debrief handed in last when no work is left, then what opens next, then nothing", () => {
    const read = exercise("read", "closed", 5, ["debrief-ready", "debrief-ready"]);
    const ahead = exercise("ahead", "ahead", 25, ["not-begun"]);
    expect(findNextStep([ahead, read])).toMatchObject({ kind: "read", stone: { label: "read-2" } });
    expect(findNextStep([ahead])).toMatchObject({ kind: "wait", exercise: { title: "ahead" } });
    expect(findNextStep([])).toEqual({ kind: "nothing" });
  });

  it("is no stone whose day has not come: it is waited for, where it opens before anything else does", () => {
    const open = exercise("open", "open", 20, ["not-begun", "not-begun"]);
    const opensAt = "2026-11-15T08:00:00.000Z";
    const stones = open.stones.map((stone, index) => (index === 0 ? { ...stone, opensAt } : stone));
    expect(findNextStep([{ ...open, stones }])).toMatchObject({ kind: "plot", stone: { label: "open-2" } });
    const waiting = { ...open, stones: stones.slice(0, 1) };
    const later = exercise("later", "ahead", 25, ["not-begun"]);
    expect(findNextStep([later, waiting])).toMatchObject({
      kind: "wait",
      opensAt,
      stone: { label: "open-1" },
    });
    const sooner = exercise("sooner", "ahead", 12, ["not-begun"]);
    expect(findNextStep([waiting, sooner])).toMatchObject({ kind: "wait", stone: null, exercise: sooner });
  });
});

it("lists what takes work by its due date, then what opens, then what is closed, the latest first", () => {
  const given = [
    exercise("old", "closed", 3, []),
    exercise("next", "ahead", 28, []),
    exercise("b", "open", 20, []),
    exercise("recent", "closed", 8, []),
    exercise("a", "late", 12, []),
  ];
  expect(sortByUrgency(given).map(({ title }) => title)).toEqual(["a", "b", "next", "recent", "old"]);
});

it("says how far away a moment is", () => {
  const now = Date.parse("2026-11-25T10:00:00.000Z");
  const HOUR = 3_600_000;
  expect(
    [0, 20 * 60_000, 3 * HOUR, -5 * HOUR, 96 * HOUR, -21 * 24 * HOUR].map((ms) => toRelative(now + ms, now)),
  ).toEqual(["this minute", "in 20 minutes", "in 3 hours", "5 hours ago", "in 4 days", "3 weeks ago"]);
});
