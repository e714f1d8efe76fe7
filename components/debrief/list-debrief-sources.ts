import { type DebriefRow, toReferenceKey } from "@/components/debrief/debrief-row";
import type { SolidMarkSource } from "@/components/solid-figure/place-solid-marks";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { DebriefView } from "@/lib/plot/student-view";

/** The reference's marks for the solid, by what came of them and with the numbers of the debrief. */
export function listDebriefSources(view: DebriefView, rows: readonly DebriefRow[]): SolidMarkSource[] {
  const byName = new Map(view.characteristics.map((one) => [one.name, one]));
  return view.reference.marks.map((mark) => {
    const key = toReferenceKey(mark.id);
    const row = rows.find((one) => one.key === key) ?? rows.find((one) => one.partnerKey === key);
    const known = byName.get(mark.characteristic);
    const style = row?.outcome === "found" || row?.outcome === "overlooked" ? row.outcome : "set-aside";
    const label = known?.label ?? toCharacteristicLabel(mark.characteristic);
    return {
      mark,
      isInside: known?.class !== "surface",
      label: style === "set-aside" ? label : `${label}, ${style}`,
      style,
      callout: row?.callout ?? null,
    };
  });
}
