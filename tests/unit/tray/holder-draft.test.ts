import { describe, expect, it } from "vitest";
import { EMPTY_HOLDER, findHolderName, readHolderDraft } from "@/components/tray/holder-draft";

const holders = [{ studentId: "s1", name: "Ada", sections: ["Morning"] }];

describe("to whom stones are handed", () => {
  it("is nobody until somebody is named", () => {
    expect(readHolderDraft(EMPTY_HOLDER)).toBeNull();
    expect(readHolderDraft({ ...EMPTY_HOLDER, kind: "seat", seat: "  " })).toBeNull();
    expect(findHolderName(EMPTY_HOLDER, holders)).toBeNull();
  });

  it("is a student or a seat, with a date where one is given", () => {
    expect(readHolderDraft({ ...EMPTY_HOLDER, studentId: "s1" })).toEqual({
      to: { kind: "student", studentId: "s1" },
      dueBackAt: null,
      note: "",
    });
    const seat = readHolderDraft({
      ...EMPTY_HOLDER,
      kind: "seat",
      seat: " Bench 4 ",
      dueBack: "2026-12-01T10:00",
    });
    expect(seat?.to).toEqual({ kind: "seat", seat: "Bench 4" });
    expect(seat?.dueBackAt).toBe(new Date("2026-12-01T10:00").toISOString());
    expect(findHolderName({ ...EMPTY_HOLDER, studentId: "s1" }, holders)).toBe("Ada");
  });

  it("is not sent with a date that is half typed", () => {
    expect(readHolderDraft({ ...EMPTY_HOLDER, studentId: "s1", dueBack: "2026-13" })).toBeNull();
  });
});
