import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Facts, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { knownAt, mm, placesOf } from '#tests/kit/worn-block.ts';

const LINERS = placesOf('cylinder', 4);
const one = LINERS[0] as Spot;
const two = LINERS[1] as Spot;
const PLACES = ['front', 'rear', 'left', 'right'];
const block = (words: Partial<Facts> = {}): Facts => factsOf({ spots: LINERS, system: 'metric', ...words });
const round = (
  quantity: string,
  spot: Spot,
  sizes: readonly string[],
  stage: 'before' | 'after' = 'after',
): Reading[] =>
  PLACES.flatMap((point, index) => {
    const typed = sizes[index];
    return typed ? [readingOf(quantity, typed, 'mm', { spot: spot.id, point, stage })] : [];
  });
const band = limitOf('liner-protrusion', 'mm', { low: '0.03', high: '0.10' });

describe('liner protrusion', () => {
  it('the place that decides is the farthest past a limit, else the nearest to one (common practice, no source)', () => {
    const worst = (...sizes: string[]) =>
      knownAt(block({ limits: [band], readings: round('liner-place', one, sizes) }), 'liner-protrusion', { spot: one });

    expect(worst('0.060', '0.050', '0.098', '0.060')).toMatchObject({
      value: mm('0.098'),
      marks: ['worst at the left'],
    });
    expect(worst('0.060', '0.025', '0.098', '0.060')).toMatchObject({
      value: mm('0.025'),
      marks: ['worst at the rear'],
    });
  });

  it('without limits it is the lowest place', () => {
    const facts = block({ readings: round('liner-place', one, ['0.060', '0.050', '0.098', '0.060']) });

    expect(knownAt(facts, 'liner-protrusion', { spot: one })?.value).toBe(mm('0.050'));
  });

  it('is not known before all four were read, unless one is past a limit', () => {
    const at = (...sizes: string[]) =>
      knownAt(block({ limits: [band], readings: round('liner-place', one, sizes) }), 'liner-protrusion', { spot: one });

    expect(at('0.060', '0.050', '0.098')).toMatchObject({ value: null, marks: ['not measured: right'] });
    expect(at('0.060', '0.020')?.value).toBe(mm('0.020'));
    expect(at()).toBeNull();
  });

  it('one figure for a liner may be typed instead', () => {
    const typed = readingOf('liner-protrusion', '0.070', 'mm', { spot: one.id });

    expect(knownAt(block({ readings: [typed] }), 'liner-protrusion', { spot: one })?.value).toBe(mm('0.070'));
  });

  it('each place is judged by the limits of the liner', () => {
    const bench = openBench(block({ limits: [band], readings: round('liner-place', one, ['0.110']) }));

    expect(bench.verdict('liner-place', 'after', null, bench.known('liner-place', one, 'front', 'after')).name).toBe(
      'fail',
    );
  });

  it('out of level is the highest less the lowest (exact mathematics)', () => {
    const facts = block({ readings: round('liner-place', one, ['0.060', '0.050', '0.098', '0.060']) });

    expect(knownAt(facts, 'liner-level', { spot: one })?.value).toBe(mm('0.048'));
  });
});

describe('liners under one head', () => {
  const stand = (spot: Spot, typed: string) => readingOf('liner-protrusion', typed, 'mm', { spot: spot.id });
  const all = (...typed: string[]) => typed.map((text, index) => stand(LINERS[index] as Spot, text));

  it('the spread is the greatest difference to another liner (exact mathematics)', () => {
    const facts = block({ readings: all('0.050', '0.060', '0.080', '0.055') });
    const spread = LINERS.map((spot) => knownAt(facts, 'liner-spread', { spot }));

    expect(spread.map((it) => it?.value)).toEqual([mm('0.030'), mm('0.020'), mm('0.030'), mm('0.025')]);
    expect(spread[0]?.marks).toContain('from liner 3');
  });

  it('goes by every place that was read round a liner', () => {
    const facts = block({
      readings: [...round('liner-place', one, ['0.060', '0.050', '0.060', '0.060']), stand(two, '0.080')],
      spots: LINERS.slice(0, 2),
    });

    expect(knownAt(facts, 'liner-spread', { spot: one })?.value).toBe(mm('0.030'));
  });

  it('each bank of a V has a head of its own', () => {
    const spots = LINERS.map((it, index) => ({ ...it, bank: index < 2 ? ('left' as const) : ('right' as const) }));
    const facts = block({ spots, readings: all('0.050', '0.060', '0.090', '0.091') });

    expect(spots.map((spot) => knownAt(facts, 'liner-spread', { spot })?.value)).toEqual([
      mm('0.010'),
      mm('0.010'),
      mm('0.001'),
      mm('0.001'),
    ]);
  });

  it('a liner that was not read is missed', () => {
    const facts = block({ readings: all('0.050', '0.060', '0.080') });

    expect(knownAt(facts, 'liner-spread', { spot: one })).toMatchObject({
      value: null,
      marks: ['not measured: liner 4'],
    });
    expect(knownAt(facts, 'liner-spread', { spot: LINERS[3] as Spot })).toBeNull();
  });
});

describe('ledge of a liner', () => {
  it('flange and shim less the depth is what the liner would stand (exact mathematics)', () => {
    const ledge = round('ledge-place', one, ['9.000', '9.010', '9.005', '9.002'], 'before');
    const limits = [limitOf('liner-flange', 'mm', { target: '9.06' })];
    const facts = block({ readings: ledge, limits });
    const shim = readingOf('liner-shim', '0.020', 'mm', { spot: one.id, stage: 'before' });
    const stands = (it: Facts) => knownAt(it, 'liner-would-stand', { spot: one, stage: 'before' });

    expect(stands(facts)).toMatchObject({ value: mm('0.06'), marks: ['liner flange from the sheet'] });
    expect(stands({ ...facts, readings: [...ledge, shim] })?.value).toBe(mm('0.08'));
    expect(knownAt(facts, 'ledge-level', { spot: one, stage: 'before' })?.value).toBe(mm('0.010'));
    expect(stands(block({ limits }))).toBeNull();
  });
});
