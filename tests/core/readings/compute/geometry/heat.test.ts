import { describe, expect, it } from 'vitest';
import {
  dropInSlopes,
  dropInTemperature,
  fitWhenWarm,
  growthOf,
  growthSlope,
} from '#core/readings/compute/geometry/heat.ts';
import reference from '#tests/reference/heat-and-fits.json' with { type: 'json' };

const NM = 1e9;
const INCH = 25_400_000;
/** Alpha of a source, in 1e-9 per kelvin. */
const nine = (alpha: number) => Math.round(alpha * 1e9);
const named = (id: string) => {
  const found = reference.cases.find((it) => it.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return { ...found, inputs: found.inputs as unknown as Readonly<Record<string, number>> };
};
const input = (it: ReturnType<typeof named>, name: string): number => {
  const figure = it.inputs[name];
  if (figure === undefined) throw new Error(`no ${name} in ${it.id}`);
  return figure;
};

describe('growthOf', () => {
  it.each(['bridge-steel', 'bridge-steel-2', 'span-195m'].map(named))('$id: $expected m ($source)', (it) => {
    const grown = growthOf(input(it, 'L') * NM, nine(input(it, 'alpha')), input(it, 'dT') * 1000);

    expect(Math.abs(grown / NM - it.expected)).toBeLessThanOrEqual(it.tolerance);
    expect(grown / NM).toBeCloseTo(it.computed, 6);
  });

  it('an aluminium bore of 1.625 in grows 0.00349375 in for 100 °C (alpha: materials textbook, Table B.6)', () => {
    expect(growthOf(1.625 * INCH, 21_500, 100_000) / INCH).toBeCloseTo(0.003_493_75, 7);
  });

  it('a seat of 1.625 in shrinks 0.00181545 in by 98 °C in dry ice (alpha: a public materials table)', () => {
    expect(growthOf(1.625 * INCH, 11_400, -98_000) / INCH).toBeCloseTo(-0.001_815_45, 7);
  });

  it('a bore of 3.98 in that is 10 °C warm reads 0.00086 in too big in aluminium, 0.00045 in iron (exact mathematics)', () => {
    expect(growthOf(3.98 * INCH, 21_500, 10_000) / INCH).toBeCloseTo(0.000_86, 5);
    expect(growthOf(3.98 * INCH, 11_400, 10_000) / INCH).toBeCloseTo(0.000_45, 5);
  });

  it('what grows by warming shrinks as much by chilling, and nothing without a difference (property)', () => {
    for (const by of [1000, 17_000, 98_000]) {
      expect(growthOf(INCH, 11_400, by)).toBe(-growthOf(INCH, 11_400, -by));
    }
    expect(growthOf(INCH, 11_400, 0)).toBe(0);
  });

  it('grows with its slope for each part of a degree (exact mathematics)', () => {
    expect(growthSlope(1.625 * INCH, 21_500) * 100_000).toBeCloseTo(growthOf(1.625 * INCH, 21_500, 100_000), 0);
  });
});

describe('dropInTemperature', () => {
  const seat = {
    hole: 1.625 * INCH,
    part: 1.63 * INCH,
    alphaHole: 21_500,
    alphaPart: 11_400,
    room: 20_000,
    partAt: -78_000,
    clearance: 0.002 * INCH,
  };

  it('0.005 in of fit and 0.002 in of room with the seat in dry ice: 168.4 °C (exact mathematics)', () => {
    expect(Math.abs(dropInTemperature(seat) / 1000 - 168.4)).toBeLessThanOrEqual(0.5);
  });

  it('the same without chilling: 220.4 °C (exact mathematics)', () => {
    expect(Math.abs(dropInTemperature({ ...seat, partAt: 20_000 }) / 1000 - 220.4)).toBeLessThanOrEqual(0.5);
  });

  it('rod-in-plate: 191.67 K on the size of the hole (a public question page, weak)', () => {
    const it = named('rod-in-plate');
    const hole = input(it, 'd_hole') * 10 * 1e6;
    const part = hole + Math.round(input(it, 'interference') * 10 * 1e6);
    const plate = { hole, part, alphaHole: nine(input(it, 'alpha')), alphaPart: 0, room: 0, partAt: 0, clearance: 0 };

    expect(Math.abs(dropInTemperature(plate) / 1000 - it.expected)).toBeLessThanOrEqual(it.tolerance);
  });

  it('heat-needed: 256.41 K for 0.005 in on 1.625 in (The Engineering ToolBox, Shrink-Fits Assembly, formula)', () => {
    const it = named('heat-needed');
    const hole = input(it, 'd') * INCH;
    const task = { hole, part: hole, alphaHole: nine(input(it, 'alpha')), alphaPart: 0, room: 0, partAt: 0 };

    expect(
      Math.abs(dropInTemperature({ ...task, clearance: input(it, 'delta') * INCH }) / 1000 - it.expected),
    ).toBeLessThanOrEqual(it.tolerance);
  });

  it('heat-bush-freeze-shaft: 429.6 °F, shaft frozen and bush heated (a public course problem, weak; recomputed)', () => {
    const it = named('heat-bush-freeze-shaft');
    const celsius = (name: string) => Math.round(((input(it, name) - 32) / 1.8) * 1000);
    const heat = dropInTemperature({
      hole: input(it, 'hole_min') * INCH,
      part: Math.round(input(it, 'shaft_max') * INCH),
      alphaHole: nine(input(it, 'alpha_bush_per_F') * 1.8),
      alphaPart: nine(input(it, 'alpha_shaft_per_F') * 1.8),
      room: celsius('ambient_F'),
      partAt: celsius('freezer_F'),
      clearance: input(it, 'clearance') * INCH,
    });

    expect(Math.abs((heat / 1000) * 1.8 + 32 - it.expected)).toBeLessThanOrEqual(it.tolerance);
  });

  it('at that heat the hole is larger than the part by just the room wanted (property of the equation)', () => {
    const heat = dropInTemperature(seat);
    const hole = seat.hole + growthOf(seat.hole, seat.alphaHole, heat - seat.room);
    const part = seat.part + growthOf(seat.part, seat.alphaPart, seat.partAt - seat.room);

    expect(Math.abs(hole - part - seat.clearance)).toBeLessThanOrEqual(50);
  });
});

describe('dropInSlopes', () => {
  it('tell how much the heat changes when a size or the chill changes (difference of two answers)', () => {
    const task = {
      hole: 1.625 * INCH,
      part: 1.63 * INCH,
      alphaHole: 21_500,
      alphaPart: 11_400,
      room: 20_000,
      partAt: -78_000,
      clearance: 0.002 * INCH,
    };
    const slopes = dropInSlopes(task);
    const heat = dropInTemperature(task);

    expect(dropInTemperature({ ...task, clearance: task.clearance + 2540 }) - heat).toBeCloseTo(slopes.size * 2540, -1);
    expect(dropInTemperature({ ...task, partAt: task.partAt + 1000 }) - heat).toBeCloseTo(slopes.partAt * 1000, -1);
  });
});

describe('fitWhenWarm', () => {
  it('0.005 in on 1.625 in keeps 0.002374 in when 160 °C warmer, iron seat in aluminium (exact mathematics)', () => {
    const hole = 1.625 * INCH;
    const left = fitWhenWarm({ hole, part: 1.63 * INCH, alphaHole: 21_500, alphaPart: 11_400 }, 160_000);

    expect(Math.abs(left / INCH - 0.002_374)).toBeLessThanOrEqual(1e-6);
  });

  it('keeps its fit where both metals grow alike (exact mathematics)', () => {
    const fit = { hole: INCH, part: INCH + 50_800, alphaHole: 11_400, alphaPart: 11_400 };

    expect(fitWhenWarm(fit, 160_000)).toBe(50_800);
  });
});
