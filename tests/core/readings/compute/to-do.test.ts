import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { columnsOf } from '#core/readings/compute/columns.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { toDoOf } from '#core/readings/compute/to-do.ts';
import { readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { practiceHead } from '#tests/kit/practice-head.ts';

const heights = findBenchTable('heights') as BenchTable;

describe('toDoOf', () => {
  it('is empty while everything passes or is not measured', () => {
    const facts = practiceHead('LO-4', { '1E': '1.500' });
    const sheet = composeSheet(facts, heights);

    expect(toDoOf(openBench(facts), sheet.columns, sheet.rows, columnsOf(facts.spots, 'valve'))).toEqual([]);
  });

  it('says of a close one how to come to an answer', () => {
    const gauge = toolOf({ uncertainty: measureOf('0.002', 'in') });
    const facts = practiceHead('LO-4');
    const spot = facts.spots[0]?.id ?? null;
    const close = {
      ...facts,
      guard: true,
      tools: [gauge],
      readings: [readingOf('installed-height', '1.491', 'in', { spot, stage: 'before', tool: gauge.id })],
    };

    expect(composeSheet(close, heights).toDo[0]).toMatchObject({
      words: 'with shims 1.491 too close to call',
      steps: ['Measure again.', 'Take a finer gauge.', 'Or a lead decides, by name.'],
    });
  });

  it('says of fitted shims that are too thick to take some out', () => {
    const facts = practiceHead('LO-4', { '1E': '1.518' });
    const fitted = readingOf('shims-fitted', '0.060', null, { spot: facts.spots[0]?.id ?? null });

    const [first] = composeSheet({ ...facts, readings: [...facts.readings, fitted] }, heights).toDo;

    expect(first?.words).toBe('too short: take shims out');
  });
});
