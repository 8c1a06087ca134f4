import { describe, expect, it } from 'vitest';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { effectsOf } from '#core/readings/compute/effects.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { BEFORE, blockBench, headBench, spotsOf, type Typed, V_EIGHT_SHEET } from '#tests/kit/cut-engine.ts';

/** The shop's own limits, as a workspace starts with them. */
const SHOP = SHOP_LIMITS.filter((it) => it.low !== null || it.high !== null).map((it) =>
  limitOf(it.quantity, it.unit, { low: it.low, high: it.high, stage: it.stage, side: it.side, forWhat: 'shop' }),
);
const CUT: Typed[] = [
  ['thickness', '3.9600', 'in', BEFORE],
  ['thickness', '3.9350', 'in'],
];
const lines = (bench: Parameters<typeof effectsOf>[0]) =>
  Object.fromEntries(effectsOf(bench).map((it) => [`${it.quantity} ${it.stage}`, it]));

describe('effectsOf', () => {
  it('prints each consequence with its words and unit, the ratio like 9.48 (exact mathematics)', () => {
    const found = lines(headBench({ limits: [...V_EIGHT_SHEET, ...SHOP], readings: CUT }));

    expect(found['head-drop after']).toMatchObject({ words: 'head sits lower by', amount: '0.0250 in' });
    expect(found['compression-ratio before']).toMatchObject({ words: 'compression ratio', amount: '9.48' });
    expect(found['compression-ratio after']?.amount).toBe('9.94');
    expect(found['chamber-change after']).toMatchObject({ amount: '−4.2 cc' });
    expect(found['chamber-change after']?.note).toContain('surfacing only; chamber not measured');
    expect(found['intake-face-cut after']?.amount).toBe('0.0308 in');
    expect(found['intake-bottom-cut after']?.amount).toBe('0.0429 in');
    expect(found['port-drop after']).toMatchObject({ amount: '0.0246 in', verdict: 'fail' });
  });

  it('says in words what cannot be said in figures', () => {
    const found = lines(headBench({ limits: [], engine: null, readings: CUT }));

    expect(found['compression-ratio after']).toMatchObject({ amount: '' });
    expect(found['compression-ratio after']?.note).toContain('bore');
    expect(found['cam-retard after']).toMatchObject({ amount: '', note: 'no overhead cam: its timing stays' });
    expect(found['intake-face-cut after']?.note).toBe('not a V engine');
  });

  it('claims nothing while nothing is cut, nor of other castings', () => {
    expect(effectsOf(headBench())).toEqual([]);
    expect(effectsOf(headBench({ casting: { kind: 'crank' }, readings: CUT }))).toEqual([]);
  });

  it('of a block it tells clearance, drop and manifold from its corners (exact arithmetic)', () => {
    const spots = spotsOf('deck_corner', 'FI', 'FE', 'RI', 'RE');
    const corners = spots.flatMap((spot): Typed[] => [
      ['deck-height', '9.220', 'in', { ...BEFORE, spot: spot.id }],
      ['deck-height', '9.210', 'in', { spot: spot.id }],
    ]);
    const limits = [
      ...SHOP,
      limitOf('rod-length', 'in', { target: '5.900' }),
      limitOf('compression-height', 'in', { target: '1.600' }),
      limitOf('gasket-thickness', 'in', { target: '0.040' }),
    ];
    const found = lines(blockBench({ spots, limits, readings: corners }));

    expect(found['deck-clearance after']?.amount).toBe('0.0100 in');
    expect(found['piston-to-head after']).toMatchObject({ amount: '0.0500 in', verdict: 'pass' });
    expect(found['head-drop after']?.amount).toBe('0.0100 in');
    expect(found['intake-face-cut after']?.amount).toBe('0.0123 in');
  });
});

describe('the tables of a cut', () => {
  const sheet = (code: string, bench: Parameters<typeof effectsOf>[0]) => {
    const table = findBenchTable(code);
    if (!table) throw new Error(`no table ${code}`);
    return composeSheet(bench.facts, table);
  };

  it('effects: opened by surfacing, judged, with advice where the ports drop', () => {
    const found = sheet('effects', headBench({ limits: [...V_EIGHT_SHEET, ...SHOP], readings: CUT }));

    expect(found.summary).toBe('1 fail');
    expect(found.toDo[0]?.words).toBe('intake ports drop by 0.0246: too much');
    expect(found.toDo[0]?.steps[0]).toContain('Cut each intake face');
    expect(findBenchTable('effects')?.operation).toBe('surface-head');
  });

  it('compression: a ratio asked for stands beside the cut that makes it', () => {
    const found = sheet('compression', headBench({ readings: [['ratio-wanted', '10.0', 'ratio', BEFORE]] }));
    const text = (quantity: string) => found.rows.find((row) => row.quantity === quantity)?.cells[0]?.text;

    expect([text('compression-ratio'), text('chamber-wanted'), text('cut-for-ratio')]).toEqual([
      '9.48',
      '57.4',
      '0.0278',
    ]);
  });

  it('missing readings are never a pass: an untouched sheet passes nothing', () => {
    const limits = [...SHOP];
    for (const code of ['chambers', 'compression', 'effects', 'valve-to-piston']) {
      const spots = [...spotsOf('chamber', '1'), ...spotsOf('valve', { label: '1I', side: 'I' })];

      expect(sheet(code, headBench({ limits, engine: null, spots })).counts.pass).toBe(0);
    }
    for (const code of ['decks', 'deck-effects', 'protrusion', 'gaskets']) {
      const spots = [...spotsOf('deck_corner', 'FI'), ...spotsOf('cylinder', '1')];

      expect(sheet(code, blockBench({ limits, engine: null, spots })).counts.pass).toBe(0);
    }
  });
});
