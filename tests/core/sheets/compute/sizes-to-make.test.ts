import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import type { Spot } from '#core/readings/compute/model.ts';
import { sizesToMake } from '#core/sheets/compute/sizes-to-make.ts';
import { readingOf, valves } from '#tests/kit/bench-facts.ts';
import { benchRow, measuredOf, tableOf } from '#tests/kit/measured-facts.ts';

const spots = valves('1', '2').map((spot): Spot => ({ ...spot, kind: 'cylinder', side: null }));
const bores = tableOf([benchRow('bore-wanted', { stage: 'before' })], { spotKind: 'cylinder' });
const wanted = (typed: string, place: number) =>
  readingOf('bore-wanted', typed, 'in', { spot: id<'spot'>(place), stage: 'before' });

describe('sizesToMake', () => {
  it('says one size for all bores once, in both units (1 in = 25.4 mm, NIST SP 811)', () => {
    const { sheets } = measuredOf({ spots, readings: [wanted('3.9700', 1), wanted('3.9700', 2)] }, [bores]);

    expect(sizesToMake(sheets)).toEqual([{ label: 'Size wanted', first: '3.9700 in', second: '100.838 mm' }]);
  });

  it('names the places where sizes differ or are not chosen yet', () => {
    const { sheets } = measuredOf({ spots, readings: [wanted('3.9700', 1), wanted('3.9800', 2)] }, [bores]);

    expect(sizesToMake(sheets).map(({ label, first }) => [label, first])).toEqual([
      ['Size wanted 1', '3.9700 in'],
      ['Size wanted 2', '3.9800 in'],
    ]);
    expect(sizesToMake(measuredOf({ spots, readings: [wanted('3.9700', 1)] }, [bores]).sheets)[0]?.label).toBe(
      'Size wanted 1',
    );
    expect(sizesToMake(measuredOf({ spots }, [bores]).sheets)).toEqual([]);
  });
});
