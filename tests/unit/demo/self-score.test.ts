import { describe, expect, it } from "vitest";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { turnPoint } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import type { FiledPlot } from "@/lib/plot/plots-file";
import { mapVertices } from "@/lib/plot/shape";
import type { Stone } from "@/lib/plot/stone";
import { scorePlots } from "@/lib/scoring/score-plot";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

/** A stone's reference as a plot, held turned. */
function toPlot(stone: Stone, turnDeg: number): FiledPlot {
  const marks = stone.marks.map(({ id, view, characteristic, shape }) => ({
    id,
    view,
    characteristic,
    shape: mapVertices(shape, (point) => turnPoint(view, point, turnDeg)),
  }));
  return { stone: stone.id, by: `turned ${turnDeg}`, grades: stone.grades, marks };
}

const file = (plots: FiledPlot[]) => ({ format: "loupework/plots", version: 1, plots }) as const;

describe.each(listExerciseSets().map(({ name, resolved }) => [name, resolved] as const))(
  "%s",
  (_, resolved) => {
    it("scores each reference against itself exactly 100", () => {
      const scored = scorePlots(resolved, file(resolved.set.stones.map((stone) => toPlot(stone, 0))));
      expect(scored.length).toBe(resolved.set.stones.length);
      for (const { result } of scored) {
        const { total, alignment, overlooked, strays, suspectStone } = result;
        expect({ stone: result.stone, total, alignment, overlooked, strays, suspectStone }).toEqual({
          stone: result.stone,
          total: 100,
          alignment: { turnDeg: 0, wouldFit: null },
          overlooked: [],
          strays: [],
          suspectStone: null,
        });
      }
    });

    it("scores each reference of three marks or more 100 in every turn of the stone", () => {
      const plots = resolved.set.stones.flatMap((stone, index) => {
        const counted = stone.marks.filter(({ optional }) => !optional).length;
        return counted < 3
          ? []
          : findSymmetryTurns(resolved.solids[index] as Solid).map((turn) => toPlot(stone, turn));
      });
      expect(plots.length).toBeGreaterThanOrEqual(8);
      for (const { result } of scorePlots(resolved, file(plots))) {
        expect([result.stone, result.by, result.total]).toEqual([result.stone, result.by, 100]);
      }
    });
  },
);
