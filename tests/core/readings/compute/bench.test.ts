import { describe, expect, it } from 'vitest';
import { quantity } from '#core/catalogue/compute/quantity.ts';
import { id } from '#core/kernel/ids.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { factsOf, limitOf, readingOf, toolOf, valves } from '#tests/kit/bench-facts.ts';

const spot = id<'spot'>(1);
const [valve] = valves('1E');

describe('openBench', () => {
  it('gives a reading the doubt of its gauge, also as a share of the figure', () => {
    const fixed = toolOf({ uncertainty: 2540 });
    const share = toolOf({ uncertaintyBp: 300 });
    const load = (tool: typeof fixed) =>
      openBench(
        factsOf({
          spots: valves('1E'),
          tools: [fixed, share],
          readings: [readingOf('spring-load-1', '100', 'lbf', { spot, tool: tool.id })],
        }),
      ).known('spring-load-1', valve ?? null, null, 'after')?.uncertainty;

    expect(load(fixed)).toBe(2540);
    expect(load(share)).toBe(Math.round(measureOf('100', 'lbf') * 0.03));
  });

  it('lets two agreeing figures stand as the later one, and not two that are judged differently', () => {
    const gauge = toolOf({ uncertainty: measureOf('0.002', 'in') });
    const rows = (second: string) =>
      openBench(
        factsOf({
          spots: valves('1E'),
          tools: [gauge],
          limits: [limitOf('margin', 'in', { low: '0.047' })],
          readings: ['0.048', second].map((typed) => readingOf('margin', typed, 'in', { spot, tool: gauge.id })),
        }),
      ).rows('margin', valve ?? null, null, 'after');

    expect(rows('0.049').current?.typed).toBe('0.049');
    expect(rows('0.046').choose).toHaveLength(2);
    expect(rows('0.060').choose).toHaveLength(2);
  });

  it('computes a figure until somebody types it: then the typed one stands, and with it its doubt', () => {
    const gauge = toolOf({ uncertainty: 2540 });
    const facts = (...more: Parameters<typeof readingOf>[]) =>
      factsOf({
        spots: valves('1E'),
        tools: [gauge],
        quantities: [
          ...factsOf().quantities.filter((it) => it.code !== 'guide-clearance'),
          quantity('guide-clearance', 'c', { spotKind: 'valve', derived: 'guide-clearance', orTyped: true }),
        ],
        readings: [
          readingOf('guide-id', '0.3438', 'in', { spot, point: 'mid' }),
          readingOf('stem', '0.3412', 'in', { spot }),
          ...more.map((it) => readingOf(...it)),
        ],
      });
    const known = (of: ReturnType<typeof facts>) =>
      openBench(of).known('guide-clearance', valve ?? null, null, 'after');

    expect(known(facts())?.value).toBe(measureOf('0.0026', 'in'));
    expect(known(facts(['guide-clearance', '0.0031', 'in', { spot, tool: gauge.id }]))).toMatchObject({
      value: measureOf('0.0031', 'in'),
      uncertainty: 2540,
    });
  });

  it('keeps three thousand points of two quantities apart, more than the catalogue has names', () => {
    const points = Array.from({ length: 3000 }, (_, n) => `p${n}`);
    const readings = points.flatMap((point) =>
      ['a', 'b'].map((it) => readingOf(it, `${it} ${point}`, null, { point })),
    );
    const bench = openBench(factsOf({ readings }));
    const at = (quantity: string, point: string | null) => bench.rows(quantity, null, point, 'after').current?.typed;
    at('a', null);
    at('b', null);

    expect(points.map((point) => at('a', point))).toEqual(points.map((point) => `a ${point}`));
    expect(points.map((point) => at('b', point))).toEqual(points.map((point) => `b ${point}`));
    expect(points.length).toBeGreaterThan(factsOf().quantities.length * 2);
  });

  it('never ends in a circle: a formula that asks for itself gets nothing', () => {
    const facts = factsOf({
      spots: valves('1E'),
      quantities: [
        ...factsOf().quantities.filter((it) => it.code !== 'installed-height'),
        quantity('installed-height', 'h', { spotKind: 'valve', derived: 'height-with-shim' }),
      ],
    });

    expect(openBench(facts).known('height-with-shim', valve ?? null, null, 'after')).toBeNull();
  });

  it('takes shims in the unit of the wanted height, else of the shop', () => {
    const look = (unit: 'in' | 'mm') =>
      openBench(factsOf({ limits: [limitOf('height-with-shim', unit, { low: '1', high: '2' })] }))
        .look({ spot: valve ?? null, stage: 'after' })
        .stock()?.unit;

    expect(look('mm')).toBe('mm');
    expect(look('in')).toBe('in');
    expect(
      openBench(factsOf({ system: 'metric' }))
        .look({ spot: null, stage: 'after' })
        .stock()?.unit,
    ).toBe('mm');
    expect(
      openBench(factsOf({ shims: [] }))
        .look({ spot: null, stage: 'after' })
        .stock(),
    ).toBeNull();
  });
});
