import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { columnsOf } from '#core/readings/compute/columns.ts';
import { listShimsToFit, shimPlanOf } from '#core/readings/compute/shim-plan.ts';
import { readingOf } from '#tests/kit/bench-facts.ts';
import { practiceHead } from '#tests/kit/practice-head.ts';

const facts = practiceHead('LO-4', { '1E': '1.544', '1I': '1.400' });
const spotOf = (label: string) => facts.spots.find((it) => it.label === label) ?? null;

describe('shimPlanOf', () => {
  it('gives the chosen stack as it is shown and as it is kept', () => {
    expect(shimPlanOf(openBench(facts), spotOf('1E'))).toMatchObject({ text: '0.015 + 0.030', typed: '0.015+0.030' });
    expect(shimPlanOf(openBench(facts), spotOf('2E'))).toBeNull();
  });

  it('gives what was written once something was written', () => {
    const written = readingOf('shims-fitted', '0.030', null, { spot: spotOf('1E')?.id ?? null });

    expect(shimPlanOf(openBench({ ...facts, readings: [...facts.readings, written] }), spotOf('1E'))?.typed).toBe(
      '0.030',
    );
  });

  it('has no plan where the shop has no shims of that unit', () => {
    expect(shimPlanOf(openBench({ ...facts, shims: [] }), spotOf('1E'))).toBeNull();
  });
});

describe('listShimsToFit', () => {
  it('leaves out a valve that fails whatever is put under it, and one not read', () => {
    const labels = listShimsToFit(openBench(facts)).map((it) => it.spot.label);

    expect(labels).toEqual(['1E']);
    expect(columnsOf(facts.spots, 'valve')).toHaveLength(8);
  });
});
