import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { previewOf } from '#core/readings/compute/preview.ts';
import { practiceHead } from '#tests/kit/practice-head.ts';

const heights = findBenchTable('heights') as BenchTable;

describe('previewOf', () => {
  const facts = practiceHead('TW-4', { '4E1': '36.42' });
  const spot = facts.spots.find((it) => it.label === '4E1')?.id ?? null;
  const type = (typed: string) =>
    previewOf(facts, heights, {
      cell: { quantity: 'installed-height', spot, point: null, stage: 'before' },
      typed,
      unit: null,
      tool: null,
      readOn: null,
    });

  it('says in a sentence what the figure would do, in place of what stands there', () => {
    expect(type('36.10')).toMatchObject({
      sentence: '0.50 under it makes 35.60 mm, load 177 N',
      cell: { text: '36.10' },
      column: { word: 'pass' },
    });
    expect(type('35.40').sentence).toBe('no shim: 35.40 mm, load 183 N');
  });

  it('has no sentence for a figure that cannot be read, or a place that is not there', () => {
    expect(type('x')).toMatchObject({ sentence: '', cell: null, read: { kind: 'refused' } });
    expect(
      previewOf(facts, heights, {
        cell: { quantity: 'bore', spot, point: null, stage: 'before' },
        typed: '1',
        unit: null,
        tool: null,
        readOn: null,
      }).read.kind,
    ).toBe('empty');
  });
});
