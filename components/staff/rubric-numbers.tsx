import classes from "@/components/staff/rubric-numbers.module.css";
import { CAUSES } from "@/lib/plot/mark";
import type { Rubric } from "@/lib/plot/rubric";

interface RubricLine {
  readonly what: string;
  readonly value: string;
}

const points = (value: number) => (value === 1 ? "1 point" : `${value} points`);
const share = (value: number) => `${Math.round(value * 1000) / 10} %`;
const isDeducted = (cause: (typeof CAUSES)[number]): cause is keyof Rubric["deductions"] =>
  cause !== "other-view";

function listShares({ shares, gradeCredit }: Rubric): RubricLine[] {
  return [
    { what: "The plot", value: points(shares.plot) },
    { what: "Clarity", value: points(shares.clarity) },
    { what: "Other grades together", value: points(shares.otherGrades) },
    { what: "Credit for a grade 0, 1, 2 … steps away", value: gradeCredit.map(share).join(", ") },
  ];
}

function listMatching(rubric: Rubric): RubricLine[] {
  return [
    { what: "Full credit for place within", value: `${rubric.near} girdle widths` },
    { what: "No credit beyond", value: `${rubric.far} girdle widths` },
    {
      what: "Place, characteristic, extent",
      value: [rubric.parts.location, rubric.parts.type, rubric.parts.extent].map(share).join(", "),
    },
    { what: "Plotted in the other view", value: `counts ${share(rubric.otherView)}` },
    { what: "Several drawn as one", value: `count ${share(rubric.merged)}` },
  ];
}

function listDeductions(rubric: Rubric): RubricLine[] {
  return [
    ...CAUSES.filter(isDeducted).map((cause) => ({
      what: `A stray by ${cause === "unexplained" ? "no known cause" : cause}`,
      value: points(rubric.deductions[cause]),
    })),
    { what: "Strays together, at most", value: points(rubric.deductionCap) },
  ];
}

function Lines({ title, lines }: { title: string; lines: readonly RubricLine[] }) {
  return (
    <section>
      <h3>{title}</h3>
      <dl className={classes.list}>
        {lines.map(({ what, value }) => (
          <div key={what} className={classes.line}>
            <dt>{what}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** The numbers by which plots of an exercise are scored, to be read. */
export function RubricNumbers({ rubric }: { rubric: Rubric }) {
  return (
    <div className={classes.root}>
      <Lines title="What the points are for" lines={listShares(rubric)} />
      <Lines title="What counts as found" lines={listMatching(rubric)} />
      <Lines title="What strays cost" lines={listDeductions(rubric)} />
    </div>
  );
}
