import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { listInForce, NOBODY } from '#core/readings/compute/limits-in-force.ts';
import { factsOf, limitOf } from '#tests/kit/bench-facts.ts';

const list = (...limits: Parameters<typeof limitOf>[]) => {
  const bench = openBench(factsOf({ limits: limits.map((it) => limitOf(...it)) }));
  return listInForce(bench.facts, bench.limit, () => NOBODY);
};

describe('listInForce', () => {
  it('lists one limit for both sides once, and two where they are judged differently', () => {
    const shop = { forWhat: 'shop' as const };
    const found = list(
      ['stem', 'in', { low: '0.3410', ...shop }],
      ['margin', 'in', { low: '0.031', side: 'I', ...shop }],
      ['margin', 'in', { low: '0.047', side: 'E', ...shop }],
    );

    expect(found.map((it) => [it.quantity, it.side, it.text])).toEqual([
      ['stem', 'any', 'at least 0.3410'],
      ['margin', 'I', 'at least 0.031'],
      ['margin', 'E', 'at least 0.047'],
    ]);
  });

  it('sets the others beside it, the next in rank first, and leaves out one that was replaced', () => {
    const [found] = list(
      ['margin', 'in', { low: '0.031', forWhat: 'shop' }],
      ['margin', 'in', { low: '0.040', forWhat: 'customer_instruction' }],
      ['margin', 'in', { low: '0.045', forWhat: 'engine_type' }],
    );

    expect(found?.text).toBe('at least 0.045');
    expect(found?.others.map((it) => it.text)).toEqual(['at least 0.040', 'at least 0.031']);
  });
});
