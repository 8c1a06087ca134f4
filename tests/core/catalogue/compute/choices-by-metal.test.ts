import { describe, expect, it } from 'vitest';
import { BENCH_TABLES } from '#core/catalogue/compute/bench-tables.ts';
import { choicesFor, isTableFor } from '#core/catalogue/compute/choices-by-metal.ts';
import { metalForbids } from '#core/catalogue/compute/fit.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { fitKindOf } from './first-catalogue.ts';

const found = (code: string) => {
  const quantity = findQuantity(code);
  if (!quantity) throw new Error(`no quantity ${code}`);
  return quantity;
};

describe('choicesFor', () => {
  it('offers magnetic particles on iron and steel, and on nothing else (common practice, no source)', () => {
    const offered = (material: string) => choicesFor(found('magnet-method'), material).choices.length;

    expect(['iron_grey', 'iron_ductile', 'steel'].map(offered)).toEqual([3, 3, 3]);
    expect(['aluminium', 'other', 'not_known'].map(offered)).toEqual([0, 0, 0]);
    expect(choicesFor(found('magnet-method'), 'aluminium').why).toContain('dye or a pressure test');
  });

  it('offers dye and pressure on every metal', () => {
    for (const material of ['iron_grey', 'aluminium', 'other', 'not_known']) {
      expect(choicesFor(found('dye-method'), material)).toMatchObject({
        choices: ['visible', 'fluorescent'],
        why: null,
      });
      expect(choicesFor(found('leak-method'), material).choices).toHaveLength(4);
    }
  });
});

describe('isTableFor', () => {
  it('has no magnet table for aluminium, and all others', () => {
    expect(BENCH_TABLES.filter((it) => !isTableFor(it.code, 'aluminium')).map((it) => it.code)).toEqual([
      'crack-magnet',
      'block-crack-magnet',
    ]);
    expect(BENCH_TABLES.every((it) => isTableFor(it.code, 'iron_grey'))).toBe(true);
  });
});

describe('the guards of the processes', () => {
  it('aluminium and magnetic particles: refused (common practice, no source)', () => {
    expect(metalForbids(fitKindOf('mag-particle-check', 'head'), 'aluminium')).toBeTruthy();
  });

  it('aluminium and hot caustic: refused (ICSC 0360; common practice)', () => {
    expect(metalForbids(fitKindOf('hot-tank', 'head'), 'aluminium')).toBeTruthy();
    expect(metalForbids(fitKindOf('hot-tank', 'head'), 'iron')).toBeFalsy();
  });
});
