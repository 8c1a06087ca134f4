import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { STEPS } from '#core/readings/compute/steps.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const toDo = (table: string, ...of: Parameters<typeof valveBench>) =>
  composeSheet(valveBench(...of).facts, findBenchTable(table) as BenchTable).toDo;

describe('STEPS', () => {
  it.each(Object.entries(STEPS))(
    '%s: each step is a sentence of a quantity that is there',
    (quantity, { over, under }) => {
      expect(findQuantity(quantity)?.code).toBe(quantity);
      for (const step of [...(over ?? []), ...(under ?? [])]) expect(step).toMatch(/[.?]$/);
    },
  );

  it('says how a figure past its limit is put right', () => {
    const [first] = toDo('seats', [['margin', '0.028', 'in']], [limitOf('margin', 'in', { low: '0.031' })]);

    expect(first).toMatchObject({ label: '1E', words: 'margin 0.028: too thin' });
    expect(first?.steps.at(-1)).toContain('Replace the valve');
  });

  // More than about 1.5 degrees apart: from memory. Never on the sign.
  it.each([
    ['43.5', '45', 0],
    ['46.5', '45', 0],
    ['43', '45', 1],
    ['47', '45', 1],
  ])('valve %s on seat %s: %d warnings, and no verdict (from memory)', (valve, seat, count) => {
    const pair: Typed[] = [
      ['valve-angle', valve, 'deg'],
      ['seat-angle', seat, 'deg'],
    ];
    const found = toDo('seats', pair);

    expect(found).toHaveLength(count);
    if (count > 0) expect(found[0]?.words).toBe('valve and seat 2.00° apart: look again');
    expect(valveBench(pair).verdict('angle-difference')).toBe('no limit known');
  });

  it('TM 9-4940-549-14&P, page 12-14: warns of a printed pair of loads that cannot be', () => {
    const bands = [
      limitOf('spring-load-1', 'lbf', { low: '72', high: '82' }),
      limitOf('spring-load-2', 'lbf', { low: '80', high: '86' }),
      ...sheet(['spring-height-1', '1.492', 'in'], ['spring-height-2', '1.082', 'in']),
    ];
    const [first] = toDo('springs', [], bands);

    expect(first?.words).toContain('spring rate 14.6 lbf/in of the sheet looks wrong');
    expect(first?.steps[0]).toContain('one of them must be wrong');
  });

  it('TM 10-4320-344-24: loads and wire of one table agree; another wire does not', () => {
    const data = (thick: string) =>
      sheet(
        ['spring-load-1', '48', 'lbf'],
        ['spring-height-1', '1.492', 'in'],
        ['spring-load-2', '137', 'lbf'],
        ['spring-height-2', '1.082', 'in'],
        ['wire-diameter', thick, 'in'],
        ['spring-outside', '1.294', 'in'],
        ['total-coils', '6', 'ratio'],
      );
    const steel: Typed[] = [['wire-kind', 'music wire', null]];

    expect(toDo('springs', steel, data('0.172'))).toEqual([]);
    expect(toDo('springs', steel, data('0.200'))[0]?.words).toContain('its wire says');
  });
});
