import classes from "@/components/debrief/points-table.module.css";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import type { ScoreResult } from "@/lib/plot/score-result";

const signed = (points: number) => (points < 0 ? `−${Math.abs(points).toFixed(2)}` : points.toFixed(2));

/** What the points were given for, line by line, adding up to the total. */
export function PointsTable({ result, say }: { result: ScoreResult; say: CalloutWords }) {
  return (
    <section aria-labelledby="points-title">
      <h2 id="points-title">Points</h2>
      <table className={classes.table}>
        <thead className="visually-hidden">
          <tr>
            <th scope="col">What for</th>
            <th scope="col">Points</th>
          </tr>
        </thead>
        <tbody>
          {result.lines.map(({ what, points }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the lines never change, and two may read the same.
            <tr key={index}>
              <th scope="row">{say(what)}</th>
              <td>{signed(points)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Total</th>
            <td>{signed(result.total)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}
