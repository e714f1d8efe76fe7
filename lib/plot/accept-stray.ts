/** A stray that was right: what a mark of a plot becomes in the next version of its stone's reference. */
import { z } from "zod";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import { CauseSchema, IdSchema, type PlottedMark } from "@/lib/plot/mark";
import type { Shape } from "@/lib/plot/shape";
import type { Reference } from "@/lib/plot/stone";
import { turnShape } from "@/lib/plot/turn-shape";

/** How large it is drawn: as the student drew it, as a dot, or as a circle so many girdle widths across. */
const ExtentSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("as-drawn") }),
  z.strictObject({ kind: z.literal("dot") }),
  z.strictObject({ kind: z.literal("round"), across: z.number().min(0.005).max(1) }),
]);

export const AcceptStraySchema = z.strictObject({
  sittingId: z.string(),
  markId: IdSchema,
  /** The newest version of the reference that was seen. */
  baseVersion: z.int().min(1),
  extent: ExtentSchema,
  as: z.discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("mark"),
      characteristic: z.string().min(1).max(60),
      optional: z.boolean(),
    }),
    z.strictObject({ kind: z.literal("decoy"), cause: CauseSchema }),
  ]),
});
export type AcceptStray = z.input<typeof AcceptStraySchema>;

const CORNERS = 24;

function drawExtent(shape: Shape, extent: z.output<typeof ExtentSchema>): Shape {
  if (extent.kind === "as-drawn") return shape;
  const [x, y] = getSampleCentre(shape);
  if (extent.kind === "dot") return { kind: "dot", at: [x, y] };
  const points = Array.from({ length: CORNERS }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * i) / CORNERS;
    return [x + (extent.across / 2) * Math.cos(angle), y + (extent.across / 2) * Math.sin(angle)];
  });
  return { kind: "outline", points };
}

/** An id that no version had: each version takes in one stray at most. */
function findFreeId({ marks, decoys }: Reference, version: number): string {
  const taken = new Set([...marks, ...decoys].map(({ id }) => id));
  let id = `v${version}`;
  for (let n = 2; taken.has(id); n += 1) id = `v${version}-${n}`;
  return id;
}

/**
 * The reference with the plotted mark in it, laid as the plot was read (`turnDeg`), under a new id. Whether it lies on the
 * stone, and whether the stone's terms know the characteristic, is for whoever saves it to ask.
 */
export function takeStrayIn(
  reference: Reference,
  { view, shape }: Pick<PlottedMark, "view" | "shape">,
  turnDeg: number,
  { as, extent, baseVersion }: z.output<typeof AcceptStraySchema>,
): Reference {
  const id = findFreeId(reference, baseVersion + 1);
  const drawn = drawExtent(turnShape(view, shape, turnDeg), extent);
  if (as.kind === "decoy") {
    return { ...reference, decoys: [...reference.decoys, { id, view, cause: as.cause, shape: drawn }] };
  }
  const { characteristic, optional } = as;
  const mark = { id, view, characteristic, shape: drawn, ...(optional ? { optional } : {}) };
  return { ...reference, marks: [...reference.marks, mark] };
}
