import { describe, expect, it } from 'vitest';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { BEFORE, blockBench, figure, knownOf, marks, spotsOf, type Typed } from '#tests/kit/cut-engine.ts';

describe('PROTRUSION_FORMULAS', () => {
  const PISTONS = spotsOf('cylinder', '1', '2', '3', '4');
  const stand = (...millimetres: readonly string[]): Typed[] =>
    millimetres.map(
      (typed, index): Typed => ['piston-protrusion', typed, 'mm', { ...BEFORE, spot: PISTONS[index]?.id ?? null }],
    );
  const SIZES = [
    ['1.15', '0.60'],
    ['1.25', '0.70'],
    ['1.35', '0.80'],
  ].flatMap(([size, upTo], index) => [
    limitOf(`gasket-size-${index + 1}`, 'mm', { target: size ?? null }),
    limitOf(`gasket-up-to-${index + 1}`, 'mm', { target: upTo ?? null }),
  ]);
  const gasket = (...millimetres: readonly string[]) =>
    blockBench({ casting: { fuel: 'diesel' }, spots: PISTONS, limits: SIZES, readings: stand(...millimetres) });

  it.each([
    [['0.52', '0.60', '0.55', '0.58'], 1.15],
    [['0.52', '0.61', '0.55', '0.58'], 1.25],
    [['0.52', '0.61', '0.80', '0.58'], 1.35],
  ])('pistons at %s mm: gasket %s (common practice: the highest piston chooses)', (pistons, expected) => {
    expect(figure(gasket(...pistons), 'gasket-for-pistons', 'mm', 'before')).toBe(expected);
  });

  it('names the highest piston, and says when it stands above every gasket', () => {
    expect(marks(gasket('0.52', '0.61'), 'gasket-for-pistons', 'before')).toBe(
      'gasket 2: highest piston 0.610 mm; cylinder 2; 2 of 4 pistons read',
    );
    const high = gasket('0.85');

    expect(knownOf(high, 'gasket-for-pistons', 'before')?.value).toBeNull();
    expect(marks(high, 'gasket-for-pistons', 'before')).toContain('above every gasket');
  });

  it('a diesel is not judged by piston to head, and its clearance may come from the highest piston', () => {
    const bench = gasket('0.52', '0.61');

    expect(marks(bench, 'piston-to-head', 'before')).toContain('the highest piston chooses the gasket');
    expect(figure(bench, 'deck-clearance', 'mm', 'before')).toBe(-0.61);
  });
});
