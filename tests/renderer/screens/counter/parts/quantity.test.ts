import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoursText, quantityFault, readHours, readQuantity } from '#renderer/screens/counter/parts/quantity.ts';

describe('readHours', () => {
  it.each([
    ['1.5', 5400],
    ['1,5', 5400],
    ['1.5 h', 5400],
    ['1:30', 5400],
    ['45 min', 2700],
    ['2', 7200],
    ['0.33', 1188],
    ['0', null],
    ['1:75', null],
    ['two', null],
    ['', null],
    ['400', null],
  ])('%s', (text, seconds) => {
    expect(readHours(text)).toBe(seconds);
  });

  it('reads back whatever whole minutes it writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1600 }), (minutes) => {
        expect(readHours(hoursText(minutes * 60))).toBe(minutes * 60);
      }),
    );
  });
});

describe('readQuantity', () => {
  it('reads pieces as pieces and time as time', () => {
    expect(readQuantity('12', false)).toBe(12);
    expect(readQuantity('12', true)).toBe(43_200);
    expect(readQuantity('0', false)).toBeNull();
    expect(quantityFault('', true)).toBeUndefined();
    expect(quantityFault('a while', true)).toBe('Write the time, for example 1.5 h or 45 min.');
  });
});
