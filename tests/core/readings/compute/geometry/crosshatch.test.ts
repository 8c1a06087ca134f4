import { describe, expect, it } from 'vitest';
import { includedAngle } from '#core/readings/compute/geometry/crosshatch.ts';
import { inch } from '#tests/kit/worn-block.ts';

describe('includedAngle', () => {
  it('4.00 in bore, 155 turns, 60 full strokes of 5 in: 34.24 degrees within 0.05 (exact mathematics)', () => {
    const angle = includedAngle({ diameter: inch('4'), turns: 155, full: 60, stroke: inch('5') });

    expect(Math.abs(angle - 34_240_000)).toBeLessThanOrEqual(50_000);
  });

  it('is 90 degrees where up-and-down is as fast as round (exact mathematics)', () => {
    // pi times 10 times 20 turns is 628.3 a minute; 10 full strokes of 31.416 each way are 628.3.
    const angle = includedAngle({ diameter: 10_000_000, turns: 20, full: 10, stroke: 31_415_927 });

    expect(Math.abs(angle - 90_000_000)).toBeLessThanOrEqual(2);
  });

  it('a quicker stroke opens it, a quicker turn closes it (exact mathematics)', () => {
    const at = (turns: number, full: number) => includedAngle({ diameter: inch('4'), turns, full, stroke: inch('5') });

    expect(at(155, 70)).toBeGreaterThan(at(155, 60));
    expect(at(200, 60)).toBeLessThan(at(155, 60));
  });
});
