/**
 * The cheapest one-to-one assignment of rows to columns: Hungarian method with potentials and shortest augmenting paths
 * (Kuhn 1955; Jonker and Volgenant 1987). `costs[row][column]`, rectangular, finite. Gives each row's column, or -1 for
 * rows that are left over when there are more rows than columns. Empty in, empty out. RangeError for a cost that is not
 * a finite number or a row of another length.
 *
 * Kept here, beside the set distances alone, because they must not depend on the scoring engine: they judge it.
 */
export function solveAssignment(costs: readonly (readonly number[])[]): number[] {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  if (costs.some((row) => row.length !== columns || !row.every(Number.isFinite))) {
    throw new RangeError("solveAssignment: costs must be finite and rows of one length");
  }
  if (rows > columns) {
    const turned = Array.from({ length: columns }, (_, j) => costs.map((row) => row[j] ?? 0));
    const assigned = new Array<number>(rows).fill(-1);
    for (const [column, row] of solveAssignment(turned).entries()) assigned[row] = column;
    return assigned;
  }
  const rowPotential = new Float64Array(rows + 1);
  const columnPotential = new Float64Array(columns + 1);
  const rowOf = new Int32Array(columns + 1); // column -> row, both from 1; 0 is none
  for (let row = 1; row <= rows; row += 1) {
    augment(costs, row, rowPotential, columnPotential, rowOf);
  }
  const assigned = new Array<number>(rows).fill(-1);
  for (let column = 1; column <= columns; column += 1) {
    const row = rowOf[column] ?? 0;
    if (row > 0) assigned[row - 1] = column - 1;
  }
  return assigned;
}

/** Brings one more row into the assignment along the shortest path of reduced costs. */
function augment(
  costs: readonly (readonly number[])[],
  row: number,
  rowPotential: Float64Array,
  columnPotential: Float64Array,
  rowOf: Int32Array,
): void {
  const columns = columnPotential.length - 1;
  const shortest = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(columns + 1);
  const done = new Uint8Array(columns + 1);
  let column = 0;
  rowOf[0] = row;
  while ((rowOf[column] ?? 0) !== 0) {
    done[column] = 1;
    const from = rowOf[column] ?? 0;
    let step = Number.POSITIVE_INFINITY;
    let next = 0;
    for (let j = 1; j <= columns; j += 1) {
      if (done[j]) continue;
      const cost = costs[from - 1]?.[j - 1] ?? 0;
      const reduced = cost - (rowPotential[from] ?? 0) - (columnPotential[j] ?? 0);
      if (reduced < (shortest[j] ?? 0)) {
        shortest[j] = reduced;
        before[j] = column;
      }
      if ((shortest[j] ?? 0) < step) {
        step = shortest[j] ?? 0;
        next = j;
      }
    }
    for (let j = 0; j <= columns; j += 1) {
      if (done[j]) {
        const owner = rowOf[j] ?? 0;
        rowPotential[owner] = (rowPotential[owner] ?? 0) + step;
        columnPotential[j] = (columnPotential[j] ?? 0) - step;
      } else shortest[j] = (shortest[j] ?? 0) - step;
    }
    column = next;
  }
  while (column !== 0) {
    const previous = before[column] ?? 0;
    rowOf[column] = rowOf[previous] ?? 0;
    column = previous;
  }
}
