import { describe, expect, it } from 'vitest';
import {
  hasStages,
  pointParts,
  rowLabels,
  rowsShown,
  rowsTyped,
  stageOfRow,
  stageStart,
} from '#renderer/screens/bench/reading-rows.ts';
import { boresOf } from './bores-sheet.ts';
import { cellOf, rowOf, sheetOf } from './sheets.ts';

const sheet = boresOf();
const labels = (stage: 'before' | 'after' | 'both') => {
  const rows = rowsShown(sheet, stage);
  return rows.map((row) => rowLabels(sheet, rows).get(row.key)?.label);
};

describe('hasStages', () => {
  it('offers the stages where a long table reads something twice, and never for a short one', () => {
    expect(hasStages(sheet)).toBe(true);
    expect(hasStages(sheetOf([cellOf('35.12')]))).toBe(false);
    const two = (['before', 'after'] as const).map((stage) =>
      rowOf('thickness', 'thickness', [], { stage, key: `t||${stage}` }),
    );
    expect(hasStages({ ...sheet, rows: two })).toBe(false);
  });
});

describe('rowsShown and rowsTyped', () => {
  it('shows one stage of what is read twice, and always what is read once', () => {
    const before = rowsShown(sheet, 'before');
    expect(before).toHaveLength(9);
    expect(new Set(before.map((row) => row.stage))).toEqual(new Set(['before']));
    expect(rowsShown(sheet, 'after').map((row) => row.quantity)).toContain('piston-size');
  });

  it('sets each reading after work under the one before it, and types all of the first stage first', () => {
    const both = rowsShown(sheet, 'both');
    expect(both.slice(0, 4).map((row) => row.key)).toEqual([
      'bore|p0|before',
      'bore|p0|after',
      'bore|p1|before',
      'bore|p1|after',
    ]);
    expect(new Set(both.map((row) => row.key)).size).toBe(sheet.rows.length);
    const typed = rowsTyped(sheet, 'both').map((row) => row.key);
    expect(typed.indexOf('bore|p5|before')).toBeLessThan(typed.indexOf('bore|p0|after'));
    expect(typed).not.toContain('bore-taper||before');
  });

  it('leaves out rows that are switched off for this casting', () => {
    const off = { ...sheet, rows: sheet.rows.map((row) => ({ ...row, shown: row.quantity !== 'piston-size' })) };
    expect(rowsShown(off, 'before').map((row) => row.quantity)).not.toContain('piston-size');
  });
});

describe('stageOfRow', () => {
  it('knows the stage of a row that is read twice, and none of one that is read once', () => {
    expect(stageOfRow(sheet, 'bore|p2|after')).toBe('after');
    expect(stageOfRow(sheet, 'piston-size||before')).toBeNull();
    expect(stageOfRow(sheet, undefined)).toBeNull();
  });
});

describe('stageStart', () => {
  it('goes to what is not read yet of the stage chosen', () => {
    expect(stageStart(sheet, ['1', '2'], 'after')).toEqual({ row: 'bore|p0|after', column: '1' });
    expect(stageStart(sheet, ['1', '2'], 'before')).toEqual({ row: 'bore|p0|before', column: '2' });
    expect(stageStart(sheet, ['1'], 'both')).toEqual({ row: 'piston-size||before', column: '1' });
  });
});

describe('rowLabels', () => {
  it('leaves out what the row above says already', () => {
    expect(labels('before')).toEqual([
      'thrust, top',
      'middle',
      'bottom',
      'pin axis, top',
      'middle',
      'bottom',
      'taper, in',
      'piston, in',
      'size wanted, in',
    ]);
  });

  it('says before and after only where both stand there', () => {
    expect(labels('both').slice(0, 4)).toEqual(['thrust, top before', 'after', 'middle before', 'after']);
  });

  it('draws a line where another axis or what is computed begins, and keeps the whole name for a reader', () => {
    const rows = rowsShown(sheet, 'before');
    const all = rowLabels(sheet, rows);
    expect(rows.filter((row) => all.get(row.key)?.starts).map((row) => row.key)).toEqual([
      'bore|p3|before',
      'bore-taper||before',
    ]);
    expect(all.get('bore|p4|before')?.full).toMatch(/^bore before/);
  });

  it('names the quantity where the table does not, and no axis where there is one only', () => {
    const guide = (place: string) =>
      rowOf('guide-id', 'guide inside', [], {
        key: place,
        point: place,
        pointWords: `${place}, along the rocker`,
      });
    const rows = ['top', 'middle', 'bottom'].map(guide);
    const guides = { ...sheet, rows, table: { ...sheet.table, words: 'Guides and stems' } };
    expect(rows.map((row) => rowLabels(guides, rows).get(row.key)?.label)).toEqual([
      'guide inside, top',
      'middle',
      'bottom',
    ]);
  });
});

describe('pointParts', () => {
  it('finds the axis whichever of the two words comes first', () => {
    const [row] = sheet.rows;
    if (!row) throw new Error('no row');
    expect(pointParts(sheet, row)).toEqual({ axis: 'thrust', place: 'top' });
    const turned = { ...sheet, rows: sheet.rows.map((one) => ({ ...one, pointWords: turn(one.pointWords) })) };
    const [first] = turned.rows;
    if (!first) throw new Error('no row');
    expect(pointParts(turned, first)).toEqual({ axis: 'thrust', place: 'top' });
  });
});

const turn = (words: string | null): string | null => words?.split(', ').toReversed().join(', ') ?? null;
