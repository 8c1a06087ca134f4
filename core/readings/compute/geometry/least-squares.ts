/**
 * Least squares with a constant term, for planes and for the shape of a face.
 *
 * Columns are centred and scaled before anything is solved, then made square to each other twice over (modified Gram-Schmidt):
 * the plain sums of products lose all figures where a column is large and nearly a multiple of another.
 */

/** A column that keeps less than this share of itself beside the others says nothing new: its coefficient is 0. */
const NOTHING_NEW = 1e-10;

export type Fit = Readonly<{
  constant: number;
  /** One for each column, 0 where the column says nothing the others do not. */
  coefficients: readonly number[];
  /** What is left of each z. */
  residuals: readonly number[];
}>;

const mean = (figures: readonly number[]): number => figures.reduce((sum, it) => sum + it, 0) / figures.length;
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, it, i) => sum + it * (b[i] ?? 0), 0);
const less = (a: readonly number[], times: number, b: readonly number[]): number[] =>
  a.map((it, i) => it - times * (b[i] ?? 0));

/**
 * z = constant + sum of coefficient times column, with the least sum of squares.
 *
 * @param columns at least one figure each, all as long as `z`
 */
export function leastSquares(columns: readonly (readonly number[])[], z: readonly number[]): Fit {
  const means = columns.map(mean);
  const centred = columns.map((column, k) => column.map((it) => it - (means[k] ?? 0)));
  const scales = centred.map((column) => Math.max(...column.map(Math.abs)) || 1);
  const scaled = centred.map((column, k) => column.map((it) => it / (scales[k] ?? 1)));
  const square: number[][] = [];
  /** Rows of the triangle: how much of each earlier square column the column holds, its own length last. */
  const triangle: number[][] = [];
  for (const column of scaled) {
    const held = square.map(() => 0);
    let rest: number[] = [...column];
    for (let pass = 0; pass < 2; pass += 1) {
      for (const [k, unit] of square.entries()) {
        const share = dot(rest, unit);
        held[k] = (held[k] ?? 0) + share;
        rest = less(rest, share, unit);
      }
    }
    const length = Math.sqrt(dot(rest, rest));
    const isNew = length > NOTHING_NEW * Math.sqrt(dot(column, column)) && length > 0;
    square.push(isNew ? rest.map((it) => it / length) : rest.map(() => 0));
    triangle.push([...held, isNew ? length : 0]);
  }
  const middle = mean(z);
  let residuals = z.map((it) => it - middle);
  const shares = square.map((unit) => {
    const share = dot(residuals, unit);
    residuals = less(residuals, share, unit);
    return share;
  });
  const coefficients = solveBack(triangle, shares).map((it, k) => it / (scales[k] ?? 1));
  return { constant: middle - dot(coefficients, means), coefficients, residuals };
}

/** Back substitution: the last column first. */
function solveBack(triangle: readonly (readonly number[])[], shares: readonly number[]): number[] {
  const found = shares.map(() => 0);
  for (let k = shares.length - 1; k >= 0; k -= 1) {
    const length = triangle[k]?.[k] ?? 0;
    if (length === 0) continue;
    let rest = shares[k] ?? 0;
    for (let later = k + 1; later < shares.length; later += 1)
      rest -= (triangle[later]?.[k] ?? 0) * (found[later] ?? 0);
    found[k] = rest / length;
  }
  return found;
}
