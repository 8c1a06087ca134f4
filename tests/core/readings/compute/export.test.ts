import { describe, expect, it } from 'vitest';
import { QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import { quantity, valve } from '#core/catalogue/compute/quantity.ts';
import { id } from '#core/kernel/ids.ts';
import { exportRows } from '#core/readings/compute/export.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf, toolOf, valves } from '#tests/kit/bench-facts.ts';

const spot = id<'spot'>(1);
const row = (code: string, shown = true, stage: 'before' | 'after' = 'after') =>
  ({ quantity: code, point: null, stage, shown }) as const;
const table = (...rows: readonly ReturnType<typeof row>[]) =>
  ({ code: 't', words: 'T', castingKind: 'head', spotKind: 'valve', operation: null, rows }) as const;
const exported = (facts: Partial<Facts>, tables = [table(row('seat-width'))]) =>
  exportRows(factsOf({ spots: valves('1E'), ...facts }), tables, { ticket: 20417, castingNumber: null });

describe('exportRows', () => {
  it('carries place, limits with their source, verdict and direction', () => {
    const [width] = exported({
      limits: [limitOf('seat-width', 'in', { low: '.060', high: '.100', sourceTag: '[demo]' })],
      readings: [readingOf('seat-width', '.110', 'in', { spot })],
    });

    expect(width).toMatchObject({
      tag: 41170,
      ticket: 20417,
      table: 't',
      place: '1E',
      value: '0.110',
      low: '0.060',
      high: '0.100',
      source: 'casting type sheet [demo]',
      verdict: 'fail',
      direction: 'over',
      by: 'TV',
      at: '2026-03-09T14:00:00.000Z',
    });
  });

  it('never calls a missing reading a pass', () => {
    const rows = exported({
      spots: valves('1E', '1I'),
      limits: [limitOf('seat-width', 'in', { low: '.060', high: '.100' })],
      readings: [readingOf('seat-width', '.070', 'in', { spot })],
    });

    expect(rows.map(({ status, verdict, value }) => [status, verdict, value])).toEqual([
      ['stands', 'pass', '0.070'],
      ['not measured', 'not measured', null],
    ]);
  });

  it('keeps a replaced reading with the reason, and who replaced it', () => {
    const old = readingOf('seat-width', '.070', 'in', { spot });
    const rows = exported({
      readings: [
        old,
        readingOf('seat-width', '.075', 'in', { spot, supersedes: old.id, reason: 'wrong drum', by: 'DK' }),
      ],
    });

    expect(rows.map(({ status, value, replacedWhy, replacedBy }) => [status, value, replacedWhy, replacedBy])).toEqual([
      ['stands', '0.075', null, null],
      ['replaced', '0.070', 'wrong drum', 'DK'],
    ]);
  });

  it('keeps what was taken back, and says that nothing is measured now', () => {
    const old = readingOf('seat-width', '.070', 'in', { spot });
    const gone = { spot, supersedes: old.id, kind: 'taken_back', reason: 'wrong head' } as const;
    const rows = exported({ readings: [old, readingOf('seat-width', 'taken back', null, gone)] });

    expect(rows.map(({ status, replacedWhy }) => [status, replacedWhy])).toEqual([
      ['not measured', null],
      ['replaced', 'wrong head'],
    ]);
  });

  it('keeps the first set of a redo', () => {
    const [first, second] = [id<'operation'>(1), id<'operation'>(2)];
    const rows = exported({
      readings: [
        readingOf('seat-width', '.070', 'in', { spot, operation: first }),
        readingOf('seat-width', '.080', 'in', { spot, operation: second }),
      ],
    });

    expect(rows.map(({ status, value }) => [status, value])).toEqual([
      ['stands', '0.080'],
      ['earlier operation', '0.070'],
    ]);
  });

  it('gives both figures where two people disagree', () => {
    const rows = exported({
      readings: [readingOf('seat-width', '.070', 'in', { spot }), readingOf('seat-width', '.090', 'in', { spot })],
    });

    expect(rows.map(({ status, value, verdict }) => [status, value, verdict])).toEqual([
      ['two readings', '0.070', null],
      ['two readings', '0.090', null],
    ]);
  });

  it('gives a computed figure with the combined doubt of its gauges (root of the sum of squares)', () => {
    const tool = toolOf({ uncertainty: 2540, serial: '77' });
    const [clearance] = exported(
      {
        tools: [tool],
        readings: [
          ...['top', 'mid', 'bot'].map((point) => readingOf('guide-id', '.3441', 'in', { spot, point, tool: tool.id })),
          readingOf('stem', '.3412', 'in', { spot, tool: tool.id }),
        ],
      },
      [table(row('guide-clearance'))],
    );

    // 0.0001 in twice: 0.000 141 4 in, rounded up to a whole nanometre.
    expect(clearance).toMatchObject({ measured: false, value: '0.0029', uncertainty: '0.000142', typed: null });
  });

  it('lists a cell once although two tables show it, and leaves out hidden rows in which nothing stands', () => {
    const rows = exported({ readings: [readingOf('seat-width', '.070', 'in', { spot })] }, [
      table(row('seat-width'), row('margin', false), row('stem')),
      table(row('seat-width')),
    ]);

    expect(rows.map((it) => it.quantity)).toEqual(['seat-width', 'stem']);
  });

  it('says nothing of tables that nobody began', () => {
    expect(exported({})).toEqual([]);
  });

  it('carries what was read outside every table', () => {
    const rows = exported({ readings: [readingOf('crack-result', 'none found', null)] }, []);

    expect(rows).toMatchObject([
      { table: null, place: null, quantity: 'crack-result', said: 'none found', value: null },
    ]);
  });

  it('carries a quantity that no code names', () => {
    const odd = quantity('spline-wobble', 'spline wobble', { ...valve, fine: true });
    const rows = exported(
      {
        quantities: [...QUANTITIES, odd],
        readings: [{ ...readingOf('stem', '.0123', 'in', { spot }), quantity: odd.code }],
      },
      [table(row(odd.code))],
    );

    expect(rows).toMatchObject([
      { quantity: 'spline-wobble', words: 'spline wobble', value: '0.0123', status: 'stands' },
    ]);
  });

  it('gives a typed fraction as the decimal it is', () => {
    expect(exported({ readings: [readingOf('seat-width', '5/64', 'in', { spot })] })[0]).toMatchObject({
      typed: '5/64',
      value: '0.078125',
    });
  });

  it.each([
    ['spring-load-1', '100', 'N', 100_000_000, 'uN'],
    ['finish-ra', '0.80', 'um', 800_000, 'pm'],
    ['pressure-held', '140', 'kPa', 140_000_000, 'mPa'],
    ['chamber-volume', '50.5', 'cc', 50_500_000, '1e-6 cc'],
    ['seat-angle', '45.5', 'deg', 45_500_000, '1e-6 deg'],
    ['part-counts', '12', 'count', 12, '1'],
  ] as const)('gives %s %s %s as %i %s (SI prefixes)', (quantity, typed, unit, base, baseUnit) => {
    const facts = factsOf({ spots: valves('1E') });
    const kind = facts.quantities.find(({ code }) => code === quantity)?.spotKind;
    const spots = kind ? valves('1E').map((it) => ({ ...it, kind })) : [];
    const reading = readingOf(quantity, typed, unit, kind ? { spot } : {});

    expect(exported({ spots, readings: [reading] }, [])).toMatchObject([{ value: typed, unit, base, baseUnit }]);
  });
});
