import { describe, expect, it } from 'vitest';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import {
  indexOf,
  rateOfWire,
  stressOf,
  surgeOf,
  type WireSpring,
  wahlOf,
} from '#core/readings/compute/geometry/wire-spring.ts';
import reference from '#tests/reference/springs.json' with { type: 'json' };

type Inputs = Readonly<{ G: number; d: number; D?: number; OD?: number; Na: number; C?: number }>;
const caseOf = (id: string) => {
  const found = reference.cases.find((it) => it.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return found as unknown as { inputs: Inputs; expected: number; computed: number; source: string };
};

/** A figure of the reference file in base units; its sizes have at most five decimals. */
const of = (figure: number, unit: UnitCode) => measureOf(figure.toFixed(5), unit);
function wire({ G, d, D, OD, Na }: Inputs, inchWork: boolean): WireSpring {
  const [length, pressure] = inchWork ? (['in', 'psi'] as const) : (['mm', 'kPa'] as const);
  return {
    shear: of(inchWork ? G : G * 1000, pressure),
    wire: of(d, length),
    mean: of(D ?? (OD ?? 0) - d, length),
    active: of(Na, 'ratio'),
  };
}
const inRate = (it: WireSpring, unit: 'lbf/in' | 'N/mm') => rateOfWire(it) / measureOf('1', unit);
const EXAMPLE = wire({ G: 11.5e6, d: 0.177, OD: 1.42, Na: 4.5 }, true);

describe('rateOfWire', () => {
  it('EN 13906-1 calculation report: 16.181 N/mm', () => {
    const { inputs, expected } = caseOf('en13906-report');

    expect(Math.abs(inRate(wire(inputs, false), 'N/mm') - expected)).toBeLessThanOrEqual(0.001);
  });

  it('0.177 in wire, 1.420 in outside, 4.5 coils: 163.258 lbf/in (exact mathematics)', () => {
    expect(Math.abs(inRate(EXAMPLE, 'lbf/in') - 163.258)).toBeLessThanOrEqual(0.05);
  });

  it('TM 10-4320-344-24: the wire speaks for the loads within 5 percent', () => {
    const { inputs, expected, computed } = caseOf('tm-10-4320-344-24-geometry');
    const found = inRate(wire(inputs, true), 'lbf/in');

    expect(Math.abs(found - expected) / expected).toBeLessThanOrEqual(0.05);
    expect(found).toBeCloseTo(computed, 2);
  });

  it('textbook example 10-1 (from memory; the book rounds the coil): 4.13 lbf/in, unrounded 4.116', () => {
    const { inputs, expected, computed } = caseOf('textbook-music-wire');
    const found = inRate(wire(inputs, true), 'lbf/in');

    expect(Math.abs(found - expected)).toBeLessThanOrEqual(0.02);
    expect(found).toBeCloseTo(computed, 3);
  });

  it('course problem, 4 mm wire, author unknown: 16.0421 N/mm', () => {
    const { inputs, expected } = caseOf('course-problem-4mm');

    expect(Math.abs(inRate(wire(inputs, false), 'N/mm') - expected)).toBeLessThanOrEqual(0.0001);
  });

  it('one percent of wire is 4.060 percent of rate (exact mathematics)', () => {
    const thicker = { ...EXAMPLE, wire: EXAMPLE.wire * 1.01 };

    expect((rateOfWire(thicker) / rateOfWire(EXAMPLE) - 1) * 100).toBeCloseTo(4.06, 2);
  });
});

describe('wahlOf', () => {
  it('is 1.2121 at an index of 7.0226 (exact mathematics) and 1.2525 at 6 (textbook charts, from memory)', () => {
    const { expected } = caseOf('wahl-C6');

    expect(indexOf(EXAMPLE)).toBe(70_226);
    expect(Math.abs(wahlOf(7.0226) - 1.2121)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(wahlOf(6) - expected)).toBeLessThanOrEqual(1e-6);
  });
});

describe('stressOf', () => {
  it('K 8 F D / (pi d3): 263.28 lbf in the example is 182159 psi (exact mathematics)', () => {
    const psi = stressOf(EXAMPLE, measureOf('263.28', 'lbf')) / measureOf('1', 'psi');

    expect(Math.abs(psi - 182159)).toBeLessThanOrEqual(2);
  });
});

describe('surgeOf', () => {
  it('the inch spring, steel of 0.283 lb/in3: 358.9 Hz (exact mathematics)', () => {
    expect(Math.abs(surgeOf(EXAMPLE) / 60 - 358.9)).toBeLessThanOrEqual(0.5);
  });
});
