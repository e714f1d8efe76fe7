import { toNumberWords, toStatisticWords } from "@/components/charts/to-figure-words";
import classes from "@/components/section/coefficients-table.module.css";
import type { GradeRates } from "@/lib/agreement/grade-agreement";
import type { Statistic } from "@/lib/agreement/statistic";

export interface CoefficientsTableProps {
  readonly clarity: GradeRates | undefined;
  readonly coefficients: {
    readonly fleiss: Statistic;
    readonly ac1: Statistic;
    readonly alpha: Readonly<Record<"nominal" | "ordinal" | "interval", Statistic>>;
  } | null;
}

/** The chance-corrected coefficients of the clarity grades, each with its interval or the reason why there is none. */
export function CoefficientsTable({ clarity, coefficients }: CoefficientsTableProps) {
  if (clarity === undefined || coefficients === null) {
    return <p className="muted">No coefficient: no clarity grade was given yet.</p>;
  }
  const rows: readonly (readonly [string, Statistic])[] = [
    ["Cohen's kappa", clarity.kappa.unweighted],
    ["Cohen's kappa, linear weights", clarity.kappa.linear],
    ["Cohen's kappa, quadratic weights", clarity.kappa.quadratic],
    ["Krippendorff's alpha, nominal", coefficients.alpha.nominal],
    ["Krippendorff's alpha, ordinal", coefficients.alpha.ordinal],
    ["Fleiss' kappa", coefficients.fleiss],
    ["Gwet's AC1", coefficients.ac1],
  ];
  return (
    <table className={classes.root}>
      <caption>Agreement beyond chance, clarity: 1 is perfect, 0 is chance (95 % interval)</caption>
      <tbody>
        {rows.map(([label, statistic]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>{toStatisticWords(statistic, toNumberWords)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
