import { describe, expect, it } from 'vitest';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { CAM_BORE_FORMULAS } from '#core/readings/compute/formulas/cam-bores.ts';
import type { Reading } from '#core/readings/compute/model.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { factsOf, limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { lookAt, spotOf } from '#tests/kit/look-at.ts';

const inch = (text: string) => measureOf(text, 'in');
const intake = [1, 2, 3, 4, 5].map((n) => spotOf('cam_journal', n, `JI${n}`, { side: 'I' }));
const exhaust = [1, 2, 3, 4, 5].map((n) =>
  spotOf('cam_journal', n + 5, `JE${n}`, { side: 'E', row: 2, benchOrder: n }),
);
const line = (
  spots: typeof intake,
  figures: readonly string[],
  quantity = 'cam-line-at',
  more: Partial<Reading> = {},
) =>
  figures.flatMap((typed, index) =>
    typed === '' ? [] : [readingOf(quantity, typed, 'in', { spot: spots[index]?.id ?? null, ...more })],
  );
const facts = (readings: readonly Reading[], more: Parameters<typeof factsOf>[0] = {}) =>
  factsOf({ spots: intake, readings, ...more });
const bowed = ['0', '0.0015', '0.0020', '0.0015', '0'];
const straight = ['0', '0.0001', '0', '0.0001', '0'];

describe('CAM_BORE_FORMULAS', () => {
  it('the line of a bow of 0.002 in over five journals is 0.002 in, however the straightedge lay (exact mathematics)', () => {
    const tilted = ['0', '0.0025', '0.0040', '0.0045', '0.0040'];

    expect(lookAt(facts(line(intake, bowed)), 'cam-line')?.value).toBe(inch('0.0020'));
    expect(lookAt(facts(line(intake, tilted)), 'cam-line')?.value).toBe(inch('0.0020'));
  });

  it('takes the worse of two camshafts, and claims nothing good while one is not read', () => {
    const spots = [...intake, ...exhaust];
    const limits = [limitOf('cam-line', 'in', { high: '0.0010' })];
    const read = (...lines: readonly (readonly Reading[])[]) =>
      lookAt(facts(lines.flat(), { spots, limits }), 'cam-line');

    expect(read(line(intake, straight), line(exhaust, bowed))).toMatchObject({
      value: inch('0.0020'),
      marks: ['least zone of 5 of 5 journals', 'journals taken as evenly spaced'],
    });
    expect(read(line(intake, straight))).toMatchObject({ value: null, marks: ['read the line of every camshaft'] });
    expect(read(line(intake, bowed))?.value).toBe(inch('0.0020'));
  });

  it('claims nothing from two journals, and nothing from none', () => {
    expect(lookAt(facts(line(intake, ['0', '0.001'])), 'cam-line')).toMatchObject({
      value: null,
      marks: ['read at least three journals of each camshaft'],
    });
    expect(lookAt(facts([]), 'cam-line')).toBeNull();
  });

  it('a line with a journal left out keeps the place of the others (exact mathematics)', () => {
    const gap = lookAt(facts(line(intake, ['0', '', '0.0020', '', '0.0040'])), 'cam-line');

    expect(gap?.value).toBe(0);
    expect(gap?.marks[0]).toBe('least zone of 3 of 5 journals');
  });

  it('takes the places of the journals where all of them were measured (exact mathematics)', () => {
    const places = line(intake, ['0', '1.0', '4.0'], 'cam-journal-place');
    const known = lookAt(facts([...line(intake, ['0', '0.0030', '0.0040']), ...places]), 'cam-line');

    expect(known?.value).toBe(inch('0.0020'));
    expect(known?.marks).toEqual(['least zone of 3 of 5 journals']);
  });

  it('what a person typed for the line stands', () => {
    const typed = readingOf('cam-line', '0.0035', 'in');

    expect(lookAt(facts([...line(intake, bowed), typed]), 'cam-line')?.value).toBe(inch('0.0035'));
  });

  it('a gauge of 0.0002 in leaves 0.00025 in of doubt at the middle of three (root of the sum of squares)', () => {
    const gauge = toolOf({ uncertainty: inch('0.0002') });
    const read = line(intake.slice(0, 3), ['0', '0.0020', '0'], 'cam-line-at', { tool: gauge.id });
    const doubt = lookAt(facts(read, { tools: [gauge] }), 'cam-line')?.uncertainty ?? 0;

    expect(doubt / 25_400_000).toBeCloseTo(0.0002 * Math.sqrt(1.5), 6);
  });

  it('says where each journal stands: half the zone above or below its middle (exact mathematics)', () => {
    const read = facts(line(intake, ['0', '0.0020', '0']));

    expect(intake.map((spot) => lookAt(read, 'cam-line-off', spot)?.value ?? null)).toEqual([
      inch('-0.0010'),
      inch('0.0010'),
      inch('-0.0010'),
      null,
      null,
    ]);
  });

  it('out of round is the difference of the two axes; the camshaft runs in the larger (exact arithmetic)', () => {
    const [first] = intake;
    const bore = facts([
      ...line(intake, ['1.1820'], 'cam-bore-size'),
      ...line(intake, ['1.1826'], 'cam-bore-across'),
      ...line(intake, ['1.1796'], 'cam-journal-size'),
    ]);

    expect(lookAt(bore, 'cam-bore-round', first)?.value).toBe(inch('0.0006'));
    expect(lookAt(bore, 'cam-bore-clearance', first)?.value).toBe(inch('0.0030'));
    expect(lookAt(facts(line(intake, ['1.1820'], 'cam-bore-size')), 'cam-bore-round', first)).toBeNull();
  });

  it('a cam journal of 2.996 to 2.997 in a bushing of 3.000 to 3.0015 runs with 0.003 to 0.0055 in (TM 9-6115-604-34, Table 1-4)', () => {
    const [first] = intake;
    const runs = (bore: string, journal: string) =>
      lookAt(
        facts([...line(intake, [bore], 'cam-bore-size'), ...line(intake, [journal], 'cam-journal-size')]),
        'cam-bore-clearance',
        first,
      )?.value;

    expect([runs('3.0000', '2.9970'), runs('3.0015', '2.9960')]).toEqual([inch('0.0030'), inch('0.0055')]);
  });

  it('is judged like a figure that was typed: over 0.003 in is too much (common practice, no source)', () => {
    const limits = [limitOf('cam-line', 'in', { high: '0.0030', forWhat: 'shop' })];
    const judged = (figures: readonly string[]) => {
      const bench = openBench(facts(line(intake, figures), { limits }));
      return bench.verdict('cam-line', 'after', null, bench.known('cam-line', null, null, 'after')).name;
    };

    expect([judged(bowed), judged(['0', '0.0031', '0', '0.0031', '0'])]).toEqual(['pass', 'fail']);
  });

  it('each journal’s column says how its own camshaft’s line is judged', () => {
    const limits = [limitOf('cam-line', 'in', { high: '0.0010' })];
    const table = findBenchTable('cam-bores');
    const read = facts([...line(intake, straight), ...line(exhaust, bowed)], {
      spots: [...intake, ...exhaust],
      limits,
    });
    const sheet = table && composeSheet(read, table);
    const columns = sheet?.columns ?? [];

    expect(columns.map((it) => `${it.label} ${it.word}`)).toEqual([
      ...intake.map((it) => `${it.label} pass`),
      ...exhaust.map((it) => `${it.label} too much`),
    ]);
    expect(lookAt(read, 'cam-line-here', exhaust[0])?.value).toBe(inch('0.0020'));
    // One camshaft is one thing to do.
    expect(sheet?.toDo.map((it) => it.label)).toEqual(['JE1']);
    expect(Object.keys(CAM_BORE_FORMULAS)).toContain('cam-line');
  });
});
