import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countWords, type DoorItem, doorStop, isShort } from '#core/intake/compute.ts';

describe('countWords', () => {
  it.each([
    [8, 8, false, '8 of 8'],
    [2, 1, false, '1 of 2, 1 short'],
    [2, 3, false, '3 of 2, 1 more'],
    [8, null, false, 'not counted, usually 8'],
    [null, null, false, 'not counted'],
    [null, 4, false, '4'],
    [2, 0, true, 'missing at arrival'],
  ])('expected %j, counted %j, missing %j: %s', (expected, counted, missing, words) => {
    expect(countWords({ expected, counted, missing })).toBe(words);
  });
});

describe('isShort', () => {
  it('does not call short what nobody counted', () => {
    expect(isShort({ expected: 8, counted: null, missing: false })).toBe(false);
    expect(isShort({ expected: 8, counted: 7, missing: false })).toBe(true);
    expect(isShort({ expected: null, counted: 0, missing: false })).toBe(false);
  });
});

const CAPS: DoorItem = { words: 'caps', counted: 7, missing: false, out: null, explained: null, fate: null };

describe('doorStop', () => {
  it('asks where pieces are before they leave', () => {
    expect(doorStop(CAPS)).toContain('caps: say where they are');
  });
  it('wants as many out as came in, or a reason (I21)', () => {
    expect(doorStop({ ...CAPS, fate: 'in_casting', out: 6 })).toBe(
      '7 caps came, 6 counted out. Explain before handing over.',
    );
    expect(doorStop({ ...CAPS, fate: 'in_casting', out: 6, explained: 'one was cracked, customer has it' })).toBeNull();
    expect(doorStop({ ...CAPS, fate: 'in_casting', out: 7 })).toBeNull();
  });
  it('takes what is closed in the casting as counted, and wants bags counted', () => {
    expect(doorStop({ ...CAPS, fate: 'in_casting' })).toBeNull();
    expect(doorStop({ ...CAPS, fate: 'replaced' })).toBeNull();
    expect(doorStop({ ...CAPS, fate: 'in_bag' })).toBe('caps: 7 came, none counted out. Count before handing over.');
    expect(doorStop({ ...CAPS, fate: 'returned' })).toContain('none counted out');
  });
  it('does not take what nobody counted for none', () => {
    expect(doorStop({ ...CAPS, counted: null })).toBe('caps: nobody counted them. Say where they are, or count none.');
    expect(doorStop({ ...CAPS, counted: null, fate: 'in_casting' })).toBeNull();
  });
  it('has nothing to count where nothing came', () => {
    expect(doorStop({ ...CAPS, counted: 0 })).toBeNull();
    expect(doorStop({ ...CAPS, counted: 0, missing: true })).toBeNull();
  });
  it('never lets a difference go without a reason', () => {
    const fates = fc.constantFrom('in_casting', 'replaced', 'in_bag', 'returned', 'scrapped_agreed');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 50 }), fates, (counted, out, fate) => {
        const stop = doorStop({ ...CAPS, counted, out, fate: fate as DoorItem['fate'] });
        return (stop === null) === (out === counted);
      }),
    );
  });
});
