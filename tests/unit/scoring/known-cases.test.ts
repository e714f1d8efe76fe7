/**
 * The kept cases again, against answers worked out by hand from the rules: each total is 30 for the right clarity grade unless
 * it says otherwise, and 70 for the plot, times F less the deduction.
 */
import { describe, expect, it } from "vitest";
import { listGoldenCases, scoreCase } from "@/tests/support/scoring/golden-cases";

const cases = new Map(listGoldenCases().map((golden) => [golden.name, golden]));

function scoreByName(name: string) {
  const golden = cases.get(name);
  if (golden === undefined) throw new Error(`there is no case ${name}`);
  const [scored] = scoreCase(golden);
  if (scored === undefined) throw new Error(`${name} has no plot`);
  const { result, detail } = scored;
  const causes = Object.fromEntries(result.strays.map(({ mark, cause }) => [mark, cause]));
  const values = Object.fromEntries(
    result.found.map(({ reference, mark, value }) => [`${reference}<-${mark}`, value]),
  );
  return { ...result, detail, causes, values };
}

const near = (value: number) => expect.closeTo(value, 6);

describe("totals worked out by hand", () => {
  const totals: [string, number, string][] = [
    ["cap", 72, "12 dust are 48, capped at 40: 70 * 0.6 + 30"],
    ["crowded-pair", 72.5, "(20/70 + 65/70) / 2 = 0.6071: 42.5 + 30"],
    ["decoy", 97.2, "glint 3 and other-view 1: 70 * 0.96 + 30"],
    ["dotting", 79, "6 dust and 2 unexplained are 30: 70 * 0.7 + 30"],
    ["double", 84.6, "4 of 5 by weight, 2 doubles: 70 * 0.78 + 30"],
    ["dust", 90.2, "2 dust, 2 unexplained are 14: 70 * 0.86 + 30"],
    ["echo", 95.8, "2 echoes are 6: 70 * 0.94 + 30"],
    ["floor", 0, "F 1/5 * 5/7, 40 off: nothing; no grade given"],
    ["glint-prongs", 93.7, "2 glints, 1 unexplained are 9: 70 * 0.91 + 30"],
    ["glint-shared-opposite", 84.6, "2 glints at 3 and 4 at the 4 of dust are 22: 70 * 0.78 + 30"],
    ["glint-tweezers", 91.6, "2 glints, 2 unexplained are 12: 70 * 0.88 + 30"],
    ["grades", 85, "70 + 20 * 0.6 + 2.5 * (0.2 + 1 + 0 + 0)"],
    ["merge", 72, "(1 + 0.2 + 0.2 + 1) / 4 = 0.6: 42 + 30"],
    ["merge-needs-two", 74.57, "2/3, 1 unexplained: 70 * 0.636667 + 30, rounded"],
    ["merge-beats-weak-pair", 55.9, "0.4, 1 unexplained: 70 * 0.37 + 30"],
    ["nothing-to-find", 89.2, "F 1, 1 dust: 70 * 0.96 + 20 * 0.6 + 10"],
    ["optional", 100, "the optional marks count for nothing"],
    ["other-view", 55.9, "(3 * 0.5 + 0.5) / 5 = 0.4, 1 unexplained: 70 * 0.37 + 30"],
    ["ties", 99.65, "1 fragment is 0.5: 70 * 0.995 + 30"],
    ["turned-plot", 100, "the same plot, turned"],
    ["unexplained", 93.7, "3 unexplained are 9: 70 * 0.91 + 30"],
  ];

  it.each(totals)("%s: %d", (name, total) => {
    expect(scoreByName(name).total).toBe(total);
  });
});

describe("readings (rule 3)", () => {
  it("counts the cut's own turn with support, and names it clockwise as the crown is seen", () => {
    expect(scoreByName("turned-plot").alignment).toEqual({ turnDeg: -45, wouldFit: null });
  });

  it("tells of that turn where the orientation is given, and earns nothing by it", () => {
    const { alignment, total } = scoreByName("turned-plot-given");
    expect(alignment).toEqual({
      turnDeg: 0,
      wouldFit: { turnDeg: -45, mirrored: false, gain: expect.closeTo(100 - total, 9) },
    });
  });

  it("neither counts nor tells of a turn that only two marks support", () => {
    expect(scoreByName("turn-without-support").alignment).toEqual({ turnDeg: 0, wouldFit: null });
  });

  it("tells of half a facet and of a mirrored plot", () => {
    expect(scoreByName("half-facet-off").alignment.wouldFit).toMatchObject({
      turnDeg: -22.5,
      mirrored: false,
    });
    expect(scoreByName("mirrored").alignment.wouldFit).toMatchObject({ turnDeg: 0, mirrored: true });
  });
});

describe("values (rules 2 and 4)", () => {
  it("takes location, type and extent off as the formula says", () => {
    const { values } = scoreByName("parts-of-a-value");
    // A cleavage for a feather: 0.50 + 0.35 / 2 + 0.15. A dot drawn as a ring twice as wide: extent 0.5. No likeness: 0.65.
    expect(values).toMatchObject({ "b<-m2": near(0.825), "c<-m3": near(0.925), "d<-m4": near(0.65) });
  });

  it("gives half for the other view, traced or straight through, and nothing for a surface mark", () => {
    const { values, overlooked, causes } = scoreByName("other-view");
    expect(values).toEqual({ "a<-m1": near(0.5), "e<-m2": near(0.5) });
    expect([overlooked, causes]).toEqual([["f"], { m3: "unexplained" }]);
  });

  it("does not take the nearest first where another pairing gives more", () => {
    // Nearest first gives m1 to a (1) and nothing to b; the best gives 20/70 + 65/70.
    expect(scoreByName("crowded-pair").values).toEqual({ "a<-m2": near(20 / 70), "b<-m1": near(65 / 70) });
  });

  it("leaves the higher of two stacked ids over, and matches neighbours each with its own", () => {
    expect(Object.keys(scoreByName("ties").values)).toEqual(["a<-m5", "b<-m4", "c<-m3", "z<-m2"]);
  });

  it("sets optional marks aside", () => {
    const { detail, strays, overlooked } = scoreByName("optional");
    expect(detail.setAside).toEqual([{ reference: "o1", mark: "m2" }]);
    expect([strays, overlooked]).toEqual([[], []]);
  });

  it("merges two or more, and never one", () => {
    expect(scoreByName("merge").values).toMatchObject({ "p2<-m1": near(0.2), "p3<-m1": near(0.2) });
    expect(scoreByName("merge-needs-two").causes).toEqual({ m1: "unexplained" });
    expect(Object.keys(scoreByName("merge-beats-weak-pair").values)).toEqual(["c1<-m1", "c2<-m1"]);
  });
});

describe("causes (rule 5)", () => {
  const causes: [string, Record<string, string>][] = [
    ["decoy", { m2: "glint", m3: "other-view" }],
    ["fragment", { m2: "fragment", m3: "fragment", m4: "unexplained" }],
    ["double", { m2: "double", m4: "double" }],
    ["echo", { m2: "echo", m3: "echo" }],
    ["glint-tweezers", { m2: "glint", m3: "glint", m4: "unexplained", m5: "unexplained" }],
    ["glint-prongs", { m2: "glint", m3: "glint", m4: "unexplained" }],
    ["dust", { m2: "dust", m3: "unexplained", m4: "dust", m5: "unexplained" }],
    [
      "dotting",
      {
        m2: "dust",
        m3: "dust",
        m4: "dust",
        m5: "dust",
        m6: "dust",
        m7: "dust",
        m8: "unexplained",
        m9: "unexplained",
      },
    ],
    ["unexplained", { m2: "unexplained", m3: "unexplained", m4: "unexplained" }],
  ];

  it.each(causes)("%s", (name, expected) => {
    expect(scoreByName(name).causes).toEqual(expected);
  });

  it("says of an echo whose it is, in which facets, how strong and how much of the view images reach", () => {
    const { strays, detail } = scoreByName("echo");
    const words = strays[0]?.because.join(" ") ?? "";
    const facets = detail.strays[0]?.facets ?? [];
    expect(facets.length).toBe(4);
    for (const facet of facets) expect(words).toContain(facet);
    expect(words).toMatch(/0\.010 girdle widths \(0\.05 mm\) from the echo of crystal a/);
    expect(words).toMatch(/3 reflections and has a strength of 0\.27 of 1/);
    expect(words).toMatch(/reach \d+% of the crown view/);
    expect(detail.strays[0]).toMatchObject({ of: "a", view: "crown" });
  });

  it("gives a turned plot's stray in the frame of the reference", () => {
    const { alignment, suspectStone } = scoreByName("swapped-stone");
    expect([alignment.turnDeg, suspectStone]).toEqual([0, "S-2"]);
  });
});

describe("lines (rule 6.5)", () => {
  it("name the cap and the floor where they give back", () => {
    expect(scoreByName("cap").lines).toContainEqual({
      what: "given back: strays together cost no more than 40%",
      points: 5.6,
    });
    expect(scoreByName("floor").lines).toContainEqual({
      what: "given back: a plot earns no less than nothing",
      points: 18,
    });
  });

  it("say what a grade was worth and how far off it was", () => {
    expect(scoreByName("grades").lines.slice(1)).toEqual([
      { what: "clarity: VS2, 1 step better than the reference's SI1; worth up to 20", points: 12 },
      { what: "colour: F, 2 steps better than the reference's H; worth up to 2.5", points: 0.5 },
      { what: "polish: Good, right; worth up to 2.5", points: 2.5 },
      { what: "symmetry: Poor, 3 steps worse than the reference's Very good; worth up to 2.5", points: 0 },
      { what: "fluorescence: not given; the reference has None; worth up to 2.5", points: 0 },
    ]);
  });
});
