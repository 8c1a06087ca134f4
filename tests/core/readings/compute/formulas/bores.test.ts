import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Facts, Reading } from '#core/readings/compute/model.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { CYLINDERS, cylinderOf, inch, knownAt, mm, sixOf, WORN, wornBlock } from '#tests/kit/worn-block.ts';
import reference from '#tests/reference/worn-block.json' with { type: 'json' };

const three = cylinderOf('3');
const before = { spot: three, stage: 'before' } as const;
const after = { spot: three, stage: 'after' } as const;
const without = (...points: readonly string[]): readonly Reading[] =>
  WORN.filter((it) => it.spot !== three.id || !points.includes(it.point ?? ''));
const at = (quantity: string, words: Partial<Facts> = {}, place: Parameters<typeof knownAt>[2] = before) =>
  knownAt(wornBlock(words), quantity, place);
const here = (quantity: string, typed: string, more: Partial<Reading> = {}) =>
  readingOf(quantity, typed, 'in', { spot: three.id, ...more });

describe('taper, out of round and wear', () => {
  it.each(reference.cases)(
    'cylinder $cylinder of the worn block: $taper, $out_of_round, $wear (exact mathematics)',
    (it) => {
      const place = { spot: cylinderOf(it.cylinder), stage: 'before' } as const;

      expect(at('bore-taper', {}, place)?.value).toBe(inch(it.taper));
      expect(at('bore-out-of-round', {}, place)?.value).toBe(inch(it.out_of_round));
      expect(at('bore-wear', {}, place)?.value).toBe(inch(it.wear));
    },
  );

  it('a barrel shows in the full taper and not in the simple one (exact mathematics)', () => {
    const barrel = sixOf(three, ['3.9500', '3.9530', '3.9500', '3.9500', '3.9510', '3.9500']);

    expect(at('bore-taper', { readings: barrel })?.value).toBe(inch('0.0030'));
    expect(at('bore-taper-simple', { readings: barrel })?.value).toBe(0);
  });

  it('a bore that is larger below has a simple taper below zero (exact mathematics)', () => {
    const bell = sixOf(three, ['3.9500', '3.9501', '3.9504', '3.9500', '3.9501', '3.9503']);

    expect(at('bore-taper-simple', { readings: bell })?.value).toBe(inch('-0.0003'));
  });

  it('says which reading is the largest', () => {
    expect(at('bore-largest')).toMatchObject({ value: inch('3.9572'), marks: ['thrust, top'] });
  });

  it('wear counts from the last boring, else from the limit, else from the nominal bore of the engine', () => {
    const present = readingOf('bore-present', '3.9560', 'in', { stage: 'before' });
    const engine = {
      words: 'V8',
      cylinders: 8,
      layout: 'v',
      bankLean: null,
      faceLean: null,
      bore: inch('3.9490'),
      stroke: null,
    } as const;

    expect(at('bore-wear', { readings: [...WORN, present] })?.value).toBe(inch('0.0012'));
    expect(at('bore-wear', { limits: [], engine })?.value).toBe(inch('0.0082'));
    expect(at('bore-wear', { limits: [] })).toBeNull();
  });

  it('more levels and axes count when they were read (common practice, no source)', () => {
    const more = [
      here('bore', '3.9580', { point: 'up-x', stage: 'before' }),
      here('bore', '3.9500', { point: 'top-a', stage: 'before' }),
    ];

    expect(at('bore-largest', { readings: [...WORN, ...more] })?.marks).toEqual(['thrust, a quarter down']);
    expect(at('bore-taper', { readings: [...WORN, ...more] })?.value).toBe(inch('0.0066'));
    expect(at('bore-out-of-round', { readings: [...WORN, ...more] })?.value).toBe(inch('0.0072'));
  });

  it('swapping the axes leaves out of round, taper and wear as they are (property)', () => {
    const size = fc.integer({ min: 39_500, max: 39_600 }).map((it) => (it / 10_000).toFixed(4));

    fc.assert(
      fc.property(fc.array(size, { minLength: 6, maxLength: 6 }), (sizes) => {
        const swapped = [...sizes.slice(3), ...sizes.slice(0, 3)];
        for (const quantity of ['bore-taper', 'bore-taper-simple', 'bore-out-of-round', 'bore-wear']) {
          const value = (it: readonly string[]) => at(quantity, { readings: sixOf(three, it) })?.value;

          expect(value(swapped)).toBe(value(sizes));
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('a bore that is not all read', () => {
  it('has no taper, out of round or wear, and says what is missing', () => {
    for (const quantity of ['bore-taper', 'bore-out-of-round', 'bore-wear', 'bore-largest']) {
      expect(at(quantity, { readings: without('bot-y') })).toMatchObject({
        value: null,
        marks: ['not measured: pin axis, bottom'],
      });
    }
  });

  it('fails all the same when it is past the limit already', () => {
    const limits = [limitOf('bore-taper', 'in', { high: '0.0050', stage: 'before' })];
    const facts = wornBlock({ readings: without('bot-y'), limits });
    const bench = openBench(facts);
    const known = bench.known('bore-taper', three, null, 'before');

    expect(known).toMatchObject({ value: inch('0.0058') });
    expect(known?.marks[0]).toContain('at least this much');
    expect(bench.verdict('bore-taper', 'before', null, known).name).toBe('fail');
    expect(knownAt({ ...facts, readings: without('bot-x', 'bot-y') }, 'bore-taper', before)?.value).toBeNull();
  });

  it('is complete where a person said that a place is not to be measured', () => {
    const dash = readingOf('bore', 'not applicable', null, {
      spot: three.id,
      point: 'bot-y',
      stage: 'before',
      kind: 'not_applicable',
    });

    expect(at('bore-taper', { readings: [...without('bot-y'), dash] })?.value).toBe(inch('0.0058'));
  });

  it('is empty where nothing was read', () => {
    expect(at('bore-taper', { readings: [] })).toBeNull();
    expect(at('bore-wear', { readings: [] })).toBeNull();
  });
});

describe('after honing', () => {
  const wanted = here('bore-wanted', '3.9700', { stage: 'before' });
  const honed = sixOf(three, ['3.9701', '3.9700', '3.9699', '3.9703', '3.9702', '3.9698'], 'after');

  it('the error is that of the reading farthest from the size wanted (exact mathematics)', () => {
    expect(at('bore-error', { readings: [wanted, ...honed] }, after)).toMatchObject({
      value: inch('0.0003'),
      marks: ['pin axis, top'],
    });
    expect(at('bore-error', { readings: honed }, after)).toBeNull();
    expect(at('bore-taper', { readings: honed }, after)?.value).toBe(inch('0.0005'));
  });

  it('within 0.0005 in passes, past it fails (common practice, no source)', () => {
    const limits = [limitOf('bore-error', 'in', { low: '-0.0005', high: '0.0005' })];
    const verdict = (typed: string) => {
      const sizes = ['3.9700', '3.9700', '3.9700', '3.9700', '3.9700', typed];
      const bench = openBench(wornBlock({ limits, readings: [wanted, ...sixOf(three, sizes, 'after')] }));
      return bench.verdict('bore-error', 'after', null, bench.known('bore-error', three, null, 'after'));
    };

    expect(verdict('3.9705').name).toBe('pass');
    expect(verdict('3.9706')).toMatchObject({ name: 'fail', direction: 'over' });
    expect(verdict('3.9694')).toMatchObject({ name: 'fail', direction: 'under' });
  });

  it('piston clearance is taken where the piston is gauged, else half way down (exact mathematics)', () => {
    const piston = here('piston-size', '3.9675', { stage: 'before' });
    const gauged = here('bore', '3.9701', { point: 'gauge-x', stage: 'after' });

    expect(at('piston-clearance', { readings: [...honed, piston] }, after)?.value).toBe(inch('0.0025'));
    expect(at('piston-clearance', { readings: [...honed, piston, gauged] }, after)?.value).toBe(inch('0.0026'));
    expect(at('piston-clearance', { readings: honed }, after)).toBeNull();
  });

  it('every cylinder has its own piston (exact mathematics)', () => {
    const pistons = CYLINDERS.map((spot, index) =>
      readingOf('piston-size', `3.967${index}`, 'in', { spot: spot.id, stage: 'before' }),
    );
    const bores = CYLINDERS.flatMap((spot) => sixOf(spot, Array(6).fill('3.9700'), 'after'));
    const facts = wornBlock({ readings: [...pistons, ...bores] });

    expect(CYLINDERS.map((spot) => knownAt(facts, 'piston-clearance', { spot })?.value)).toEqual(
      CYLINDERS.map((_, index) => inch('0.0030') - index * inch('0.0001')),
    );
  });
});

describe('wall left', () => {
  const wall = here('wall-thickness', '0.205', { stage: 'before' });
  const wanted = here('bore-wanted', '3.9800', { stage: 'before' });

  it('0.205 less half of 0.030 is 0.190 in (exact mathematics)', () => {
    expect(at('wall-left', { readings: [wall, wanted] })).toMatchObject({
      value: inch('0.190'),
      marks: ['bored on its own centre'],
    });
  });

  it('a bar off its centre takes that much more from one side (exact mathematics)', () => {
    const shift = here('centre-shift', '0.004', { stage: 'before' });

    expect(at('wall-left', { readings: [wall, wanted, shift] })).toMatchObject({ value: inch('0.186'), marks: [] });
    expect(at('wall-left', { readings: [wall] })).toBeNull();
  });

  it('is judged by the least wall: 0.120 of at least 0.125 fails (trade article on ultrasonic inspection)', () => {
    const limits = [
      limitOf('bore', 'in', { target: '3.9500', stage: 'before' }),
      limitOf('wall-thickness', 'in', { low: '0.125', stage: 'before' }),
    ];
    const thin = here('wall-thickness', '0.135', { stage: 'before' });
    const bench = openBench(wornBlock({ limits, readings: [thin, wanted] }));
    const known = bench.known('wall-left', three, null, 'before');

    expect(known?.value).toBe(inch('0.120'));
    expect(bench.verdict('wall-left', 'before', null, known).name).toBe('fail');
  });
});

describe('crosshatch', () => {
  it('4.00 in bore, 155 turns, 60 full strokes of 5 in: 34.24 degrees included (exact mathematics)', () => {
    const readings = [
      readingOf('hone-speed', '155', 'count'),
      readingOf('hone-strokes', '60', 'count'),
      readingOf('hone-stroke', '5.0', 'in'),
      here('bore-wanted', '4.0000', { stage: 'before' }),
    ];

    expect(at('crosshatch', { readings }, after)?.value).toBeCloseTo(34.24e6, -4.7);
    expect(at('crosshatch', { readings: readings.slice(1) }, after)).toBeNull();
  });

  it('an angle that was measured stands instead', () => {
    const angle = readingOf('crosshatch', '42', 'deg', { spot: three.id });

    expect(at('crosshatch', { readings: [angle] }, after)?.value).toBe(42_000_000);
  });
});

describe('ring gaps', () => {
  const wanted = here('bore-wanted', '3.980', { stage: 'before' });
  const factor = readingOf('ring-factor-top', '0.004', 'ratio');

  it('3.980 times 0.004 wants 0.01592 in (web trade text)', () => {
    expect(at('ring-wanted-top', { readings: [wanted, factor] }, after)?.value).toBe(inch('0.01592'));
  });

  it('the gap to spare is the measured one less the one wanted (exact mathematics)', () => {
    const gap = here('ring-gap-top', '0.0180');

    expect(at('ring-spare-top', { readings: [wanted, factor, gap] }, after)?.value).toBe(inch('0.00208'));
    expect(at('ring-spare-top', { readings: [wanted, factor] }, after)).toBeNull();
  });

  it('a bore worn by 0.0072 opens the gap by 0.0226 in: pi times the wear (exact mathematics)', () => {
    expect(at('ring-growth')?.value).toBe(Math.round(Math.PI * inch('0.0072')));
  });

  it('without a factor or a bore there is none', () => {
    expect(at('ring-wanted-top', { readings: [wanted] }, after)).toBeNull();
    expect(at('ring-wanted-second', { readings: [factor], limits: [] }, after)).toBeNull();
    expect(mm('1')).toBe(1_000_000);
  });
});
