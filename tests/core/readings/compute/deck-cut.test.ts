import { describe, expect, it } from 'vitest';
import { FACES } from '#core/catalogue/compute/faces.ts';
import { id } from '#core/kernel/ids.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { camFlatness } from '#core/readings/compute/deck-cut.ts';
import { gridOf } from '#core/readings/compute/deck-grid.ts';
import type { CutPlan } from '#core/readings/compute/deck-survey-model.ts';
import type { Facts, Reading } from '#core/readings/compute/model.ts';
import { limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import {
  DECK,
  gridReadings,
  HEAD_LIMITS,
  headFacts,
  lineReadings,
  survey,
  workedReadings,
} from '#tests/kit/face-facts.ts';

const early = { stage: 'before' } as const;
const thick = readingOf('thickness', '3.9600', 'in', early);

function plan(readings: readonly Reading[], more: Parameters<typeof headFacts>[0] = {}): CutPlan {
  const { cut } = survey(headFacts({ readings: [...readings], ...more })).before;
  if (!cut) throw new Error('no plan');
  return cut;
}
const way = (cut: CutPlan, code: string) => cut.ways.find((it) => it.code === code);

describe('cutPlanOf', () => {
  it('cuts the worked head three ways: 0.0056 or 0.0061, plus 0.0010 for the finish (exact mathematics)', () => {
    const cut = plan([...workedReadings(), thick]);

    expect(way(cut, 'best')).toMatchObject({
      cleanUp: { text: '0.0056' },
      cut: { text: '0.0066' },
      decidedBy: 'flatness',
    });
    expect(way(cut, 'corners')).toMatchObject({ cleanUp: { text: '0.0061' }, cut: { text: '0.0071' } });
    expect(way(cut, 'best')?.left).toMatchObject({ text: '3.9534', word: 'pass', limit: { text: 'at least 3.9520' } });
    expect(cut.leftOut).toEqual(['Parallel to the cam line: measure deck to cam line, front and rear']);
  });

  it('3.9600 less 0.0061 leaves 3.9539 (exact mathematics)', () => {
    const limits = [
      ...HEAD_LIMITS.filter((it) => it.quantity !== 'cut-finish'),
      limitOf('cut-finish', 'in', { target: '0' }),
    ];
    const cut = plan([...workedReadings(), thick], { limits });

    expect(way(cut, 'corners')?.left?.value).toBe(3.9539 * 25_400_000);
  });

  it('says which cut leaves too little, and not to cut where all do', () => {
    const at = (thickness: string) => [...workedReadings(), readingOf('thickness', thickness, 'in', early)];
    const near = plan(at('3.9588'));
    const thin = survey(headFacts({ readings: at('3.9550') })).before;

    expect([way(near, 'best')?.left?.word, way(near, 'corners')?.left?.word]).toEqual(['pass', 'too thin']);
    expect(thin.advice.join(' ')).toContain('do not cut, ask the lead');
  });

  it('never cuts less than the deepest pit, groove or weld wants (common practice, no source)', () => {
    const pit = readingOf('deck-pit', '0.0120', 'in', early);

    expect(way(plan([...workedReadings(), pit]), 'best')).toMatchObject({ cut: { text: '0.0130' }, decidedBy: 'pit' });
    const shallow = readingOf('deck-pit', '0.0020', 'in', early);
    expect(way(plan([...workedReadings(), shallow]), 'best')).toMatchObject({ cut: { text: '0.0066' } });
  });

  it('carries the doubt of dial and micrometer into what is left (root of the sum of squares)', () => {
    const [dial, mic] = [toolOf({ uncertainty: 5080 }), toolOf({ uncertainty: 2540 })];
    const cut = plan([...workedReadings({ tool: dial.id }), { ...thick, tool: mic.id }], { tools: [dial, mic] });
    const best = way(cut, 'best');

    const wanted = Math.hypot(best?.cut.uncertainty ?? 0, 2540);
    expect(Math.abs((best?.left?.uncertainty ?? 0) - wanted)).toBeLessThanOrEqual(1);
  });

  it('cuts at least the worst gap by straightedge, and says that a dial would tell how to level', () => {
    const lines = { 'along-1': '0.0020', 'along-2': '0.0045', 'along-3': '0.0030', 'diagonal-1': '0.0030' };
    const cut = plan(lineReadings(DECK, { ...lines, 'diagonal-2': '0.0025' }));

    expect(cut.ways.map((it) => [it.code, it.cut.text])).toEqual([['straightedge', '0.0055']]);
    expect(cut.leftOut[0]).toContain('read the grid with a dial');
  });

  it('counts earlier skims against what may go in all: 0.0040 and 0.0020 and 0.0066 past 0.0120 (exact arithmetic)', () => {
    const limits = [...HEAD_LIMITS, limitOf('total-removed', 'in', { high: '0.0120' })];
    const earlier: Facts['earlier'] = [{ tag: 30112, position: 'left', removed: 101_600 }];
    const stamp = (typed: string) => readingOf('earlier-removal', typed, 'in', early);
    const total = (...more: Reading[]) => plan([...workedReadings(), ...more], { limits, earlier });

    expect(way(total(stamp('0.0020')), 'best')?.total).toMatchObject({ text: '0.0126', word: 'too much' });
    expect(way(total(stamp('0')), 'best')?.total).toMatchObject({ text: '0.0106', word: 'pass' });
    expect(total(stamp('0.0020')).earlier).toEqual(['Tag 30112: 0.0040 in off', 'Stamped or told: 0.0020 in off']);
    expect(way(total(), 'best')?.total).toMatchObject({
      word: 'not measured',
      marks: ['write what was taken off before, 0 where no stamp is found'],
    });
  });

  it('takes the lowest corner of its own bank for a block', () => {
    const corner = (n: number, bank: 'left' | 'right', label: string) =>
      ({
        id: id<'spot'>(n),
        kind: 'deck_corner',
        label,
        benchOrder: n,
        row: 1,
        bank,
        cylinder: null,
        side: null,
      }) as const;
    const spots = [corner(1, 'left', 'L1'), corner(2, 'left', 'L2'), corner(3, 'right', 'R1')];
    const heights = ['9.0010', '9.0000', '8.9000'].map((typed, n) =>
      readingOf('deck-height', typed, 'in', { ...early, spot: spots[n]?.id ?? null }),
    );
    const engine = {
      words: 'V8',
      cylinders: 8,
      layout: 'v',
      bankLean: null,
      faceLean: null,
      bore: null,
      stroke: null,
    } as const;
    const readings = [
      ...heights,
      ...gridReadings({ code: 'left-deck' }, [
        [0, -40, 0],
        [0, -40, 0],
      ]),
    ];
    const facts = headFacts({
      kind: 'block',
      engine,
      spots,
      readings,
      limits: [...HEAD_LIMITS, limitOf('deck-height', 'in', { low: '8.9960' })],
    });
    const { cut } = survey(facts, 'left-deck').before;

    expect(cut).toMatchObject({ thickness: { text: '9.0000' }, thicknessWords: 'Lowest deck height' });
    expect(cut?.ways[0]?.left).toMatchObject({ text: '8.9950', word: 'too short' });
  });
});

describe('camFlatness', () => {
  const cam = (front: string, rear: string) => [
    readingOf('deck-to-cam', front, 'in', { ...early, point: 'front' }),
    readingOf('deck-to-cam', rear, 'in', { ...early, point: 'rear' }),
  ];
  const face = FACES[0];
  const flatness = (readings: readonly Reading[]) => {
    const look = openBench(headFacts({ readings: [...readings] })).look({ spot: null, stage: 'before' });
    return face ? camFlatness(look, gridOf(look, face)) : null;
  };
  const level = gridReadings(DECK, [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ]);

  it('is 0 for a flat deck that runs as the cam line does, on any jacks (exact mathematics)', () => {
    const tilted = gridReadings(DECK, [
      [0, 50, 100],
      [7, 57, 107],
      [14, 64, 114],
    ]);

    expect(flatness([...level, ...cam('4.0000', '4.0000')])?.value).toBe(0);
    expect(flatness([...tilted, ...cam('4.0000', '4.0000')])?.value).toBe(0);
  });

  it('takes a wedge out of a flat deck: 0.0060 thinner at the rear is 0.0060 to cut (exact mathematics)', () => {
    expect(flatness([...level, ...cam('4.0060', '4.0000')])?.value).toBe(0.006 * 25_400_000);
  });

  it('is never less than the two closest planes, and joins the ways of the plan', () => {
    const found = flatness([...workedReadings(), ...cam('4.0000', '3.9990')]);
    const cut = plan([...workedReadings(), ...cam('4.0000', '3.9990')]);

    expect(found?.value).toBeGreaterThanOrEqual(56 * 2540);
    expect(way(cut, 'cam')?.cleanUp.value).toBe(found?.value);
    expect(cut.leftOut).toEqual([]);
  });

  it('is not known while one end of the head or of the grid is not read', () => {
    expect(flatness([...level, ...cam('4.0000', '4.0000').slice(0, 1)])).toBeNull();
    expect(
      flatness([
        ...gridReadings(DECK, [
          [0, 0, 0],
          [0, 0, null],
          [0, 0, 0],
        ]),
        ...cam('4.0000', '4.0000'),
      ]),
    ).toBeNull();
  });
});
