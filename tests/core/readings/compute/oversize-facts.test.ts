import { describe, expect, it } from 'vitest';
import { STANDARD } from '#core/catalogue/compute/oversizes.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import {
  boreFactsOf,
  cylindersOf,
  pistonOf,
  pistonsByCylinder,
  readBoreAt,
  sourcedFigures,
} from '#core/readings/compute/oversize-facts.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { BORING_LIMITS, CYLINDERS, cylinderOf, inch, wornBlock } from '#tests/kit/worn-block.ts';

const engine = {
  words: 'V8',
  cylinders: 8,
  layout: 'v',
  bankLean: null,
  faceLean: null,
  bore: inch('3.9490'),
  stroke: null,
} as const;

describe('sourcedFigures', () => {
  it('a figure typed at the bench goes before the one of a sheet, and says who typed it', () => {
    const typed = readingOf('hone-allowance', '0.003', 'in', { stage: 'before' });
    const figures = sourcedFigures(openBench(wornBlock({ readings: [typed] })));

    expect(figures.find((it) => it.quantity === 'hone-allowance')).toMatchObject({
      value: inch('0.003'),
      source: 'typed by TV',
    });
    expect(figures.find((it) => it.quantity === 'clean-up')?.source).toBe('casting type sheet');
  });

  it('a figure that nobody checked says so', () => {
    const limits = [limitOf('clean-up', 'in', { target: '0.0010', checked: false })];
    const figures = sourcedFigures(openBench(wornBlock({ limits })));

    expect(figures.find((it) => it.quantity === 'clean-up')?.source).toBe('casting type sheet, not checked');
  });

  it('the standard bore is that of the limit, else the nominal one of the engine', () => {
    const standard = (limits: typeof BORING_LIMITS) =>
      sourcedFigures(openBench(wornBlock({ limits, engine })))[0]?.value;

    expect(standard(BORING_LIMITS)).toBe(inch('3.9500'));
    expect(standard([])).toBe(inch('3.9490'));
  });
});

describe('boreFactsOf', () => {
  it('wear starts where the bore was last bored to, pistons count from standard', () => {
    const present = readingOf('bore-present', '3.9600', 'in', { stage: 'before' });
    const bench = openBench(wornBlock({ readings: [present] }));

    expect(boreFactsOf(bench, sourcedFigures(bench))).toMatchObject({
      standard: inch('3.9500'),
      start: inch('3.9600'),
    });
  });

  it('is nothing without a standard bore', () => {
    const bench = openBench(wornBlock({ limits: [] }));

    expect(boreFactsOf(bench, sourcedFigures(bench))).toBeNull();
  });
});

describe('readBoreAt', () => {
  it('has the largest reading with its place, and what is missing', () => {
    const bench = openBench(wornBlock());

    expect(readBoreAt(bench, cylinderOf('3'))).toMatchObject({ reach: inch('3.9572'), at: 'thrust, top', missing: [] });
    expect(readBoreAt(openBench(wornBlock({ readings: [] })), cylinderOf('3')).missing).toHaveLength(6);
  });
});

describe('pistonOf', () => {
  const facts = { standard: inch('3.9500'), clearance: inch('0.0025') };

  it('without a measured set the nominal size counts, marked so', () => {
    const bench = openBench(wornBlock({ readings: [] }));

    expect(pistonOf(bench, STANDARD, facts, null)).toEqual({
      size: inch('3.9475'),
      measured: false,
      made: true,
      words: 'not measured',
    });
    expect(pistonOf(bench, STANDARD, { ...facts, clearance: null }, null).size).toBeNull();
  });

  it('a set that lies between two sizes belongs to neither', () => {
    const bench = openBench(wornBlock({ readings: [] }));

    expect(pistonOf(bench, STANDARD, facts, inch('3.9525')).measured).toBe(false);
    expect(pistonOf(bench, STANDARD, facts, inch('3.9500')).measured).toBe(true);
  });
});

describe('pistonsByCylinder', () => {
  it('is the largest and how far the set lies apart; nothing for none', () => {
    const sizes = ['3.9670', '3.9676'].map((typed, index) =>
      readingOf('piston-size', typed, 'in', { spot: CYLINDERS[index]?.id ?? null }),
    );

    expect(pistonsByCylinder(openBench(wornBlock({ readings: sizes })), CYLINDERS)).toEqual({
      largest: inch('3.9676'),
      apart: inch('0.0006'),
    });
    expect(pistonsByCylinder(openBench(wornBlock({ readings: [] })), CYLINDERS)).toBeNull();
  });
});

describe('cylindersOf', () => {
  it('are those asked for, or all, in bench order', () => {
    const bench = openBench(wornBlock({ spots: CYLINDERS.toReversed() }));

    expect(
      cylindersOf(bench, null)
        .map((it) => it.label)
        .join(''),
    ).toBe('12345678');
    expect(cylindersOf(bench, [cylinderOf('4').id]).map((it) => it.label)).toEqual(['4']);
  });
});
