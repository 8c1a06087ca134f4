import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { DECK, gridReadings, HEAD_LIMITS, headFacts, survey, workedReadings } from '#tests/kit/face-facts.ts';
import { WORKED_GRID } from '#tests/kit/flatness-cases.ts';

const asRead = (readings: ReturnType<typeof workedReadings>, more: Parameters<typeof headFacts>[0] = {}): StageSurvey =>
  survey(headFacts({ readings, ...more })).before;
const thick = readingOf('thickness', '3.9600', 'in', { stage: 'before' });

describe('surveyOf', () => {
  it('judges the worked grid: 0.0056 over 0.0040 fails, 0.0017 in any 9 in passes (exact mathematics)', () => {
    const found = asRead(workedReadings());

    expect(found.basis).toBe('grid');
    expect(found.flatness).toMatchObject({ text: '0.0056', word: 'too much', limit: { text: 'at most 0.0040' } });
    expect(found.span).toMatchObject({ text: '0.0017', word: 'pass' });
    expect(found.along).toMatchObject({ text: '0.0050', word: 'no limit known' });
    expect(found.pattern?.word).toBe('hollow');
    expect(found.readWords).toBe('15 of 15 points');
  });

  it('0.0056 over all against 0.004 fails (limit: engine-maker data, name withheld)', () => {
    expect(asRead(workedReadings()).flatness.verdict).toMatchObject({ name: 'fail', direction: 'over' });
  });

  it('0.0035 within a 6.0 in span against 0.003 fails (limit: engine-maker data, name withheld)', () => {
    const limits = [
      ...HEAD_LIMITS,
      limitOf('deck-span', 'in', { stage: 'before', forWhat: 'this_job', high: '0.003' }),
    ];
    const typed = [readingOf('deck-span', '0.0035', 'in', { stage: 'before' })];

    expect(asRead(typed, { limits }).span.verdict).toMatchObject({ name: 'fail', direction: 'over' });
  });

  it('passes a block top of 0.0025 across and 0.0055 along at 0.003 and 0.006 (limits: TM 5-4320-300-14)', () => {
    const found = asRead(
      [
        readingOf('deck-across', '0.0025', 'in', { stage: 'before' }),
        readingOf('deck-along', '0.0055', 'in', { stage: 'before' }),
      ],
      {
        kind: 'block',
        limits: [
          limitOf('deck-across', 'in', { stage: 'before', high: '0.003' }),
          limitOf('deck-along', 'in', { stage: 'before', high: '0.006' }),
        ],
      },
    );

    expect([found.across.word, found.along.word]).toEqual(['pass', 'pass']);
  });

  it('is not changed by the tilt on the jacks: 7 a column, -3 a row, 100 up (exact mathematics)', () => {
    const tilted = WORKED_GRID.map((row, r) => row.map((z, c) => z + 7 * c - 3 * r + 100));
    const [plain, moved] = [WORKED_GRID, tilted].map((grid) => asRead([...gridReadings(DECK, grid), thick]));

    expect(moved?.planes?.zone).toEqual(plain?.planes?.zone);
    expect(moved?.planes?.leastSquares).toEqual(plain?.planes?.leastSquares);
    expect(moved?.planes?.corners).toEqual(plain?.planes?.corners);
    expect(moved?.cut).toEqual(plain?.cut);
    expect(moved?.points.map((it) => it.height)).toEqual(plain?.points.map((it) => it.height));
    expect(moved?.pattern).toEqual(plain?.pattern);
    expect(moved?.planes?.tiltWords).not.toBe(plain?.planes?.tiltWords);
  });

  it('tilt, turning the head end for end and reading from the other side change no verdict (property)', () => {
    const steps = fc.array(fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 5, maxLength: 5 }), {
      minLength: 3,
      maxLength: 3,
    });
    fc.assert(
      fc.property(steps, fc.integer({ min: -9, max: 9 }), (grid, by) => {
        const shown = (rows: readonly (readonly number[])[]) => {
          const { flatness, span, along, across, planes } = asRead(gridReadings(DECK, rows));
          return [flatness, span, along, across, planes?.leastSquares].map((it) => it?.text);
        };
        const plain = shown(grid);
        expect(shown(grid.map((row, r) => row.map((z, c) => z + by * c - 2 * r)))).toEqual(plain);
        expect(shown(grid.map((row) => row.toReversed()))).toEqual(plain);
        expect(shown(grid.toReversed())).toEqual(plain);
      }),
      { numRuns: 25 },
    );
  });

  it('says where the planes touch, and how high every point stands over the lower one', () => {
    const { points } = asRead(workedReadings());
    const at = (code: string) => points.find((it) => it.code === code);

    expect(points.filter((it) => it.touches === 'upper').map((it) => it.code)).toEqual(['c1r1', 'c1r3', 'c5r3']);
    expect(points.filter((it) => it.touches === 'lower').map((it) => it.code)).toEqual(['c3r2']);
    expect(at('c3r2')).toMatchObject({ steps: '−52', height: 0, heightSteps: '0', along: 0.5, across: 0.5 });
    expect(at('c1r1')).toMatchObject({ steps: '0', heightSteps: '56' });
    expect(at('c5r1')?.steps).toBe('+6');
  });

  it('calls a grid of zeros flat, with nothing touching (exact mathematics)', () => {
    const found = asRead(
      gridReadings(DECK, [
        [0, 0, 0],
        [0, 0, 0],
      ]),
    );

    expect(found.flatness).toMatchObject({ value: 0, word: 'pass' });
    expect(found.pattern?.word).toBe('flat');
    expect(found.points.every((it) => it.touches === null && it.height === 0)).toBe(true);
  });

  it('says too few points for three, and measures nothing (exact mathematics)', () => {
    const found = asRead(
      gridReadings(DECK, [
        [0, null, 0],
        [null, -90, null],
      ]),
    );

    expect(found.readWords).toContain('too few points');
    expect(found.flatness).toMatchObject({ value: null, word: 'not measured', marks: ['too few points'] });
    expect(found.planes).toBeNull();
    expect(found.cut).toBeNull();
  });

  it('never passes on a part of the points, and fails on a part that is too uneven already', () => {
    const part = (middle: number) =>
      gridReadings(DECK, [
        [0, middle, 0, null, null],
        [0, middle, 0, null, null],
      ]);

    expect(asRead(part(-5)).flatness).toMatchObject({ value: null, word: 'not measured', marks: ['6 of 10 points'] });
    expect(asRead(part(-50)).flatness).toMatchObject({ text: '0.0050', word: 'too much', marks: ['6 of 10 points'] });
  });

  it('leaves out what a person marked as nothing to measure', () => {
    const dash = readingOf('deck-dial', 'not applicable', null, {
      stage: 'before',
      point: 'c2r1',
      kind: 'not_applicable',
    });
    const found = asRead([
      ...gridReadings(DECK, [
        [0, null, 0],
        [0, -3, 0],
      ]),
      dash,
    ]);

    expect(found.flatness.word).toBe('pass');
    expect(found.readWords).toBe('5 of 5 points');
  });

  it('lets a typed figure stand instead of the grid', () => {
    const typed = readingOf('deck-flatness', '0.0035', 'in', { stage: 'before' });
    const found = asRead([...workedReadings(), typed]);

    expect(found.flatness).toMatchObject({ text: '0.0035', word: 'pass' });
    expect(found.basis).toBe('typed');
  });

  it('takes the doubt of the zone from the dial: three highs and one low (exact mathematics)', () => {
    const tool = toolOf({ name: 'Dial 4', uncertainty: 5080 });
    const found = asRead(workedReadings({ tool: tool.id }), { tools: [tool] });

    // c3r2 counts whole, c1r1 and c5r3 by half each; every part is rounded up to a nanometre.
    const doubt = found.planes?.zone.uncertainty ?? 0;
    expect(doubt - 5080 * Math.sqrt(1 + 1 / 4 + 1 / 4)).toBeGreaterThanOrEqual(0);
    expect(doubt - 5080 * Math.sqrt(1 + 1 / 4 + 1 / 4)).toBeLessThan(3);
    expect(found.readWords).toBe('15 of 15 points, Dial 4');
  });

  it('keeps the guard band: 0.0041 over 0.0040 with a dial of 0.0002 is too close to call', () => {
    const tool = toolOf({ uncertainty: 5080 });
    const grid = [
      [0, -41, 0],
      [0, -41, 0],
    ];

    expect(asRead(gridReadings(DECK, grid, { tool: tool.id }), { tools: [tool] }).flatness.word).toBe('too much');
    expect(asRead(gridReadings(DECK, grid, { tool: tool.id }), { tools: [tool], guard: true }).flatness.word).toBe(
      'too close',
    );
  });

  it('reads a metric head in micrometres', () => {
    const limits = [limitOf('deck-flatness', 'mm', { stage: 'before', high: '0.05' })];
    const found = survey(
      headFacts({
        limits,
        readings: gridReadings(
          DECK,
          [
            [0, -28, 0],
            [0, -30, 6],
          ],
          { unit: 'mm' },
        ),
      }),
    );

    expect(found).toMatchObject({ unit: 'mm', step: { value: 1000, words: 'micrometres' } });
    expect(found.before.points.map((it) => it.steps)).toEqual(['0', '0', '−28', '−30', '0', '+6']);
    expect(found.before.flatness).toMatchObject({ word: 'pass' });
  });

  it('shows a reading between two steps with a decimal', () => {
    const half = readingOf('deck-dial', '-0.00285', 'in', { stage: 'before', point: 'c1r1' });

    expect(asRead([half]).points[0]?.steps).toBe('−28.5');
  });

  it('warns of an overdue gauge that was used here, and of no other', () => {
    const [used, other] = [toolOf({ name: 'Dial 4', overdue: true }), toolOf({ name: 'Dial 5', overdue: true })];

    expect(survey(headFacts({ tools: [used, other], readings: workedReadings({ tool: used.id }) })).notes).toEqual([
      expect.stringContaining('Dial 4: check was due'),
    ]);
  });
});
