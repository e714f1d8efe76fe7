import { IntervalChart } from "@/components/charts/interval-chart";
import { toPercent } from "@/components/charts/to-figure-words";
import { toReferenceNumber } from "@/components/evidence/build-evidence-layers";
import type { StoneEvidence } from "@/lib/agreement/stone-evidence";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Reference } from "@/lib/plot/stone";

export interface DetectionChartProps {
  label: string;
  evidence: StoneEvidence;
  reference: Reference;
}

/** The share of students who find each reference mark, the most overlooked first. */
export function DetectionChart({ label, evidence, reference }: DetectionChartProps) {
  const name = (id: string) => {
    const mark = reference.marks.find((one) => one.id === id);
    return `${toReferenceNumber(reference, id)} ${toCharacteristicLabel(mark?.characteristic ?? "")}`;
  };
  const { detection } = evidence;
  const [least] = detection.filter(({ of }) => of > 0);
  return (
    <IntervalChart
      title="What students overlook most"
      summary={
        least === undefined
          ? "No plot was held against a mark of this reference yet."
          : `Mark ${name(least.id)} is overlooked most: ${least.found} of ${least.of} students found it (${toPercent(least.found / least.of)}). Each student counts once, by the first hand-in.`
      }
      fileName={`${label}-detection`}
      rows={detection.map(({ id, share, of }) => ({ key: id, label: name(id), statistic: share, count: of }))}
      rowLabel="Reference mark"
      countLabel="Students"
      emptyReason="the reference has no mark that gives points"
    />
  );
}
