import type { ReactNode } from "react";
import classes from "@/components/debrief/points-table.module.css";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { PracticeNote } from "@/components/ui/practice-note";
import { GRADED_PROPERTIES, type GradedProperty } from "@/lib/plot/grades";
import type { DebriefView } from "@/lib/plot/student-view";

/** How far a grade lies from the reference's, in words. Scales run from best to worst. */
function toDistanceWords(view: DebriefView, property: GradedProperty): string {
  const [given, wanted] = [view.plot.grades[property], view.reference.grades[property]];
  if (wanted === undefined) return "Not graded on the reference";
  if (given === undefined) return "Not given";
  const scale = view.scales[property];
  const steps = scale.indexOf(given) - scale.indexOf(wanted);
  if (steps === 0) return "The same";
  const count = Math.abs(steps) === 1 ? "1 step" : `${Math.abs(steps)} steps`;
  return `${count} ${steps > 0 ? "too harsh" : "too lenient"}`;
}

/** The grades given beside the reference's. */
export function GradesCompared({
  view,
  renderTool,
}: {
  view: DebriefView;
  /** What staff may do with a graded property. */
  renderTool?: ((property: GradedProperty) => ReactNode) | undefined;
}) {
  const shown = GRADED_PROPERTIES.filter(
    (property) => view.reference.grades[property] !== undefined || view.plot.grades[property] !== undefined,
  );
  return (
    <section aria-labelledby="grades-compared-title">
      <h2 id="grades-compared-title">Grades</h2>
      <table className={classes.table}>
        <thead>
          <tr className={classes.muted}>
            <th scope="col">Property</th>
            <th scope="col">Given</th>
            <th scope="col">Reference</th>
            <th scope="col">Apart</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((property) => (
            <tr key={property}>
              <th scope="row">{PROPERTY_LABELS[property]}</th>
              <td data-grade>{view.plot.grades[property] ?? "–"}</td>
              <td data-grade>{view.reference.grades[property] ?? "–"}</td>
              <td data-grade>
                <div className={classes.withTool}>
                  <span>{toDistanceWords(view, property)}</span>
                  {renderTool?.(property)}
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <PracticeNote />
    </section>
  );
}
