import { describe, expect, it } from "vitest";
import { createStoneDraft, findFaultAt, readStoneDraft, toStoneDraft } from "@/components/stone/stone-draft";
import { StoneBodySchema } from "@/lib/plot/stone";

const BODY = StoneBodySchema.parse({
  cut: "round-brilliant",
  proportions: { tablePct: 58, crownAngleDeg: 33.5 },
  weightCt: 0.52,
  measurementsMm: [5.17, 5.2, 3.2],
  prongsDeg: [45, 135.3],
  landmark: "largest natural at 6",
});

describe("readStoneDraft", () => {
  it("reads back what toStoneDraft wrote", () => {
    const read = readStoneDraft(toStoneDraft("T1-04", BODY));
    expect(read.faults).toEqual([]);
    expect(read.label).toBe("T1-04");
    expect(read.body).toEqual(BODY);
    expect(read.solid).not.toBeNull();
  });

  it("leaves out what is empty, so that the cut's standard numbers stand in", () => {
    const { body } = readStoneDraft({ ...createStoneDraft(), label: "A" });
    expect(body?.proportions).toEqual({});
    expect(body).not.toHaveProperty("weightCt");
    expect(body).not.toHaveProperty("measurementsMm");
  });

  it("takes a comma for a point", () => {
    const { body } = readStoneDraft({ ...createStoneDraft(), label: "A", weightCt: "0,52" });
    expect(body?.weightCt).toBe(0.52);
  });

  it("puts a number out of range at its own field and keeps no body", () => {
    const read = readStoneDraft({ ...createStoneDraft(), label: "A", proportions: { tablePct: "95" } });
    expect(findFaultAt(read.faults, "proportions.tablePct")).toContain("95");
    expect(read.body).toBeNull();
    expect(read.solid).toBeNull();
  });

  it("still makes the solid while something else is at fault", () => {
    const read = readStoneDraft({ ...createStoneDraft(), label: "", weightCt: "heavy", prongs: "here" });
    expect(read.faults.map(({ path }) => path).sort()).toEqual(["label", "prongsDeg", "weightCt"]);
    expect(read.body).toBeNull();
    expect(read.solid).not.toBeNull();
  });

  it("asks for all three measurements or none", () => {
    const read = readStoneDraft({ ...createStoneDraft(), label: "A", measurementsMm: ["5.2", "", "3.2"] });
    expect(read.faults.map(({ path }) => path)).toEqual(["measurementsMm[1]"]);
  });

  it("reads only the numbers that the cut has", () => {
    const read = readStoneDraft({ ...createStoneDraft("oval"), label: "A", proportions: { wingPct: "70" } });
    expect(read.body?.proportions).toEqual({});
  });
});
