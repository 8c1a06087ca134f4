import { describe, expect, it } from 'vitest';
import { grams } from '#core/kernel/units.ts';
import { limitWords, placeStop } from '#core/racks/compute.ts';

const EN = { language: 'en' };
const WASH = { code: 'W2', maxWeight: null, onlyMetal: 'aluminium' } as const;
const SHELF = { code: 'C-4-2', maxWeight: grams(20_000), onlyMetal: null } as const;
const HEAD = { label: '40001', metal: 'iron', weight: grams(20_001) } as const;

describe('placeStop', () => {
  it('keeps iron and unknown metal out of the aluminium wash', () => {
    expect(placeStop(WASH, HEAD, EN)).toBe('W2 is for aluminium only; 40001 is IRON. Choose another place.');
    expect(placeStop(WASH, { ...HEAD, metal: 'not_known' }, EN)).toContain('40001 is METAL NOT KNOWN');
    expect(placeStop(WASH, { ...HEAD, metal: 'aluminium' }, EN)).toBeNull();
  });
  it('carries up to its weight, the bound itself too', () => {
    expect(placeStop(SHELF, HEAD, EN)).toBe(
      'C-4-2 carries up to 20 kg; 40001 is 20 kg. Choose a lower or stronger place.',
    );
    expect(placeStop(SHELF, { ...HEAD, weight: grams(20_000) }, EN)).toBeNull();
  });
  it('lets a bag and an unknown weight through', () => {
    expect(placeStop(WASH, { label: '40001-A', metal: null, weight: null }, EN)).toBeNull();
    expect(placeStop(SHELF, { ...HEAD, weight: null }, EN)).toBeNull();
  });
});

describe('limitWords', () => {
  it('says what a place takes, or nothing', () => {
    expect(limitWords({ ...SHELF, onlyMetal: 'iron' }, EN)).toBe('iron only, up to 20 kg');
    expect(limitWords({ ...SHELF, maxWeight: null }, EN)).toBeNull();
  });
});
