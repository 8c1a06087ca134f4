import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Facts, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { inch, knownAt, placesOf } from '#tests/kit/worn-block.ts';

const main = placesOf('main', 1)[0] as Spot;
const cam = placesOf('cam_journal', 1, 5)[0] as Spot;
const journal = placesOf('journal', 1, 9)[0] as Spot;
const rod = placesOf('rod', 1, 13)[0] as Spot;
const casting = (words: Partial<Facts> = {}): Facts => factsOf({ spots: [main, cam, journal, rod], ...words });

describe('bearing clearance', () => {
  const housing = readingOf('main-size', '2.8410', 'in', { spot: main.id, point: '0' });
  const crank = readingOf('main-journal', '2.6480', 'in', { spot: main.id });
  const shell = readingOf('main-shell', '0.0953', 'in', { spot: main.id });

  it('housing 2.8410 less two shells of 0.0953 less 2.6480 is 0.0024 in (exact mathematics)', () => {
    const known = knownAt(casting({ readings: [housing, crank, shell] }), 'bearing-clearance', { spot: main });

    expect(known?.value).toBe(inch('0.0024'));
    // Three quarters to one thou for each inch of 2.648 (common practice, no source).
    expect(known?.marks[0]).toBe('usual for this journal: .0020 in to .0026 in');
  });

  it('the doubt of the shell counts twice (root of the sum of squares)', () => {
    const tool = toolOf({ uncertainty: 1000 });
    const readings = [housing, crank, shell].map((it) => ({ ...it, tool: tool.id }));

    expect(knownAt(casting({ readings, tools: [tool] }), 'bearing-clearance', { spot: main })?.uncertainty).toBe(
      Math.ceil(Math.sqrt(6) * 1000),
    );
  });

  it('shell and journal may come from the sheet, and say so', () => {
    const limits = [
      limitOf('main-shell', 'in', { target: '0.0953' }),
      limitOf('main-journal', 'in', { target: '2.6480' }),
    ];
    const known = knownAt(casting({ readings: [housing], limits }), 'bearing-clearance', { spot: main });

    expect(known?.value).toBe(inch('0.0024'));
    expect(known?.marks).toContain('main shell from the sheet');
    expect(knownAt(casting({ readings: [crank, shell] }), 'bearing-clearance', { spot: main })).toBeNull();
  });

  it('rods are reckoned alike, cam bearings without shells (exact mathematics)', () => {
    const readings = [
      readingOf('big-end-place', '2.2250', 'in', { spot: rod.id, point: '0' }),
      readingOf('rod-shell', '0.0615', 'in', { spot: rod.id }),
      readingOf('pin-journal', '2.1000', 'in', { spot: rod.id }),
      readingOf('cam-bearing-sizes', '2.0030', 'in', { spot: cam.id }),
      readingOf('cam-journal-size', '2.0000', 'in', { spot: cam.id }),
    ];

    expect(knownAt(casting({ readings }), 'rod-clearance', { spot: rod })?.value).toBe(inch('0.0020'));
    expect(knownAt(casting({ readings }), 'cam-clearance', { spot: cam })?.value).toBe(inch('0.0030'));
  });
});

describe('journals', () => {
  const places = ['front-x', 'front-y', 'rear-x', 'rear-y'];
  const measured = (sizes: readonly string[]) =>
    casting({
      readings: sizes.flatMap((typed, index) =>
        typed === ''
          ? []
          : [
              readingOf('journal-place', typed, 'in', {
                spot: journal.id,
                point: places[index] ?? null,
                stage: 'before',
              }),
            ],
      ),
    });
  const at = (facts: Facts, quantity: string) => knownAt(facts, quantity, { spot: journal, stage: 'before' });

  it('taper along, out of round across, and the smallest size (exact mathematics)', () => {
    const facts = measured(['2.6480', '2.6474', '2.6478', '2.6476']);

    expect(at(facts, 'journal-taper')?.value).toBe(inch('0.0002'));
    expect(at(facts, 'journal-out-of-round')?.value).toBe(inch('0.0006'));
    expect(at(facts, 'journal-size')).toMatchObject({ value: inch('2.6474'), marks: ['front, square to it'] });
  });

  it('are not known while a place is missing, and one size may be typed instead', () => {
    const typed = readingOf('journal-size', '2.6480', 'in', { spot: journal.id, stage: 'before' });

    expect(at(measured(['2.6480', '', '2.6478', '2.6476']), 'journal-taper')?.value).toBeNull();
    expect(at(measured([]), 'journal-out-of-round')).toBeNull();
    expect(at(casting({ readings: [typed] }), 'journal-size')?.value).toBe(inch('2.6480'));
  });

  it('turning the crank a quarter, or end for end, changes nothing (property)', () => {
    const size = fc.integer({ min: 26_470, max: 26_490 }).map((it) => (it / 10_000).toFixed(4));

    fc.assert(
      fc.property(size, size, size, size, (a, b, c, d) => {
        for (const quantity of ['journal-taper', 'journal-out-of-round', 'journal-size']) {
          const value = at(measured([a, b, c, d]), quantity)?.value;

          expect(at(measured([b, a, d, c]), quantity)?.value).toBe(value);
          expect(at(measured([c, d, a, b]), quantity)?.value).toBe(value);
        }
      }),
      { numRuns: 25 },
    );
  });
});
