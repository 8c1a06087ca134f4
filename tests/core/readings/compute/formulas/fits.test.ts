import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { FIT_FORMULAS } from '#core/readings/compute/formulas/fits.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { castingWith, lookAt, spotOf, type Typed } from '#tests/kit/look-at.ts';

const inch = (text: string) => measureOf(text, 'in');
const valve = spotOf('valve', 1, '1E', { side: 'E', cylinder: 1 });
const cylinder = spotOf('cylinder', 2, '1', { cylinder: 1 });
const seat: readonly Typed[] = [
  ['counterbore-id', '1.6250', 'in', { stage: 'before' }],
  ['insert-od', '1.6300', 'in', { stage: 'before' }],
  ['insert-metal', 'grey iron', null],
  ['room-temperature', '20', 'degC'],
  ['drop-in-clearance', '0.002', 'in'],
];
const chilled: Typed = ['insert-chilled', '-78', 'degC'];
const at = (readings: readonly Typed[], quantity: string, more: Parameters<typeof castingWith>[1] = {}) => {
  const spot = more.spot ?? valve;
  return lookAt(castingWith(readings, { spot, material: 'aluminium', ...more }), quantity, spot);
};

describe('FIT_FORMULAS', () => {
  it('heat for an insert from dry ice: 168.4 °C, with the metals it was worked out for (exact mathematics)', () => {
    const heat = at([...seat, chilled], 'insert-heat');

    expect(Math.abs((heat?.value ?? 0) / 1000 - 168.4)).toBeLessThanOrEqual(0.5);
    expect(heat?.marks.join()).toContain('aluminium (casting alloy 356) 21.5, grey iron 11.4');
  });

  it('says that an insert was not chilled, and wants 220.4 °C then (exact mathematics)', () => {
    const heat = at(seat, 'insert-heat');

    expect(Math.abs((heat?.value ?? 0) / 1000 - 220.4)).toBeLessThanOrEqual(0.5);
    expect(heat?.marks).toContain('insert not chilled');
  });

  it('is too hot for aluminium above 200 °C and has no such limit for iron (common practice, no source)', () => {
    const verdict = (readings: readonly Typed[], material: string) => {
      const limits = [limitOf('heat-aluminium', 'degC', { high: '200', forWhat: 'shop' })];
      const bench = openBench(castingWith(readings, { spot: valve, material, limits }));
      return bench.verdict('insert-heat', 'after', 'E', bench.known('insert-heat', valve, null, 'after')).name;
    };

    expect(verdict(seat, 'aluminium')).toBe('fail');
    expect(verdict([...seat, chilled], 'aluminium')).toBe('pass');
    expect(verdict(seat, 'iron_grey')).toBe('no limit known');
  });

  it('takes room and clearance from the sheet where nobody measured them, and says so', () => {
    const limits = [
      limitOf('room-temperature', 'degC', { target: '20' }),
      limitOf('drop-in-clearance', 'in', { target: '0.002' }),
    ];
    const heat = at(seat.slice(0, 3), 'insert-heat', { limits });

    expect(Math.abs((heat?.value ?? 0) / 1000 - 220.4)).toBeLessThanOrEqual(0.5);
    expect(heat?.marks).toContain('room temperature from the sheet');
  });

  it('says what is missing instead of guessing: metal of the casting, metal of the part, room', () => {
    const why = (readings: readonly Typed[], material = 'aluminium') =>
      at(readings, 'insert-heat', { material })?.marks[0];

    expect(at(seat.slice(0, 1), 'insert-heat')).toBeNull();
    expect(why(seat, 'not_known')).toBe('metal of the casting not known');
    expect(why(seat.filter(([it]) => it !== 'insert-metal'))).toBe('choose the metal of the inserts');
    expect(why(seat.filter(([it]) => it !== 'room-temperature'))).toContain('measure the room');
    expect(why(seat.filter(([it]) => it !== 'drop-in-clearance'))).toContain('how much clearance');
  });

  it('needs no heat for a part that is loose anyway: the room’s temperature, and the words for it', () => {
    const loose: readonly Typed[] = [['insert-od', '1.6200', 'in', { stage: 'before' }]];
    const heat = at([...seat.filter(([it]) => it !== 'insert-od'), ...loose], 'insert-heat');

    expect(heat).toMatchObject({ value: 20_000 });
    expect(heat?.marks).toContain('goes in without heat');
  });

  it('doubt of the sizes becomes doubt of the heat: 0.0002 and 0.0001 in are 6.4 °C on this seat (exact mathematics)', () => {
    const tools = [inch('0.0002'), inch('0.0001'), 0, 0].map((uncertainty, index) => ({
      id: (index + 1) as never,
      name: `G${index}`,
      kind: 'gauge',
      serial: null,
      workCentre: null,
      unit: 'in' as const,
      uncertainty,
      uncertaintyBp: null,
      nextDue: null,
      overdue: false,
      retired: false,
    }));
    const named = seat.map(([code, typed, unit, more], index): Typed => {
      const tool = (unit === null ? null : index === 0 ? 1 : index === 1 ? 2 : 3) as never;
      return [code, typed, unit, { ...more, tool }];
    });

    expect((at(named, 'insert-heat', { tools })?.uncertainty ?? 0) / 1000).toBeCloseTo(6.4, 1);
  });

  it('what is left hot: 0.0024 in at 180 °C in aluminium; in grey iron all of the 0.005 in (exact mathematics)', () => {
    const warm: Typed = ['running-temperature', '180', 'degC'];
    const left = (material: string) => at([...seat, warm], 'insert-fit-hot', { material })?.value ?? 0;

    expect(Math.abs(left('aluminium') / 25_400_000 - 0.002_374)).toBeLessThanOrEqual(1e-6);
    expect(left('iron_grey')).toBe(inch('0.005'));
    expect(at(seat, 'insert-fit-hot')?.marks).toEqual(['say how warm the casting runs']);
  });

  it('the hottest place decides for the whole casting: it is heated once', () => {
    const other = spotOf('valve', 3, '1I', { side: 'I' });
    const facts = castingWith(seat, { spot: valve, material: 'aluminium', spots: [valve, other] });
    const tighter: readonly Typed[] = [
      ['counterbore-id', '1.6250', 'in', { stage: 'before', spot: other.id }],
      ['insert-od', '1.6310', 'in', { stage: 'before', spot: other.id }],
    ];
    const both = { ...facts, readings: [...facts.readings, ...castingWith(tighter).readings] };

    expect(lookAt(both, 'insert-heat-most')?.value).toBe(lookAt(both, 'insert-heat', other)?.value);
    expect(lookAt(both, 'insert-heat-most')?.value).toBeGreaterThan(lookAt(both, 'insert-heat', valve)?.value ?? 0);
  });

  it('range of an insert from its sheet: 0.002 to 0.004 in (TM 5-6115-400-35, Table 2.1)', () => {
    const limits = [
      limitOf('insert-od', 'in', { low: '1.6445', high: '1.6455' }),
      limitOf('counterbore-id', 'in', { low: '1.6415', high: '1.6425' }),
    ];

    expect(at([], 'insert-tightest', { limits })).toMatchObject({
      value: inch('0.004'),
      marks: ['from the sizes of the sheet: interference'],
    });
    expect(at([], 'insert-loosest', { limits })?.value).toBe(inch('0.002'));
    expect(at([], 'insert-loosest', { limits: limits.slice(1) })).toBeNull();
  });

  it('range of a guide from its sheet: 0.0011 to 0.0026 in (TM 9-6115-604-34, Table 1-4)', () => {
    const limits = [
      limitOf('guide-bore-in-head', 'in', { low: '0.8435', high: '0.8445' }),
      limitOf('guide-od', 'in', { low: '0.8456', high: '0.8461' }),
    ];

    expect(at([], 'guide-tightest', { limits })?.value).toBe(inch('0.0026'));
    expect(at([], 'guide-loosest', { limits })?.value).toBe(inch('0.0011'));
  });

  it('range of a sleeve and of a core plug from their sheets (exact arithmetic)', () => {
    const bands = (hole: string, part: string) => [
      limitOf(hole, 'in', { low: '1.5000', high: '1.5010' }),
      limitOf(part, 'in', { low: '1.5020', high: '1.5025' }),
    ];
    const ends = (code: string, limits: ReturnType<typeof bands>, spot: typeof cylinder | null) =>
      ['tightest', 'loosest'].map((end) => lookAt(castingWith([], { limits, spot }), `${code}-${end}`, spot)?.value);
    const wanted = [inch('0.0025'), inch('0.0010')];

    expect(ends('sleeve', bands('sleeve-hole', 'sleeve-od'), cylinder)).toEqual(wanted);
    expect(ends('plug', bands('plug-hole', 'plug-od'), null)).toEqual(wanted);
  });

  it('cuts the hole as much under the insert as its fit aims at: 0.0035 in (TM 5-1185), else the middle of the limits', () => {
    const od: Typed = ['insert-od', '1.6300', 'in', { stage: 'before' }];
    const aim = (words: Parameters<typeof limitOf>[2]) => [limitOf('insert-interference', 'in', words)];

    expect(at([od], 'counterbore-wanted', { limits: aim({ target: '0.0035' }) })).toMatchObject({
      value: inch('1.6265'),
      marks: ['fit of the sheet'],
    });
    expect(at([od], 'counterbore-wanted', { limits: aim({ low: '0.002', high: '0.004' }) })).toMatchObject({
      value: inch('1.6270'),
      marks: ['middle of the fit'],
    });
    expect(at([od], 'counterbore-wanted')?.marks).toEqual(['no fit known to aim at']);
  });

  it('a guide’s hole likewise', () => {
    const limits = [limitOf('guide-interference', 'in', { target: '0.0010' })];

    expect(at([['guide-od', '0.5000', 'in']], 'guide-hole-wanted', { limits })?.value).toBe(inch('0.4990'));
  });

  it('an insert marked 0.010 oversize measures 2.0125 to 2.0135 in; another size is not the one on the box (TM 5-3810-295-34)', () => {
    const limits = [limitOf('insert-od', 'in', { low: '2.0025', high: '2.0035' })];
    const off = (size: string) =>
      at(
        [
          ['insert-od', size, 'in'],
          ['insert-oversize', '0.010', 'in'],
        ],
        'insert-size-off',
        { limits },
      )?.value;

    expect([off('2.0125'), off('2.0135'), off('2.0030'), off('2.0145')]).toEqual([
      0,
      0,
      inch('-0.0095'),
      inch('0.0010'),
    ]);
  });

  it('a sleeve and a core plug are as tight as they are larger than their holes (exact arithmetic)', () => {
    const sleeve: readonly Typed[] = [
      ['sleeve-hole', '4.1250', 'in'],
      ['sleeve-od', '4.1265', 'in'],
    ];

    expect(at(sleeve, 'sleeve-fit', { spot: cylinder })?.value).toBe(inch('0.0015'));
    expect(at([...sleeve, ['sleeve-fit', '0.0018', 'in']], 'sleeve-fit', { spot: cylinder })?.value).toBe(
      inch('0.0018'),
    );
    const facts = castingWith([
      ['plug-hole', '1.5000', 'in'],
      ['plug-od', '1.5080', 'in'],
    ]);
    expect(lookAt(facts, 'plug-interference')?.value).toBe(inch('0.0080'));
  });

  it('heat and hot fit of a guide and a sleeve follow the same rule (bronze 18.0e-6: materials textbook, Table B.6)', () => {
    const guide: readonly Typed[] = [
      ['guide-bore-in-head', '0.5000', 'in'],
      ['guide-od', '0.5015', 'in'],
      ['guide-metal', 'bronze', null],
      ['room-temperature', '20', 'degC'],
      ['drop-in-clearance', '0.001', 'in'],
      ['running-temperature', '120', 'degC'],
    ];
    const sleeve: readonly Typed[] = [
      ['sleeve-hole', '4.0000', 'in'],
      ['sleeve-od', '4.0020', 'in'],
      ['sleeve-metal', 'grey iron', null],
      ...guide.slice(3),
    ];

    // 0.0025 / (21.5e-6 x 0.5) = 232.6 above 20; 0.0015 - 3.5e-6 x 0.5 x 100 = 0.001325.
    expect((at(guide, 'guide-heat')?.value ?? 0) / 1000).toBeCloseTo(252.56, 1);
    expect(Math.abs((at(guide, 'guide-fit-hot')?.value ?? 0) - 0.001_325 * 25_400_000)).toBeLessThanOrEqual(1);
    // 0.003 / (11.4e-6 x 4) = 65.8 above 20.
    expect((at(sleeve, 'sleeve-heat', { spot: cylinder, material: 'iron_grey' })?.value ?? 0) / 1000).toBeCloseTo(
      85.79,
      1,
    );
    expect(at(sleeve, 'sleeve-fit-hot', { spot: cylinder, material: 'iron_grey' })?.value).toBe(inch('0.0020'));
  });

  it('10 °C warm an aluminium bore of 3.98 in reads 0.00086 in too big, an iron one 0.00045 (exact mathematics)', () => {
    const warm: readonly Typed[] = [
      ['part-temperature', '30', 'degC'],
      ['bore', '3.9800', 'in', { point: 'mid-x' }],
    ];
    const error = (material: string) => (at(warm, 'bore-warm', { spot: cylinder, material })?.value ?? 0) / 25_400_000;

    expect(error('aluminium')).toBeCloseTo(0.000_86, 5);
    expect(error('iron_grey')).toBeCloseTo(0.000_45, 5);
    expect(error('iron_grey') / 3.98).toBeCloseTo(
      (lookAt(castingWith(warm.slice(0, 1)), 'warm-inch')?.value ?? 0) / 25_400_000,
      6,
    );
  });

  it('has no answer for a bore of a metal that is not known, and reads nothing into an empty cell', () => {
    const warm: readonly Typed[] = [['part-temperature', '30', 'degC'], ...seat.slice(0, 1)];

    expect(at(warm, 'counterbore-warm', { material: 'other' })).toMatchObject({ value: null });
    expect(at(seat.slice(0, 1), 'counterbore-warm')).toBeNull();
    expect(at(warm, 'counterbore-warm')?.value).toBeGreaterThan(0);
    expect(Object.keys(FIT_FORMULAS).length).toBeGreaterThan(15);
  });
});
