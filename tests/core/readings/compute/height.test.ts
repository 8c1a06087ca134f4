import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { heightForShims } from '#core/readings/compute/height.ts';

const mm = (text: string) => measureOf(text, 'mm');
const read = (height: string) => ({ height: mm(height), readOn: null, cup: null, oldShim: null });

describe('heightForShims', () => {
  // What a height is read on and what that means: common practice, no source; the sums are exact arithmetic.
  it('takes the cup off a height read on the bare pocket', () => {
    const found = heightForShims({ ...read('36.00'), readOn: 'bare_pocket', cup: mm('0.50') });

    expect(found).toMatchObject({ height: mm('35.50') });
  });

  it('gives an old shim back to a height read on cup and shim, so that it is not counted twice', () => {
    const found = heightForShims({ ...read('35.25'), readOn: 'cup_and_shim', oldShim: mm('0.25') });

    expect(found).toMatchObject({ height: mm('35.50') });
  });

  it('takes a height read on the cup as it stands', () => {
    expect(heightForShims({ ...read('35.50'), readOn: 'cup' })).toEqual({ height: mm('35.50'), note: null });
    expect(heightForShims(read('35.50'))).toEqual({ height: mm('35.50'), note: null });
  });

  it('asks for what is missing instead of taking it as nothing', () => {
    expect(heightForShims({ ...read('36.00'), readOn: 'bare_pocket' })).toHaveProperty('missing');
    expect(heightForShims({ ...read('36.00'), readOn: 'cup_and_shim' })).toHaveProperty('missing');
  });
});
