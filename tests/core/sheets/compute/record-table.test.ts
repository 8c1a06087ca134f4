import { describe, expect, it } from 'vitest';
import { faceQuantities } from '#core/catalogue/compute/faces.ts';
import { id } from '#core/kernel/ids.ts';
import { recordTable } from '#core/sheets/compute/record-table.ts';
import { readingOf } from '#tests/kit/bench-facts.ts';
import { benchRow, measuredOf, tableOf } from '#tests/kit/measured-facts.ts';

describe('recordTable', () => {
  it('prints what stands in no table, the later of two, with its place', () => {
    const old = readingOf('crack-result', 'crack found', null);
    const readings = [
      old,
      readingOf('crack-result', 'repaired', null, { supersedes: old.id, reason: 'pinned and tested again' }),
      readingOf('stem', '.3412', 'in', { spot: id<'spot'>(1), stage: 'before' }),
      readingOf('margin', '.050', 'in', { spot: id<'spot'>(1) }),
    ];
    const [table] = recordTable(measuredOf({ readings }, [tableOf([benchRow('margin')])]));

    expect(table?.rows).toEqual([
      {
        words: 'Crack result',
        small: 'crack found replaced 2026-03-09 by Teodor Vaskelund: pinned and tested again',
        found: null,
        after: { text: 'repaired' },
      },
      { words: '1E Valve stem', small: '', found: { text: '0.3412 in' }, after: null },
    ]);
  });

  it('keeps the shop’s own off a customer’s paper: how far the hands were from the ankles', () => {
    expect(recordTable(measuredOf({ readings: [readingOf('lift-h', '400.0', 'mm')] }, []))).toEqual([]);
  });

  it('leaves to a survey what was read for it', () => {
    const { dial } = faceQuantities({ code: 'deck' });

    expect(recordTable(measuredOf({ readings: [readingOf(dial, '.0010', 'in', { point: 'c1r1' })] }, []))).toEqual([]);
  });
});
