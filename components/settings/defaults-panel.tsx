import { Button } from "@mantine/core";
import editor from "@/components/rubric/rubric-editor.module.css";
import classes from "@/components/settings/settings.module.css";
import { listRubricChanges, type RubricChange } from "@/lib/plot/list-rubric-changes";
import { DEFAULT_RUBRIC, type Rubric } from "@/lib/plot/rubric";

export interface DefaultsPanelProps {
  /** What is typed; null while there is a fault in it. */
  typed: Rubric | null;
  /** The fields show Loupework's own numbers. */
  isOwn: boolean;
  onReset: () => void;
}

function ChangesTable({ changes }: { changes: readonly RubricChange[] }) {
  return (
    <table className={editor.table} aria-label="Differs from Loupework’s own numbers">
      <thead>
        <tr>
          <th scope="col">Number</th>
          <th scope="col" className={editor.points}>
            Loupework’s own
          </th>
          <th scope="col" className={editor.points}>
            Here
          </th>
        </tr>
      </thead>
      <tbody>
        {changes.map(({ group, label, from, to }) => (
          <tr key={`${group} ${label}`}>
            <th scope="row">
              {label}
              <span className={editor.small}>{group}</span>
            </th>
            <td className={editor.points}>{from}</td>
            <td className={editor.points}>{to}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** How the typed defaults differ from Loupework's own, the way back to those, and what the defaults are for. */
export function DefaultsPanel({ typed, isOwn, onReset }: DefaultsPanelProps) {
  const changes = typed === null ? [] : listRubricChanges(DEFAULT_RUBRIC, typed);
  return (
    <section className={editor.example} aria-label="Beside Loupework’s own numbers">
      <h3 className={classes.title}>Beside Loupework’s own numbers</h3>
      {typed === null ? (
        <p className="muted">Shown again once every field can be read.</p>
      ) : changes.length === 0 ? (
        <p className="muted">These are Loupework’s own numbers, every one.</p>
      ) : (
        <ChangesTable changes={changes} />
      )}
      <div>
        <Button variant="outline" disabled={isOwn} onClick={onReset}>
          Back to Loupework’s own numbers
        </Button>
      </div>
      <h3 className={classes.title}>Where they hold</h3>
      <ul className={classes.notes}>
        <li>A new exercise copies them when it is set; whoever set it can change its rubric afterwards.</li>
        <li>A set that brings numbers of its own keeps those; the defaults fill in the rest.</li>
        <li>A duplicated exercise keeps the rubric of the one it was made from.</li>
        <li>The trail says who changed which number, from what to what.</li>
      </ul>
    </section>
  );
}
