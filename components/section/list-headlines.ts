/** The few figures of a section that are read first, for the screen and for paper. Pure. */
import { toBiasWords, toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import type { HeadlineFigure } from "@/components/section/headline-figures";
import type { SectionReport } from "@/lib/agreement/section-report";
import { toUndefined } from "@/lib/agreement/statistic";

/** Grades exact and within one, bias, detection and strays, each with its interval. */
export function listHeadlines({ rates, clusters }: SectionReport): readonly HeadlineFigure[] {
  const clarity = rates.grades.clarity;
  const bias = clarity?.bias ?? toUndefined("no clarity grade was given yet");
  const marks = rates.characteristics.reduce((sum, { reference }) => sum + reference, 0);
  return [
    {
      label: "Clarity exact",
      statistic: clusters.exact,
      format: toPercent,
      basis: `${clarity?.graded ?? 0} grades`,
    },
    { label: "Within one step", statistic: clusters.withinOne, format: toPercent },
    {
      label: "Clarity bias",
      statistic: bias,
      format: (value) => toNumberWords(value, 1),
      words: toBiasWords(bias),
      basis: "steps of the scale",
    },
    {
      label: "Reference marks found",
      statistic: clusters.detection,
      format: toPercent,
      basis: `${marks} seen`,
    },
    {
      label: "Strays on a stone",
      statistic: rates.straysPerPlot,
      format: (value) => toNumberWords(value, 1),
      basis: `${rates.plots} plots`,
    },
  ];
}
