import { describe, expect, it } from 'vitest';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { type Bench, openBench } from '#core/readings/compute/bench.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { BEFORE, blockBench, headBench, spotsOf, type Typed, V_EIGHT, V_EIGHT_SHEET } from '#tests/kit/cut-engine.ts';

/** The shop's own limits, as a workspace starts with them. */
const SHOP = SHOP_LIMITS.filter((it) => it.low !== null || it.high !== null).map((it) =>
  limitOf(it.quantity, it.unit, { low: it.low, high: it.high, stage: it.stage, side: it.side, forWhat: 'shop' }),
);
const CUT: Typed[] = [
  ['thickness', '3.9600', 'in', BEFORE],
  ['thickness', '3.9350', 'in'],
];

function sheetOf(code: string, bench: Bench) {
  const table = findBenchTable(code);
  if (!table) throw new Error(`no table ${code}`);
  const sheet = composeSheet(bench.facts, table);
  const row = (key: string) => {
    const [quantity, stage = 'after'] = key.split(' ');
    return sheet.rows.find((it) => it.quantity === quantity && it.stage === stage);
  };
  const cell = (key: string) => row(key)?.cells[0];
  return {
    sheet,
    /** Figure with its unit, or nothing. */
    text: (key: string) => [cell(key)?.text, row(key)?.unitMark].filter(Boolean).join(' '),
    marks: (key: string) => cell(key)?.marks.join('; ') ?? '',
    cell,
    row,
  };
}

describe('composeSheet: what a cut changes', () => {
  it('each consequence has its words and unit, the ratio reads like 9.48 (exact mathematics)', () => {
    const { text, row, marks } = sheetOf('effects', headBench({ limits: [...V_EIGHT_SHEET, ...SHOP], readings: CUT }));

    expect(row('head-drop')?.words).toBe('head sits lower by');
    expect(text('head-drop')).toBe('0.0250 in');
    expect(text('compression-ratio before')).toBe('9.48');
    expect(text('compression-ratio')).toBe('9.94');
    expect(text('chamber-change')).toBe('−4.2 cc');
    expect(marks('chamber-change')).toContain('surfacing only; chamber not measured');
    expect(text('intake-face-cut')).toBe('0.0308 in');
    expect(text('intake-bottom-cut')).toBe('0.0429 in');
    expect(text('pushrod-change')).toBe('0.0250 in');
  });

  it('an overhead cam is told in hundredths of a degree, and has no pushrods (exact mathematics)', () => {
    const casting = { camLayout: 'sohc' } as const;
    const { text, row } = sheetOf(
      'effects',
      headBench({ casting, readings: [...CUT, ['cam-sprocket', '4.00', 'in', BEFORE]] }),
    );

    expect(text('crank-retard')).toBe('1.43 °');
    expect(row('pushrod-change')).toBeUndefined();
  });

  it('is opened by surfacing, judged, and says what to do where the ports drop', () => {
    const { sheet, cell } = sheetOf('effects', headBench({ limits: [...V_EIGHT_SHEET, ...SHOP], readings: CUT }));

    expect(sheet.summary).toBe('1 fail');
    expect(cell('port-drop')?.word).toBe('too much');
    expect(sheet.toDo[0]?.words).toBe('intake ports drop by 0.0246: too much');
    expect(sheet.toDo[0]?.steps[0]).toContain('Cut each intake face');
    expect(findBenchTable('effects')?.operation).toBe('surface-head');
  });

  it('a plan below the least thickness fails before anything is cut, with what to do', () => {
    const limits = [...V_EIGHT_SHEET, limitOf('thickness', 'in', { low: '3.948' })];
    const { sheet, cell } = sheetOf(
      'effects',
      headBench({
        limits,
        readings: [
          ['thickness', '3.9600', 'in', BEFORE],
          ['head-cut-planned', '0.0125', 'in', BEFORE],
        ],
      }),
    );

    expect(cell('thickness-then')).toMatchObject({ text: '3.9475', state: 'planned', word: 'too thin' });
    expect(sheet.toDo[0]?.steps[0]).toContain('Cut less');
  });

  it('rows that cannot arise are left out; of an engine nobody named they stay and ask', () => {
    const inline = sheetOf('effects', headBench({ engine: { ...V_EIGHT, layout: 'inline' }, readings: CUT }));

    for (const quantity of ['cam-retard', 'port-drop', 'intake-face-cut', 'pair-difference']) {
      expect(inline.row(quantity)).toBeUndefined();
    }
    const nobody = sheetOf('effects', headBench({ engine: null, limits: [], readings: CUT }));

    expect(nobody.marks('intake-face-cut')).toContain('engine not known');
    expect(nobody.marks('compression-ratio')).toContain('not known: bore; stroke;');
  });

  it.each([
    ['stock', 'pass'],
    ['performance', 'too uneven'],
  ])('chambers 0.8 cc apart for an engine built for %s: %s (common practice: 1 cc and 0.5 cc)', (use, said) => {
    const spots = spotsOf('chamber', '1', '2');
    const { facts } = headBench({
      spots,
      limits: SHOP,
      readings: spots.map(
        (spot, index): Typed => ['chamber-volume', ['62.0', '62.8'][index] ?? '', 'cc', { spot: spot.id }],
      ),
    });
    const readings = [...facts.readings, readingOf('engine-use', use, null, BEFORE)];

    expect(sheetOf('compression', openBench({ ...facts, readings })).cell('chamber-spread')?.word).toBe(said);
  });

  it('compression: a ratio asked for stands beside the cut that makes it', () => {
    const { text } = sheetOf('compression', headBench({ readings: [['ratio-wanted', '10.0', 'ratio', BEFORE]] }));

    expect(text('compression-ratio before')).toBe('9.48');
    expect(text('chamber-wanted before')).toBe('57.4 cc');
    expect(text('cut-for-ratio before')).toBe('0.0278 in');
  });

  it('of a block it tells clearance, drop and manifold from its corners (exact arithmetic)', () => {
    const spots = spotsOf('deck_corner', 'FI', 'FE', 'RI', 'RE');
    const readings = spots.flatMap((spot): Typed[] => [
      ['deck-height', '9.220', 'in', { ...BEFORE, spot: spot.id }],
      ['deck-height', '9.210', 'in', { spot: spot.id }],
    ]);
    const limits = [
      ...SHOP,
      limitOf('rod-length', 'in', { target: '5.900' }),
      limitOf('compression-height', 'in', { target: '1.600' }),
      limitOf('gasket-thickness', 'in', { target: '0.040' }),
    ];
    const { text, cell } = sheetOf('deck-effects', blockBench({ spots, limits, readings }));

    expect(text('deck-clearance')).toBe('0.0100 in');
    expect(text('piston-to-head')).toBe('0.0500 in');
    expect(cell('piston-to-head')?.word).toBe('pass');
    expect(text('head-drop')).toBe('0.0100 in');
    expect(text('intake-face-cut')).toBe('0.0123 in');
  });

  it('missing readings are never a pass: an untouched sheet passes nothing', () => {
    for (const code of ['chambers', 'compression', 'effects', 'valve-to-piston']) {
      const spots = [...spotsOf('chamber', '1'), ...spotsOf('valve', { label: '1I', side: 'I' })];

      expect(sheetOf(code, headBench({ limits: SHOP, engine: null, spots })).sheet.counts.pass).toBe(0);
    }
    for (const code of ['decks', 'deck-effects', 'protrusion', 'gaskets']) {
      const spots = [...spotsOf('deck_corner', 'FI'), ...spotsOf('cylinder', '1')];

      expect(sheetOf(code, blockBench({ limits: SHOP, engine: null, spots })).sheet.counts.pass).toBe(0);
    }
  });
});
