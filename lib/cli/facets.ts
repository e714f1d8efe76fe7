import { AppError } from "@/lib/base/app-error";
import type { Command } from "@/lib/cli/command";
import { getOption } from "@/lib/cli/read-options";
import { parseJson } from "@/lib/exchange/parse-json";
import { getSolid } from "@/lib/gem/build-solid";
import { CUT_NAMES, isCutName } from "@/lib/gem/cut-name";
import { type Proportions, ProportionsSchema } from "@/lib/gem/proportions";
import { toFaults } from "@/lib/plot/to-faults";

function readProportions(text: string | undefined): Proportions {
  if (text === undefined) return {};
  const parsed = ProportionsSchema.safeParse(parseJson(text));
  if (parsed.success) return parsed.data;
  throw new AppError("bad-input", "The proportions are refused.", toFaults(parsed.error));
}

/** `facets`: the polyhedron of a cut. */
export const FACETS: Command = {
  name: "facets",
  purpose: "the polyhedron of a cut, as vertices and named facets",
  options: [
    { name: "cut", value: "NAME", required: true },
    { name: "proportions", value: "JSON", required: false },
  ],
  run: async (values) => {
    const cut = getOption(values, "cut");
    if (!isCutName(cut)) {
      throw new AppError("bad-input", "There is no such cut.", [
        { path: "--cut", message: `must be one of ${CUT_NAMES.join(", ")}` },
      ]);
    }
    const { vertices, facets } = getSolid(cut, readProportions(values.proportions));
    return {
      vertices,
      facets: facets.map(({ name, kind, vertices: corners }) => ({ name, kind, vertices: corners })),
    };
  },
};
