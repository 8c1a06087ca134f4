import { describe, expect, it } from 'vitest';
import type { Engine, Spot } from '#core/readings/compute/model.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { BEFORE, figure, headBench, knownOf, marks, spotsOf, type Typed, V_EIGHT } from '#tests/kit/cut-engine.ts';

const near = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected)).toBeLessThan(tolerance);
const cut = (inches: string): Typed => ['head-cut-planned', inches, 'in', BEFORE];
const FOUR: Engine = { ...V_EIGHT, layout: 'inline', cylinders: 4, bankLean: null, faceLean: null };
const OVERHEAD = { camLayout: 'dohc' } as const;
const SPROCKET: Typed = ['cam-sprocket', '4.00', 'in', BEFORE];
const DRIVE: Typed[] = [SPROCKET, ['crank-sprocket', '2.00', 'in', BEFORE], ['sprocket-centres', '9.0', 'in', BEFORE]];

describe('EFFECT_FORMULAS: head-drop', () => {
  it('head cut, deck cut and a thinner gasket together: 0.010 + 0.005 + (0.040 - 0.035) is 0.020 (exact arithmetic)', () => {
    const bench = headBench({
      readings: [cut('0.010'), ['block-deck-cut', '0.005', 'in'], ['gasket-thickness', '0.035', 'in']],
    });

    expect(figure(bench, 'head-drop', 'in')).toBe(0.02);
    expect(marks(bench, 'head-drop')).toContain('old gasket from the sheet');
    expect(marks(bench, 'head-drop')).not.toContain('no deck cut entered');
  });

  it('a thicker gasket takes away, and what nobody entered is said (never read as nothing in silence)', () => {
    const bench = headBench({ readings: [cut('0.010'), ['gasket-thickness', '0.051', 'in']] });

    expect(figure(bench, 'head-drop', 'in')).toBeCloseTo(-0.001, 9);
    expect(marks(bench, 'head-drop')).toContain('no deck cut entered');
    expect(marks(headBench({ readings: [cut('0.010')] }), 'head-drop')).toContain(
      'gasket taken as thick as the old one',
    );
    expect(knownOf(headBench(), 'head-drop')).toBeNull();
  });

  it('says what earlier visits took off the same head, and does not count it again (exact arithmetic)', () => {
    const earlier = [
      { tag: 30411, position: 'left', removed: 152_400 },
      { tag: 29007, position: 'left', removed: null },
    ];
    const bench = headBench({ earlier, readings: [cut('0.010')] });

    expect(figure(bench, 'head-drop', 'in')).toBe(0.01);
    expect(marks(bench, 'head-drop')).toContain('earlier visits took .0060 in more');
  });

  it('of a diesel it says that injectors and pre-chambers stand out more', () => {
    const bench = headBench({ casting: { fuel: 'diesel' }, readings: [cut('0.010')] });

    expect(marks(bench, 'head-drop')).toContain('injectors and pre-chambers stand out');
  });
});

describe('EFFECT_FORMULAS: thickness-then', () => {
  const limits = [limitOf('thickness', 'in', { low: '3.9540' })];
  const found: Typed = ['thickness', '3.9600', 'in', BEFORE];

  it.each([
    ['0.0061', 3.9539, 'fail'],
    ['0.0060', 3.954, 'pass'],
  ])('3.9600 less a planned %s is %s: %s by the least thickness (exact mathematics)', (inches, expected, verdict) => {
    const bench = headBench({ limits, readings: [found, cut(inches)] });
    const then = knownOf(bench, 'thickness-then');

    expect(figure(bench, 'thickness-then', 'in')).toBe(expected);
    expect(bench.verdict('thickness-then', 'after', null, then).name).toBe(verdict);
  });

  it('is what was measured once the head is cut, whatever was planned', () => {
    const bench = headBench({ limits, readings: [found, cut('0.0061'), ['thickness', '3.9550', 'in']] });

    expect(figure(bench, 'thickness-then', 'in')).toBe(3.955);
    expect(knownOf(bench, 'thickness-then')?.planned).toBe(false);
    expect(knownOf(headBench({ limits, readings: [cut('0.0061')] }), 'thickness-then')).toBeNull();
  });
});

describe('EFFECT_FORMULAS: cam timing', () => {
  it('0.020 in, sprocket 4.00 in, quick form: 0.573 cam and 1.146 crank degrees, and says so (exact mathematics)', () => {
    const bench = headBench({ casting: OVERHEAD, engine: FOUR, readings: [cut('0.020'), SPROCKET] });

    near(figure(bench, 'cam-retard', 'deg'), 0.573, 0.0005);
    near(figure(bench, 'crank-retard', 'deg'), 1.1459, 0.001);
    expect(marks(bench, 'crank-retard')).toMatch(/quick form.*idler or tensioner in the pulling run/);
  });

  it('with radii 2.0 and 1.0 and centres 9.0 in: 1.1388 crank degrees (exact mathematics)', () => {
    const bench = headBench({ casting: OVERHEAD, engine: FOUR, readings: [cut('0.020'), ...DRIVE] });

    near(figure(bench, 'crank-retard', 'deg'), 1.1388, 0.001);
    expect(marks(bench, 'crank-retard')).not.toContain('quick form');
  });

  it('a deck cut counts the same and a thicker gasket subtracts (exact arithmetic)', () => {
    const of = (...readings: readonly Typed[]) =>
      figure(headBench({ casting: OVERHEAD, engine: FOUR, readings: [SPROCKET, ...readings] }), 'crank-retard', 'deg');

    expect(of(cut('0.010'), ['block-deck-cut', '0.010', 'in'])).toBe(of(cut('0.020')));
    expect(of(cut('0.020'), ['gasket-thickness', '0.060', 'in'])).toBe(0);
  });

  it.each([
    ['ohv', 'inline', 'no overhead cam'],
    ['side', 'inline', 'no overhead cam'],
    ['none', 'inline', 'where its cam sits is not known'],
    ['sohc', 'flat', 'flat engine'],
  ] as const)('%s, %s: no figure but words, "%s"', (camLayout, layout, words) => {
    const bench = headBench({
      casting: { camLayout },
      engine: { ...FOUR, layout },
      readings: [cut('0.020'), SPROCKET],
    });

    expect(knownOf(bench, 'cam-retard')?.value).toBeNull();
    expect(marks(bench, 'cam-retard')).toContain(words);
  });

  it('of a V engine it is only for a run along its bank; without a sprocket it asks for one', () => {
    const vee = headBench({ casting: OVERHEAD, readings: [cut('0.020'), SPROCKET] });

    expect(marks(vee, 'cam-retard')).toContain('only where the run lies along its bank');
    expect(marks(headBench({ casting: OVERHEAD, readings: [cut('0.020')] }), 'cam-retard')).toContain('cam sprocket');
  });

  it('pushrods: too long by the drop, and preload is said to change; none on an overhead cam', () => {
    const bench = headBench({ readings: [cut('0.020')] });

    expect(figure(bench, 'pushrod-change', 'in')).toBe(0.02);
    expect(marks(bench, 'pushrod-change')).toContain('lifter preload');
    expect(knownOf(headBench({ casting: OVERHEAD, readings: [cut('0.020')] }), 'pushrod-change')?.value).toBeNull();
  });
});

describe('EFFECT_FORMULAS: valve to piston', () => {
  const VALVES = spotsOf(
    'valve',
    ...(['1E', '1I'] as const).map(
      (label): Partial<Spot> => ({ label, cylinder: 1, side: label === '1E' ? 'E' : 'I' }),
    ),
  );
  const readings = (sink: string | null): Typed[] => [
    cut('0.020'),
    ...VALVES.flatMap((spot): Typed[] => [
      ['valve-to-piston', '0.110', 'in', { ...BEFORE, spot: spot.id }],
      ...(sink === null ? [] : [['valve-sink', sink, 'in', { spot: spot.id }] as Typed]),
    ]),
  ];
  const limits = [
    limitOf('valve-to-piston-left', 'in', { low: '0.080', side: 'I' }),
    limitOf('valve-to-piston-left', 'in', { low: '0.100', side: 'E' }),
  ];

  it('falls by the drop and grows by the sink: 0.110 - 0.020 + 0.015 is 0.105 (exact arithmetic)', () => {
    const bench = headBench({ spots: VALVES, readings: readings('0.015') });

    expect(figure(bench, 'valve-to-piston-left', 'in', 'after', VALVES[0])).toBe(0.105);
    expect(figure(bench, 'valve-to-piston-loss', 'in')).toBe(0.005);
    expect(marks(bench, 'valve-to-piston-loss')).toBe('cut less the least sunk valve');
  });

  it('0.090 left fails an exhaust of at least 0.100 and passes an intake of 0.080 (common practice, no source)', () => {
    const bench = headBench({ spots: VALVES, limits, readings: readings(null) });
    const verdict = (spot: Spot | undefined) =>
      bench.verdict(
        'valve-to-piston-left',
        'after',
        spot?.side ?? null,
        knownOf(bench, 'valve-to-piston-left', 'after', spot),
      ).name;

    expect([verdict(VALVES[0]), verdict(VALVES[1])]).toEqual(['fail', 'pass']);
    expect(marks(bench, 'valve-to-piston-left', 'after', VALVES[0])).toContain('sink of the valve not known');
    expect(figure(bench, 'valve-to-piston-loss', 'in')).toBe(0.02);
  });
});
