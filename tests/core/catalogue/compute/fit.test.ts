/** What fits which casting. Which operation suits which metal: common practice, no source. */
import { describe, expect, it } from 'vitest';
import {
  type FitCasting,
  fitOf,
  fitsInstead,
  type Material,
  METAL_OUTLINES,
  METAL_WORDS,
  metalClassOf,
  metalForbids,
} from '#core/catalogue/compute/fit.ts';
import { fitKindOf, fitKindsOn } from './first-catalogue.ts';

const head = (material: Material, more: Partial<FitCasting> = {}): FitCasting => ({
  kind: 'head',
  material,
  camLayout: 'dohc',
  fuel: 'petrol',
  guideStyle: 'insert',
  waterJacket: true,
  counts: { valves: 24, guides: 24, seats: 24, springs: 24, chambers: 6, sleeves: 0 },
  ...more,
});
const judge = (code: string, casting: FitCasting) => fitOf(fitKindOf(code, casting.kind), casting);

describe('metalClassOf', () => {
  it('puts iron and steel together and keeps what is not known apart', () => {
    expect(
      (['iron_grey', 'iron_ductile', 'steel', 'aluminium', 'other', 'not_known'] as const).map(metalClassOf),
    ).toEqual(['iron', 'iron', 'iron', 'aluminium', 'other', 'not_known']);
    expect(Object.keys(METAL_WORDS)).toEqual(Object.keys(METAL_OUTLINES));
  });
});

describe('metalForbids', () => {
  const caustic = { groups: ['caustic', 'clean'] };
  const magnet = { groups: ['magnet', 'crack-check'] };
  const wash = { groups: ['clean'] };

  it('keeps caustic and magnet to iron and steel', () => {
    expect(metalForbids(caustic, 'iron')).toBeUndefined();
    expect(metalForbids(magnet, 'iron')).toBeUndefined();
    expect(metalForbids(caustic, 'aluminium')).toBe('ALUMINIUM: no caustic. Use the aluminium-safe wash.');
    expect(metalForbids(magnet, 'aluminium')).toBe(
      'The magnet shows nothing in aluminium. Use penetrant or pressure test.',
    );
    expect(metalForbids(caustic, 'other')).toMatch(/no caustic/);
    expect(metalForbids(magnet, 'other')).toMatch(/iron and steel only/);
  });

  it('keeps every wash off a metal that nobody knows, and lets other work be', () => {
    expect(metalForbids(wash, 'not_known')).toMatch(/no wash until a person confirms/);
    expect(metalForbids(wash, 'aluminium')).toBeUndefined();
    expect(metalForbids({ groups: ['seat-work'] }, 'not_known')).toBeUndefined();
  });
});

describe('fitOf', () => {
  it('refuses caustic whatever the rows of the catalogue say', () => {
    const lax = { ...fitKindOf('hot-tank', 'head'), fits: [] };
    expect(fitOf(lax, head('aluminium'))).toMatchObject({ fit: 'refused' });
  });

  it('gives the worst of all facts with its sentence', () => {
    expect(judge('guide-knurl', head('aluminium'))).toEqual({
      fit: 'refused',
      words: expect.stringMatching(/is not done on aluminium\.$/),
    });
    expect(judge('seal-boss-cut', head('iron_grey'))).toMatchObject({
      fit: 'special',
      words: expect.stringMatching(/is unusual on a DOHC casting\.$/),
    });
    expect(judge('seat-cut', head('aluminium'))).toEqual({ fit: 'normal', words: '' });
  });

  it('says what does not arise: wrong kind of casting, nothing to count, no water', () => {
    expect(judge('hone-cylinder', head('iron_grey')).words).toMatch(/is not done on a head\.$/);
    expect(judge('injector-sleeve', head('aluminium'))).toMatchObject({
      fit: 'does not arise',
      words: 'This casting has no sleeves.',
    });
    expect(judge('pressure-test', head('aluminium', { waterJacket: false }))).toMatchObject({
      fit: 'does not arise',
      words: expect.stringMatching(/a casting without a water jacket\.$/),
    });
  });

  it('does not ask the cam of a casting that has none', () => {
    const crank: FitCasting = { ...head('steel'), kind: 'crank', camLayout: 'none', counts: {} };
    expect(judge('crank-polish', crank).fit).toBe('normal');
  });

  it('asks a lead for any work on another metal', () => {
    expect(judge('seat-cut', head('other'))).toEqual({
      fit: 'special',
      words: expect.stringMatching(/^OTHER METAL: ask a lead/),
    });
  });
});

describe('fitsInstead', () => {
  it('offers the safe wash for a hot tank, and other crack checks for a magnet', () => {
    const casting = head('aluminium');
    const others = fitKindsOn('head');
    expect(fitsInstead(fitKindOf('hot-tank', 'head'), others, casting)).toContain('aluminium-wash');
    const checks = fitsInstead(fitKindOf('mag-particle-check', 'head'), others, casting);
    expect(checks).toEqual(expect.arrayContaining(['penetrant-check', 'pressure-test']));
    expect(checks).not.toContain('mag-particle-check');
  });
});
