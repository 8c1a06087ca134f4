import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { asFarAsRead, least, most, readPoints, unlessEmpty } from '#core/readings/compute/formulas/points.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { cylinderOf, inch, wornBlock } from '#tests/kit/worn-block.ts';

const three = cylinderOf('3');
const lookAt = (facts = wornBlock()) => openBench(facts).look({ spot: three, stage: 'before' });
const OPTIONAL = ['up-x'];

describe('readPoints', () => {
  it('lists what was read in the order of the points, and what is missing in words', () => {
    const facts = wornBlock({
      readings: [
        readingOf('bore', '3.9560', 'in', { spot: three.id, point: 'mid-x', stage: 'before' }),
        readingOf('bore', '3.9570', 'in', { spot: three.id, point: 'top-x', stage: 'before' }),
      ],
    });
    const { read, missing } = readPoints(lookAt(facts), 'bore', OPTIONAL);

    expect(read.map((it) => it.code)).toEqual(['top-x', 'mid-x']);
    expect(missing[0]).toBe('thrust, bottom');
    expect(missing).not.toContain('thrust, a quarter down');
    expect([most(read)?.value, least(read)?.value]).toEqual([inch('3.9570'), inch('3.9560')]);
    expect([most([]), least([])]).toEqual([undefined, undefined]);
  });
});

describe('asFarAsRead', () => {
  const limits = [limitOf('bore-taper', 'in', { low: '0', high: '0.005', stage: 'before' })];
  const known = (typed: string) => ({ value: inch(typed), uncertainty: null, marks: [], planned: false });
  const look = lookAt(wornBlock({ limits }));

  it('leaves a complete figure as it is', () => {
    expect(asFarAsRead(look, 'bore-taper', known('0.004'), [])).toEqual(known('0.004'));
    expect(asFarAsRead(look, 'bore-taper', null, [])).toBeNull();
  });

  it('says an incomplete one only past a limit', () => {
    expect(asFarAsRead(look, 'bore-taper', known('0.0050'), ['top'])?.value).toBeNull();
    expect(asFarAsRead(look, 'bore-taper', known('0.0051'), ['top'])?.value).toBe(inch('0.0051'));
    expect(asFarAsRead(look, 'bore-taper', known('-0.0001'), ['top'])?.value).toBe(inch('-0.0001'));
    expect(asFarAsRead(look, 'bore-wear', known('9'), ['top'])?.value).toBeNull();
  });
});

describe('unlessEmpty', () => {
  it('is nothing where nothing was read', () => {
    expect(
      unlessEmpty({ read: [], missing: ['top'] }, () => ({ value: 1, uncertainty: null, marks: [], planned: false })),
    ).toBeNull();
  });
});
