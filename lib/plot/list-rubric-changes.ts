/** What differs between two rubrics, in the words and units that a person reads them in. Pure. */
import type { Rubric } from "@/lib/plot/rubric";
import {
  getUnitText,
  RUBRIC_GROUPS,
  type RubricField,
  readRubricAt,
  toShown,
} from "@/lib/plot/rubric-fields";

export interface RubricChange {
  /** The group that the number stands in. */
  readonly group: string;
  readonly label: string;
  /** As shown, with the unit: `4 pts`, `0.03`. */
  readonly from: string;
  readonly to: string;
}

const CREDIT = { unit: "percent" } as const;
const toCreditText = ({ gradeCredit }: Rubric) =>
  `${gradeCredit.map((credit) => toShown(CREDIT, credit)).join(", ")} %`;

function toText(field: RubricField, rubric: Rubric): string {
  const shown = toShown(field, readRubricAt(rubric, field.path));
  const unit = getUnitText(field);
  return unit === "" ? shown : unit === "°" ? `${shown}°` : `${shown} ${unit}`;
}

/** Every number that differs, in the order of the rubric's screen; none for equal rubrics. */
export function listRubricChanges(before: Rubric, after: Rubric): RubricChange[] {
  const rows = RUBRIC_GROUPS.flatMap(({ title, fields }) =>
    fields.map((field) => ({
      group: title,
      label: field.label,
      from: toText(field, before),
      to: toText(field, after),
    })),
  );
  const others: RubricChange[] = [
    {
      group: "Credit for a grade",
      label: "By steps away",
      from: toCreditText(before),
      to: toCreditText(after),
    },
    {
      group: "How the stone is held",
      label: "Orientation",
      from: before.orientation,
      to: after.orientation,
    },
  ];
  return [...rows, ...others].filter(({ from, to }) => from !== to);
}

/** The changes as one line: `What a stray costs: Dust 4 pts → 5 pts, Echo 3 pts → 2 pts; …`. Empty for none. */
export function toRubricChangeLine(changes: readonly RubricChange[]): string {
  const groups = [...new Set(changes.map(({ group }) => group))];
  const toWords = ({ label, from, to }: RubricChange) => `${label} ${from} → ${to}`;
  return groups
    .map(
      (name) =>
        `${name}: ${changes
          .filter(({ group }) => group === name)
          .map(toWords)
          .join(", ")}`,
    )
    .join("; ");
}
