import type { SolidMarkSource } from "@/components/solid-figure/place-solid-marks";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { ReferenceMark } from "@/lib/plot/mark";
import type { StoneView } from "@/lib/plot/staff-view";

/** A reference’s marks for the solid, numbered in their order. One that the table of characteristics lacks counts as inside. */
export function listReferenceSources(
  marks: readonly ReferenceMark[],
  characteristics: StoneView["characteristics"],
): SolidMarkSource[] {
  const byName = new Map(characteristics.map((one) => [one.name, one]));
  return marks.map((mark, index) => {
    const known = byName.get(mark.characteristic);
    const style = known?.class ?? "inside";
    const label = known?.label ?? toCharacteristicLabel(mark.characteristic);
    return { mark, isInside: style === "inside", label, style, callout: String(index + 1) };
  });
}
