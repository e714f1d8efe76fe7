/**
 * The linear assignment problem, exactly (Kuhn 1955; the shortest augmenting path form of Jonker and Volgenant
 * 1987; from memory). Costs are compared in two ranks: the cost itself, then, among equal sums of it, the tie
 * cost. What still ties goes to the lower row and column, so that rows and columns sorted by id give the same answer
 * whatever the order in which they came.
 */
export interface AssignmentProblem {
  readonly rows: number;
  readonly columns: number;
  /** Row by row; `Infinity` forbids a pair. */
  readonly cost: Float64Array;
  /** Row by row, finite; left out where nothing but the cost counts. */
  readonly tieCost?: Float64Array;
}

function transpose(values: Float64Array, rows: number, columns: number): Float64Array {
  const turned = new Float64Array(values.length);
  for (let i = 0; i < rows; i += 1) {
    for (let j = 0; j < columns; j += 1) turned[j * rows + i] = values[i * columns + j] as number;
  }
  return turned;
}

/**
 * A cost that no sum of allowed pairs can outweigh, so that a forbidden pair is taken only where there is no way
 * round it: 2k(max + 1) + 1 for k pairs. (2 max + 1, which looks as good, is not.)
 */
function getSentinel({ rows, columns, cost }: AssignmentProblem): number {
  let largest = 0;
  for (const value of cost) if (Number.isFinite(value)) largest = Math.max(largest, Math.abs(value));
  return 2 * Math.min(rows, columns) * (largest + 1) + 1;
}

/** The costs with the sentinel where a pair is forbidden. */
function toFinite(problem: AssignmentProblem): Float64Array {
  const sentinel = getSentinel(problem);
  return problem.cost.map((value) => (value === Number.POSITIVE_INFINITY ? sentinel : value));
}

/** The row of each column, both from 1, 0 for none; `rows <= columns`, all costs finite. */
function solve(rows: number, columns: number, cost: Float64Array, tie: Float64Array): Int32Array {
  const rowOf = new Int32Array(columns + 1);
  const [u, uTie] = [new Float64Array(rows + 1), new Float64Array(rows + 1)];
  const [v, vTie] = [new Float64Array(columns + 1), new Float64Array(columns + 1)];
  const [slack, slackTie] = [new Float64Array(columns + 1), new Float64Array(columns + 1)];
  const [from, used] = [new Int32Array(columns + 1), new Uint8Array(columns + 1)];
  for (let row = 1; row <= rows; row += 1) {
    rowOf[0] = row;
    slack.fill(Number.POSITIVE_INFINITY);
    used.fill(0);
    let column = 0;
    do {
      used[column] = 1;
      const i = rowOf[column] as number;
      const base = (i - 1) * columns - 1;
      // Reach out from the column's row, and find the nearest column not yet reached.
      let least = Number.POSITIVE_INFINITY;
      let leastTie = 0;
      let next = 0;
      for (let j = 1; j <= columns; j += 1) {
        if (used[j] === 1) continue;
        const here = (cost[base + j] as number) - (u[i] as number) - (v[j] as number);
        const hereTie = (tie[base + j] as number) - (uTie[i] as number) - (vTie[j] as number);
        let known = slack[j] as number;
        if (here < known || (here === known && hereTie < (slackTie[j] as number))) {
          known = here;
          slack[j] = here;
          slackTie[j] = hereTie;
          from[j] = column;
        }
        if (known < least || (known === least && (slackTie[j] as number) < leastTie)) {
          least = known;
          leastTie = slackTie[j] as number;
          next = j;
        }
      }
      // Shift the potentials, so that the way there costs nothing.
      for (let j = 0; j <= columns; j += 1) {
        if (used[j] === 1) {
          const k = rowOf[j] as number;
          u[k] = (u[k] as number) + least;
          uTie[k] = (uTie[k] as number) + leastTie;
          v[j] = (v[j] as number) - least;
          vTie[j] = (vTie[j] as number) - leastTie;
        } else {
          slack[j] = (slack[j] as number) - least;
          slackTie[j] = (slackTie[j] as number) - leastTie;
        }
      }
      column = next;
    } while (rowOf[column] !== 0);
    // Turn the way round: each row on it moves to the next column.
    while (column !== 0) {
      const before = from[column] as number;
      rowOf[column] = rowOf[before] as number;
      column = before;
    }
  }
  return rowOf;
}

/**
 * The column of each row in an assignment of the least total cost, -1 for a row that gets none: one with more
 * rows than columns, or with nothing but forbidden pairs left. As many allowed pairs are made as can be. No rows
 * or no columns give no pairs. Exact for whole numbers below 2^53 in total, else to rounding.
 */
export function assignMinimum(problem: AssignmentProblem): Int32Array {
  const { rows, columns, cost } = problem;
  const columnOf = new Int32Array(rows).fill(-1);
  if (rows === 0 || columns === 0) return columnOf;
  let finite = cost.includes(Number.POSITIVE_INFINITY) ? toFinite(problem) : cost;
  let tie: Float64Array = problem.tieCost ?? new Float64Array(cost.length);
  const isTall = rows > columns;
  if (isTall) [finite, tie] = [transpose(finite, rows, columns), transpose(tie, rows, columns)];
  const taken = isTall ? solve(columns, rows, finite, tie) : solve(rows, columns, finite, tie);
  for (let j = 1; j < taken.length; j += 1) {
    const i = (taken[j] as number) - 1;
    if (i < 0) continue;
    const [row, column] = isTall ? [j - 1, i] : [i, j - 1];
    if (cost[row * columns + column] !== Number.POSITIVE_INFINITY) columnOf[row] = column;
  }
  return columnOf;
}
