import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pinFault } from '#core/staff/compute.ts';

describe('pinFault', () => {
  it.each([
    ['482915', undefined],
    ['111111', /alike/],
    ['123456', /run/],
    ['987654', /run/],
    ['48291', /uses 6 digits/],
    ['48a915', /digits only/],
    ['740101', /printed in the practice shop/],
  ])('judges %s', (pin, sentence) => {
    const fault = pinFault(pin, 6, false);

    if (sentence === undefined) expect(fault).toBeUndefined();
    else expect(fault).toMatch(sentence);
  });

  it('allows the printed PINs in the practice shop', () => {
    expect(pinFault('740101', 6, true)).toBeUndefined();
  });

  it('never passes a PIN of another length than the shop uses', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 8 }), fc.stringMatching(/^\d{4,8}$/), (digits, pin) => {
        expect(pinFault(pin, digits, true) === undefined && pin.length !== digits).toBe(false);
      }),
    );
  });
});
