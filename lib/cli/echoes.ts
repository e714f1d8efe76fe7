import { AppError } from "@/lib/base/app-error";
import type { Command } from "@/lib/cli/command";
import { getOption } from "@/lib/cli/read-options";
import { readSet } from "@/lib/cli/read-set-and-plots";
import { findImages } from "@/lib/gem/find-images";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import type { Solid } from "@/lib/gem/solid";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { Stone } from "@/lib/plot/stone";

/** Reflections that are followed, and the weakest image that is kept (design.md, command line). */
const LIMITS = { maxBounces: 3, minStrength: 0.1 };

function getStone({ set, solids }: ResolvedSet, id: string): { stone: Stone; solid: Solid } {
  const index = set.stones.findIndex((stone) => stone.id === id);
  const stone = set.stones[index];
  const solid = solids[index];
  if (stone !== undefined && solid !== undefined) return { stone, solid };
  throw new AppError("bad-input", "There is no such stone.", [
    { path: "--stone", message: `the set has no stone "${id}"` },
  ]);
}

/** `echoes`: where each inside mark of a stone's reference is seen, directly and by reflections. */
export const ECHOES: Command = {
  name: "echoes",
  purpose: "where the inside marks of a reference are seen, directly and by reflection",
  options: [
    { name: "set", value: "FILE", required: true },
    { name: "stone", value: "ID", required: true },
  ],
  run: async (values) => {
    const resolved = await readSet(values);
    const { stone, solid } = getStone(resolved, getOption(values, "stone"));
    const { refractiveIndex } = stone;
    const marks = stone.marks.flatMap(({ id, view, characteristic, shape, depth }) => {
      const isInside = resolved.characteristics.get(characteristic)?.class === "inside";
      if (!isInside || depth === undefined) return [];
      const place = placeInclusion(solid, view, getSampleCentre(shape), depth, refractiveIndex);
      const images = findImages(solid, place, { refractiveIndex, ...LIMITS }).map((image) => ({
        view: image.view,
        at: image.at,
        bounces: image.bounces,
        strength: image.strength,
      }));
      return [{ id, images }];
    });
    return { marks };
  },
};
