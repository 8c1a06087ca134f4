import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { intakeCorrection, portDrop } from '#core/readings/compute/geometry/intake-fit.ts';

const degrees = (value: number): number => Math.round(value * 1_000_000);
const vee = (bank: number, face: number) => ({ bankLean: degrees(bank), faceLean: degrees(face) });
const PER = 1_000_000;

describe('intakeCorrection', () => {
  it.each([
    [45, 0, 1, Math.SQRT2, 'exact mathematics: law of sines'],
    [45, 5, 1.1001, 1.5498, 'exact mathematics'],
    [45, 10, 1.2328, 1.717, 'common practice: 1.23 and 1.71'],
    [45, 15, Math.SQRT2, 1.9319, 'exact mathematics'],
    [45, 20, 1.6732, 2.2235, 'exact mathematics'],
    [45, 25, 2.0674, 2.6499, 'exact mathematics'],
    [45, 30, 2.7321, 3.3461, 'exact mathematics'],
    [45, 35, 4.0721, 4.7173, 'exact mathematics'],
    [45, -5, 0.9231, 1.3004, 'exact mathematics'],
    [30, 0, 0.5774, 1.1547, 'exact mathematics'],
    [30, 10, 0.6527, 1.2856, 'exact mathematics'],
    [37.5, 10, 0.9011, 1.4577, 'exact mathematics'],
  ])('bank %s, face %s: %s and %s of the cut (%s)', (bank, face, offFace, offBottom) => {
    const found = intakeCorrection(PER, vee(bank, face));

    expect(Math.abs((found?.face ?? 0) / PER - offFace)).toBeLessThan(0.0005);
    expect(Math.abs((found?.bottom ?? 0) / PER - offBottom)).toBeLessThan(0.0005);
  });

  it('0.707 / sin(45 - face), a web page on intake milling: the same for a 90 degree engine', () => {
    const page = (face: number) => Math.SQRT1_2 / Math.sin(((45 - face) * Math.PI) / 180);

    for (const face of [0, 5, 10, 15, 20]) {
      expect(Math.abs((intakeCorrection(PER, vee(45, face))?.face ?? 0) / PER - page(face))).toBeLessThan(0.001);
    }
  });

  it('takes 0.0308 in and 0.0429 in for a cut of 0.025 in (exact mathematics)', () => {
    const found = intakeCorrection(measureOf('0.025', 'in'), vee(45, 10));

    expect([found?.face, found?.bottom].map((value) => ((value ?? 0) / 25_400_000).toFixed(4))).toEqual([
      '0.0308',
      '0.0429',
    ]);
  });

  it('claims nothing where the faces lie level (exact mathematics)', () => {
    expect(intakeCorrection(635_000, vee(45, 45))).toBeNull();
    expect(intakeCorrection(635_000, vee(60, 40))).toBeNull();
  });

  it('brings ports and faces together again for any V angle (property: the moves of head and manifold drawn in the plane)', () => {
    const angle = fc.integer({ min: -10, max: 40 });

    fc.assert(
      fc.property(fc.integer({ min: 10, max: 45 }), angle, (bank, face) => {
        fc.pre(bank + face < 80);
        const { face: b, bottom: c } = intakeCorrection(PER, vee(bank, face)) ?? { face: 0, bottom: 0 };
        const [beta, gamma] = [bank, bank + face].map((deg) => (deg / 180) * Math.PI) as [number, number];
        // The right head goes down its bank; the manifold straight down by c; the face of it loses b.
        const head = [-Math.sin(beta) * PER, -Math.cos(beta) * PER] as const;
        const along = head[0] * Math.sin(gamma) + head[1] * Math.cos(gamma);
        const across = head[0] * -Math.cos(gamma) + head[1] * Math.sin(gamma);
        const manifoldAlong = -c * Math.cos(gamma);
        const manifoldAcross = -c * Math.sin(gamma);

        expect(Math.abs(along - manifoldAlong)).toBeLessThan(3);
        // What the manifold goes deeper than the head's face is what must come off.
        expect(Math.abs(across - manifoldAcross - b)).toBeLessThan(3);
      }),
    );
  });
});

describe('portDrop', () => {
  it('a face square to the deck drops with the head, one that leans a little less (exact mathematics)', () => {
    expect(portDrop(PER, { faceLean: 0 })).toBe(PER);
    expect(portDrop(PER, { faceLean: degrees(10) }) / PER).toBeCloseTo(0.9848, 4);
  });
});
