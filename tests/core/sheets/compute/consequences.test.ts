import { describe, expect, it } from 'vitest';
import { intakeCorrection } from '#core/sheets/compute/consequences.ts';

const degrees = (value: number): number => value * 1_000_000;
const vee = (bank: number, face: number) => ({ bankLean: degrees(bank), faceLean: degrees(face) });

describe('intakeCorrection', () => {
  // Per 1 mm of cut; the figures of the trade's table for V engines.
  it.each([
    [45, 0, 1, Math.SQRT2],
    [45, 10, 1.2328, 1.717],
    [45, -5, 0.9231, 1.3004],
    [30, 0, 0.5774, 1.1547],
    [37.5, 10, 0.9011, 1.4577],
  ])('bank %s, face %s', (bank, face, offFace, offBottom) => {
    const found = intakeCorrection(1_000_000, vee(bank, face));

    expect((found?.face ?? 0) / 1_000_000).toBeCloseTo(offFace, 4);
    expect((found?.bottom ?? 0) / 1_000_000).toBeCloseTo(offBottom, 4);
  });

  it('takes 0.0308 in and 0.0429 in for a cut of 0.025 in', () => {
    const found = intakeCorrection(635_000, vee(45, 10));

    expect([found?.face, found?.bottom].map((value) => ((value ?? 0) / 25_400_000).toFixed(4))).toEqual([
      '0.0308',
      '0.0429',
    ]);
  });

  it('claims nothing where the faces lie level', () => {
    expect(intakeCorrection(635_000, vee(45, 45))).toBeNull();
  });
});
