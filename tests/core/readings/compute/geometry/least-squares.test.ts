import { describe, expect, it } from 'vitest';
import { leastSquares } from '#core/readings/compute/geometry/least-squares.ts';
import { PONTIUS } from '#tests/kit/flatness-cases.ts';

describe('leastSquares', () => {
  it('gives the certified figures of a plane with badly scaled columns to 1e-8 (NIST StRD Pontius)', () => {
    const { data_load_deflection: data, certified } = PONTIUS;
    const load = data.map(([x]) => x);

    const fit = leastSquares(
      [load, load.map((x) => x * x)],
      data.map(([, y]) => y),
    );

    const squares = fit.residuals.reduce((sum, it) => sum + it * it, 0);
    const found = [fit.constant, ...fit.coefficients, squares, Math.sqrt(squares / (data.length - 3))];
    const wanted = [certified.b0, certified.b1, certified.b2, certified.residual_ss, certified.residual_sd];
    for (const [n, figure] of found.entries()) expect(figure / (wanted[n] ?? 0)).toBeCloseTo(1, 8);
    expect(Math.max(...found.map((it, n) => Math.abs(it / (wanted[n] ?? 0) - 1)))).toBeLessThan(1e-8);
  });

  it('gives 0 to a column that says what another says already, and to one that says nothing (exact mathematics)', () => {
    const x = [0, 1, 2, 3];
    const fit = leastSquares([x, x.map((it) => 3 * it + 7), [5, 5, 5, 5]], [1, 3, 5, 7]);

    expect(fit.coefficients[0]).toBeCloseTo(2, 12);
    expect(fit.coefficients.slice(1)).toEqual([0, 0]);
    expect(fit.constant).toBeCloseTo(1, 12);
  });
});
