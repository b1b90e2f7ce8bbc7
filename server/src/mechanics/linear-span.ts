/** Spans of rows of six, by singular values. */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';

export type Row6 = readonly number[];

export interface Span {
  /** Largest first; six of them. */
  readonly singularValues: readonly number[];
  readonly rank: number;
  /** Orthonormal rows that span the given rows. */
  readonly basis: readonly Row6[];
  /** Orthonormal rows square to all given rows. */
  readonly rest: readonly Row6[];
}

/**
 * What rows of six numbers span, and what they leave.
 *
 * @param rows - of comparable size: lengths scaled
 * @param tolerance - share of the largest singular value below which a direction counts as not spanned
 * @returns rank 0 and all six directions left for no rows
 */
export function spanOf(rows: readonly Row6[], tolerance: number): Span {
  // Padded to at least six rows, so that the decomposition gives all six right vectors.
  const padded = [...rows.map((row) => [...row]), ...Array.from({ length: Math.max(0, 6 - rows.length) }, () => [0, 0, 0, 0, 0, 0])];
  const decomposition = new SingularValueDecomposition(new Matrix(padded));
  const singularValues = decomposition.diagonal;
  const right = decomposition.rightSingularVectors.transpose().to2DArray();
  const largest = singularValues[0] ?? 0;
  const rank = singularValues.filter((value) => value > tolerance * largest && value > 0).length;
  return { singularValues, rank, basis: right.slice(0, rank), rest: right.slice(rank) };
}

/** Orthonormal rows of what two spans have in common. */
export function commonSpan(a: readonly Row6[], b: readonly Row6[], tolerance: number): readonly Row6[] {
  const own = spanOf(a, tolerance).basis;
  const other = spanOf(b, tolerance);
  if (own.length === 0 || other.rank === 6) return own;
  if (own.length === 6) return other.basis;
  // Combinations of `own` that vanish on all that the other span leaves. Unit rows keep the unknowns that do not exist at zero, and make
  // the largest singular value at least 1: the others are sines of the angles between the spans.
  const rows = other.rest.map((direction) => [0, 1, 2, 3, 4, 5].map((i) => (own[i] === undefined ? 0 : product(own[i], direction))));
  const absent = [0, 1, 2, 3, 4, 5].slice(own.length).map((i) => [0, 1, 2, 3, 4, 5].map((j) => (i === j ? 1 : 0)));
  return spanOf([...rows, ...absent], tolerance).rest.map((weights) => [0, 1, 2, 3, 4, 5].map((j) => own.reduce((sum, row, i) => sum + (weights[i] ?? 0) * (row[j] ?? 0), 0)));
}

export const product = (a: Row6, b: Row6): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

/**
 * The same span in rows with as many zeros as elimination gives; each row of length 1.
 *
 * @param order - columns in the order in which they are cleared; rows without any of the first come last
 */
export function reducedRows(rows: readonly Row6[], order: readonly number[]): number[][] {
  const left = rows.map((row) => [...row]);
  const done: number[][] = [];
  for (const column of order) {
    const best = left.reduce((at, row, i) => (Math.abs(row[column] ?? 0) > Math.abs(left[at]?.[column] ?? 0) ? i : at), 0);
    const pivot = left[best];
    if (pivot === undefined || Math.abs(pivot[column] ?? 0) < 1e-7) continue;
    left.splice(best, 1);
    const scaled = pivot.map((value) => value / (pivot[column] as number));
    for (const row of [...left, ...done]) {
      const factor = row[column] ?? 0;
      scaled.forEach((value, j) => { row[j] = (row[j] ?? 0) - factor * value; });
      row[column] = 0;
    }
    done.push(scaled);
  }
  return done.map((row) => {
    const size = Math.hypot(...row);
    return row.map((value) => (Math.abs(value) < 1e-9 * size ? 0 : value / size));
  });
}
