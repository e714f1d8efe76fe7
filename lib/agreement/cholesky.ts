/**
 * Cholesky's factor of a symmetric positive definite matrix, flat and row by row: lower triangular L with L L' = matrix
 * (Golub and Van Loan 1996, section 4.2.5). Null when the matrix is not positive definite.
 */
export function findCholeskyFactor(matrix: Float64Array, size: number): Float64Array | null {
  const factor = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * size + j] ?? 0;
      for (let k = 0; k < j; k += 1) sum -= (factor[i * size + k] ?? 0) * (factor[j * size + k] ?? 0);
      if (i === j) {
        if (!(sum > 0)) return null;
        factor[i * size + i] = Math.sqrt(sum);
      } else factor[i * size + j] = sum / (factor[j * size + j] ?? 1);
    }
  }
  return factor;
}

/** Solves matrix x = right, given the factor of the matrix. */
export function solveWithFactor(factor: Float64Array, right: Float64Array): Float64Array {
  const size = right.length;
  const x = Float64Array.from(right);
  for (let i = 0; i < size; i += 1) {
    let sum = x[i] ?? 0;
    for (let k = 0; k < i; k += 1) sum -= (factor[i * size + k] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (factor[i * size + i] ?? 1);
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    let sum = x[i] ?? 0;
    for (let k = i + 1; k < size; k += 1) sum -= (factor[k * size + i] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (factor[i * size + i] ?? 1);
  }
  return x;
}

/** The diagonal of the inverse, given the factor: sums of squares of the columns of the factor's inverse. */
export function listInverseDiagonal(factor: Float64Array, size: number): Float64Array {
  const diagonal = new Float64Array(size);
  const column = new Float64Array(size);
  for (let j = 0; j < size; j += 1) {
    column.fill(0);
    for (let i = j; i < size; i += 1) {
      let sum = i === j ? 1 : 0;
      for (let k = j; k < i; k += 1) sum -= (factor[i * size + k] ?? 0) * (column[k] ?? 0);
      column[i] = sum / (factor[i * size + i] ?? 1);
      diagonal[j] = (diagonal[j] ?? 0) + (column[i] ?? 0) ** 2;
    }
  }
  return diagonal;
}
