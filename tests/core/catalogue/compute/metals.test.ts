import { describe, expect, it } from 'vitest';
import { CASTING_METALS, growthWords, PART_METALS } from '#core/catalogue/compute/metals.ts';
import reference from '#tests/reference/heat-and-fits.json' with { type: 'json' };

const alphaOf = (material: string): number =>
  (reference['expansion_table_1e-6_per_K'].find((it) => it.material === material)?.alpha ?? Number.NaN) * 1000;

describe('CASTING_METALS, PART_METALS', () => {
  it.each([
    ['grey iron', 11.4, CASTING_METALS.iron_grey],
    ['ductile iron', 11.2, CASTING_METALS.iron_ductile],
    ['aluminium 356', 21.5, CASTING_METALS.aluminium],
    ['bronze C93200', 18, PART_METALS.bronze],
  ] as const)(
    '%s grows %f µm/m for each °C (materials textbook, Table B.6; public materials table)',
    (_, alpha, metal) => {
      expect(metal?.alpha).toEqual({ low: alpha * 1000, high: alpha * 1000 });
    },
  );

  it('lies near the short table of a physics book: iron and steel 12, aluminium 25, brass 19 (OpenStax College Physics, Table 13.2)', () => {
    for (const metal of [
      CASTING_METALS.iron_grey,
      CASTING_METALS.iron_ductile,
      CASTING_METALS.steel,
      PART_METALS.steel,
    ]) {
      expect(Math.abs((metal?.alpha.low ?? 0) - alphaOf('iron or steel'))).toBeLessThanOrEqual(1000);
    }
    // A casting alloy with silicon grows less than the pure metal of the book.
    expect(CASTING_METALS.aluminium?.alpha.low).toBeLessThan(alphaOf('aluminium'));
    expect(CASTING_METALS.aluminium?.alpha.low).toBeGreaterThan(alphaOf('aluminium') * 0.8);
    expect(Math.abs((PART_METALS.bronze?.alpha.low ?? 0) - alphaOf('brass'))).toBeLessThanOrEqual(2000);
  });

  it('names a source for each, and takes the low end of a range', () => {
    for (const metal of [...Object.values(CASTING_METALS), ...Object.values(PART_METALS)]) {
      expect(metal.source.length).toBeGreaterThan(5);
      expect(metal.alpha.low).toBeLessThanOrEqual(metal.alpha.high);
    }
  });

  it('has no figure for a metal that is not known', () => {
    expect([CASTING_METALS.not_known, CASTING_METALS.other, PART_METALS.lead]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('growthWords', () => {
  it('says the metal with its figure', () => {
    const metal = PART_METALS['powder metal'];

    expect(metal && growthWords(metal, metal.alpha.low)).toBe('powder metal 10.0');
  });
});
