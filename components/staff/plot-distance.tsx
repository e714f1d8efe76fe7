import { CUT_OFF_WIDTHS, measurePlotDistance, ORDER } from "@/components/staff/measure-plot-distance";
import panel from "@/components/staff/panel.module.css";
import type { DebriefView } from "@/lib/plot/student-view";

/** A second measure of a plot beside its points, into which no rubric enters. Staff. */
export function PlotDistance({ view }: { view: DebriefView }) {
  const { ospa, gospa } = measurePlotDistance(view);
  const widthMm = view.stone.measurementsMm?.[0];
  const inMm = widthMm === undefined ? "" : ` (${(ospa * widthMm).toFixed(2)} mm on this stone)`;
  const facts = [
    ["OSPA, mean", `${ospa.toFixed(3)}${inMm}`],
    ["GOSPA, sum", gospa.value.toFixed(3)],
    ["of that: place", gospa.location.toFixed(3)],
    ["overlooked", gospa.overlooked.toFixed(3)],
    ["strays", gospa.strays.toFixed(3)],
  ] as const;
  return (
    <section className={panel.root} aria-labelledby="distance-title">
      <h2 id="distance-title">Distance without a rubric</h2>
      <p>
        How far the middles of the plot’s marks lie from the reference’s, in girdle widths, 0 for the same
        marks: a mark without a partner nearer than c = {CUT_OFF_WIDTHS} counts as {CUT_OFF_WIDTHS} in the
        mean and as half of that in the sum (order p = {ORDER}).
      </p>
      <dl className={panel.facts}>
        {facts.map(([what, value]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
