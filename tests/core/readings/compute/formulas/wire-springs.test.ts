import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';
import reference from '#tests/reference/springs.json' with { type: 'json' };

const perInch = (value: number | null) => (value ?? Number.NaN) / measureOf('1', 'lbf/in');
const wire: Typed[] = [
  ['wire-diameter', '0.177', 'in'],
  ['spring-outside', '1.420', 'in'],
  ['active-coils', '4.5', 'ratio'],
  ['wire-kind', 'music wire', null],
];
/** The same spring with other parts. */
const without = (quantity: string, ...more: readonly Typed[]) => [...wire.filter(([it]) => it !== quantity), ...more];

describe('spring-rate-wire', () => {
  it('music wire 0.177 in, 1.420 in outside, 4.5 coils: 163.258 lbf/in (exact mathematics)', () => {
    const bench = valveBench(wire);

    expect(Math.abs(perInch(bench.value('spring-rate-wire')) - 163.258)).toBeLessThanOrEqual(0.05);
    expect(bench.value('spring-index')).toBe(70_226);
    expect(bench.known('spring-rate-wire')?.marks).toEqual(['shear modulus usual for music wire']);
  });

  it('EN 13906-1 calculation report: 16.181 N/mm from spring steel by kind', () => {
    const steel: Typed[] = [
      ['wire-diameter', '5.0', 'mm'],
      ['spring-outside', '39.6', 'mm'],
      ['active-coils', '9.5', 'ratio'],
      ['wire-kind', 'spring steel', null],
    ];
    const rate = (valveBench(steel).value('spring-rate-wire') ?? Number.NaN) / measureOf('1', 'N/mm');

    expect(Math.abs(rate - 16.181)).toBeLessThanOrEqual(0.002);
  });

  it('takes two coils less than all where the working ones are not said (common practice, no source)', () => {
    const all = valveBench(without('active-coils', ['total-coils', '6.5', 'ratio']));

    expect(all.value('active-coils')).toBe(45_000);
    expect(Math.abs(perInch(all.value('spring-rate-wire')) - 163.258)).toBeLessThanOrEqual(0.05);
  });

  it('takes the shear modulus of the sheet before the usual one of its kind', () => {
    const bench = valveBench(wire, sheet(['shear-modulus', '5750000', 'psi']));

    expect(perInch(bench.value('spring-rate-wire'))).toBeCloseTo(81.63, 1);
  });

  it.each([
    ['an index under 4', [['spring-outside', '0.850', 'in']] as Typed[], 'spring index not within 4 to 12'],
    ['an index over 12', [['spring-outside', '2.400', 'in']] as Typed[], 'spring index not within 4 to 12'],
    ['fewer than 2 working coils', [['active-coils', '1.9', 'ratio']] as Typed[], 'fewer than 2 working coils'],
  ])('EN 13906-1, as summarised: %s is reckoned with a warning', (_, parts, words) => {
    const bench = valveBench(without(parts[0]?.[0] ?? '', ...parts));

    expect(bench.value('spring-rate-wire')).not.toBeNull();
    expect(bench.known('spring-rate-wire')?.marks.join()).toContain(words);
  });

  it('says what is wanted, and nothing of a coil that is none', () => {
    expect(valveBench(without('wire-kind')).known('spring-rate-wire')).toMatchObject({ value: null });
    expect(valveBench(without('active-coils')).known('spring-rate-wire')).toMatchObject({ value: null });
    expect(
      valveBench(without('spring-outside', ['spring-outside', '0.300', 'in'])).known('spring-rate-wire'),
    ).toBeNull();
  });

  it('carries more than four times the doubt of its wire (exact mathematics)', () => {
    const tool = { uncertainty: measureOf('0.00177', 'in') };
    const gauges = ['wire-diameter', 'spring-outside', 'active-coils'].map((quantity, index) => ({
      quantity,
      id: (index + 1) as never,
      uncertainty: quantity === 'wire-diameter' ? tool.uncertainty : 0,
    }));
    const typed = wire.map(
      ([quantity, text, unit]): Typed => [
        quantity,
        text,
        unit,
        { tool: gauges.find((it) => it.quantity === quantity)?.id ?? null },
      ],
    );
    const tools = gauges.map(({ id, uncertainty }) => ({
      id,
      name: 'G',
      kind: 'gauge',
      serial: null,
      workCentre: null,
      unit: 'in' as const,
      uncertainty,
      uncertaintyBp: null,
      nextDue: null,
      overdue: false,
      retired: false,
    }));
    const known = valveBench(typed, [], { tools }).known('spring-rate-wire');

    // One percent of wire; the mean coil falls by it too: 4 + 3 d / D percent.
    expect((known?.uncertainty ?? 0) / (known?.value ?? 1)).toBeCloseTo(0.04 + (0.03 * 0.177) / 1.243, 6);
  });
});

describe('spring-rate-free', () => {
  it('TM 10-3930-621-34: free 2.250 in, about 36 lb at 1.938 in: 115.385 lbf/in', () => {
    const bench = valveBench([
      ['spring-free-length', '2.250', 'in'],
      ['spring-load-1', '36', 'lbf'],
      ['spring-height-1', '1.938', 'in'],
    ]);

    expect(perInch(bench.value('spring-rate-free'))).toBeCloseTo(115.385, 2);
  });

  it.each(reference.cases.filter((it) => it.id.endsWith('-free-rate')))('$source: free length and one load', (it) => {
    const { free = 0, h = 0, F_low = 0, F_high = 0 } = it.inputs as Record<string, number>;
    const [low, high] = it.expected as unknown as readonly [number, number];
    const rate = (load: number) =>
      perInch(
        valveBench(
          [],
          sheet(
            ['spring-free-length', String(free), 'in'],
            ['spring-load-1', String(load), 'lbf'],
            ['spring-height-1', String(h), 'in'],
          ),
        ).value('spring-rate-free'),
      );

    expect(rate(F_low)).toBeCloseTo(low, 2);
    expect(rate(F_high)).toBeCloseTo(high, 2);
  });
});

describe('spring-stress and surge-margin', () => {
  const data = sheet(
    ['spring-load-1', '110', 'lbf'],
    ['spring-height-1', '1.700', 'in'],
    ['spring-load-2', '270', 'lbf'],
    ['spring-height-2', '1.200', 'in'],
    ['valve-lift', '0.480', 'in'],
  );

  it('stress with the valve open: K 8 F D / (pi d3) of 263.28 lbf (exact mathematics)', () => {
    const bench = valveBench([...wire, ['installed-height', '1.701', 'in']], data);
    const psi = (bench.value('spring-stress') ?? Number.NaN) / measureOf('1', 'psi');

    expect(Math.abs(psi - 182_155)).toBeLessThanOrEqual(5);
  });

  it('358.9 Hz is 21 530 cycles a minute, 7.2 times the cam of an engine at 6000 (10 at least, from memory)', () => {
    const bench = valveBench(wire, [
      ...sheet(['engine-speed', '6000', 'count']),
      limitOf('surge-margin', 'ratio', { low: '10' }),
    ]);

    expect(Math.abs((bench.value('spring-surge') ?? 0) - 21_530)).toBeLessThanOrEqual(30);
    expect((bench.value('surge-margin') ?? 0) / 10_000).toBeCloseTo(7.18, 1);
    expect(bench.verdict('surge-margin')).toBe('fail');
    expect(valveBench(wire, [limitOf('surge-margin', 'ratio', { low: '10' })]).verdict('surge-margin')).toBe(
      'not measured',
    );
  });
});
