import { describe, expect, it } from 'vitest';
import {
  choiceOfDigit,
  isRead,
  judgingLimit,
  labelOf,
  loudNotes,
  markOf,
  pagesOf,
  placeOf,
  placeParts,
  rowsOf,
  spotAt,
  startAt,
  stepFrom,
} from '#renderer/screens/bench/reading-view.ts';
import { cellOf, rowOf, sheetOf } from './sheets.ts';

const sheet = sheetOf([cellOf('35.12', 5, ['36.12']), cellOf(null), cellOf(null), cellOf(null)]);
const order = ['1', '2', '3', '4'];

describe('pagesOf', () => {
  it('puts both sides on one page where there is room, one side a page where there is not', () => {
    expect(pagesOf(sheet, false, 16).map((page) => page.words)).toEqual(['INTAKE SIDE EXHAUST SIDE']);
    expect(pagesOf(sheet, false, 3).map((page) => page.words)).toEqual(['INTAKE SIDE', 'EXHAUST SIDE']);
  });

  it('says what is wrong on the side that is not shown, in the words of the host', () => {
    const fail = { name: 'fail', direction: 'over', cannotProve: false } as const;
    const columns = sheet.columns.map((column, n) =>
      n === 3 ? { ...column, verdict: fail, word: 'too tall' } : column,
    );
    expect(pagesOf({ ...sheet, columns }, false, 2).map((page) => page.trouble)).toEqual(['', '1 too tall']);
  });
});

describe('rowsOf', () => {
  it('shows the figure that stands, the one before it struck, and the verdict of each valve last', () => {
    const rows = rowsOf(sheet, new Map());
    expect(rows.map((row) => row.kind)).toEqual(['read', 'derived', 'verdict']);
    expect(rows[0]?.cells['1']).toMatchObject({ lines: ['35.12'], struck: '36.12', mark: 'pass' });
    expect(rows[2]?.cells['2']).toMatchObject({ mark: 'not-measured', markWords: 'not measured' });
  });

  it('shows what waits on this tablet in its place, and nothing of its verdict', () => {
    const row = sheet.rows[0];
    if (!row) throw new Error('no row');
    const waits = { text: '35.46', waiting: true, cell: null, column: null };
    const rows = rowsOf(sheet, new Map([[placeOf(sheet.casting.id, row, '2'), waits]]));
    expect(rows[0]?.cells['2']).toEqual({ lines: ['35.46'], waiting: true });
  });

  it('shows what was just kept as it was judged while typed, and lets its column say so at once', () => {
    const [row, column] = [sheet.rows[0], sheet.columns[1]];
    if (!row || !column) throw new Error('no row');
    const fail = { name: 'fail', direction: 'over', cannotProve: false } as const;
    const kept = {
      text: '39.46',
      waiting: false,
      cell: { ...cellOf('39.46'), verdict: fail, word: 'too tall' },
      column: { ...column, verdict: fail, word: 'too tall' },
    };
    const rows = rowsOf(sheet, new Map([[placeOf(sheet.casting.id, row, '2'), kept]]));
    expect(rows[0]?.cells['2']).toEqual({ lines: ['39.46'], mark: 'over', markWords: 'too tall' });
    expect(rows[2]?.cells['2']).toMatchObject({ mark: 'over', markWords: 'too tall' });
    expect(rows[2]?.cells['1']).toMatchObject({ mark: 'not-measured' });
  });

  it('leaves out rows that are switched off for this casting', () => {
    const off = { ...sheet, rows: sheet.rows.map((row, n) => ({ ...row, shown: n === 0 })) };
    expect(rowsOf(off, new Map()).map((row) => row.kind)).toEqual(['read', 'verdict']);
  });

  it('shows shims as chosen, a stack in two lines, until somebody says what was fitted', () => {
    const columns = sheet.columns.map((column) => ({
      ...column,
      shims: { text: '0.5 + 1.0', typed: '0.5+1.0', thicknesses: [] },
    }));
    const shims = rowOf('shims-fitted', 'shims', [cellOf(null), cellOf('none', 8), cellOf(null), cellOf(null)]);
    const [row] = rowsOf({ ...sheet, columns, rows: [shims] }, new Map());
    expect(row?.cells['1']?.lines).toEqual(['0.5', '+ 1.0']);
    expect(row?.cells['2']?.lines).toEqual(['none']);
  });
});

describe('labelOf', () => {
  it('says before and after only where a quantity stands at both', () => {
    const before = rowOf('thickness', 'thickness', []);
    const after = rowOf('thickness', 'thickness', [], { stage: 'after', key: 'thickness||after' });
    expect(labelOf({ ...sheet, rows: [before, after] }, after)).toBe('thickness after, mm');
    expect(labelOf({ ...sheet, rows: [after] }, after)).toBe('thickness, mm');
  });
});

describe('placeParts', () => {
  it('takes apart what placeOf put together, though a row key holds the same sign', () => {
    const [row] = sheet.rows;
    if (!row) throw new Error('no row');
    expect(placeParts(placeOf(7, row, '12'))).toEqual({ casting: 7, row: 'installed-height||before', column: '12' });
  });
});

describe('judgingLimit', () => {
  it('judges an installed height by the height with shims', () => {
    const own = rowOf('installed-height', 'height read', sheet.rows[0]?.cells ?? [], { limits: [] });
    const spot = spotAt({ ...sheet, rows: [own, ...sheet.rows.slice(1)] }, own.key, '1');
    if (!spot) throw new Error('no spot');
    expect(judgingLimit(spot)?.text).toBe('34.75 – 35.25');
  });
});

describe('startAt and stepFrom', () => {
  it('starts at the first place not read and follows the order on the bench', () => {
    expect(startAt(sheet, order)).toEqual({ row: 'installed-height||before', column: '2' });
    expect(stepFrom(sheet, order, { row: 'installed-height||before', column: '2' }, 1)?.column).toBe('3');
    expect(stepFrom(sheet, ['4', '3', '2', '1'], { row: 'installed-height||before', column: '3' }, 1)?.column).toBe(
      '2',
    );
  });

  it('goes on in the next typed row at the end of a row, and stays at the end of all', () => {
    const two = { ...sheet, rows: [...sheet.rows, rowOf('margin', 'margin', [], { key: 'margin||after' })] };
    expect(stepFrom(two, order, { row: 'installed-height||before', column: '4' }, 1)).toEqual({
      row: 'margin||after',
      column: '1',
    });
    expect(stepFrom(sheet, order, { row: 'installed-height||before', column: '4' }, 1)).toBeNull();
    expect(stepFrom(sheet, order, { row: 'installed-height||before', column: '1' }, -1)).toBeNull();
  });
});

describe('choiceOfDigit', () => {
  it('takes a digit for the choice at that place, and a digit that is a choice for itself', () => {
    const row = rowOf('crack-result', 'crack check', [], { family: 'choice', choices: ['none found', 'crack found'] });
    expect(choiceOfDigit(row, '2')).toBe('crack found');
    expect(choiceOfDigit(row, '3')).toBeUndefined();
    expect(choiceOfDigit(row, '12')).toBeUndefined();
    expect(choiceOfDigit({ ...row, choices: ['2', '4'] }, '2')).toBeUndefined();
  });
});

describe('markOf, isRead, loudNotes', () => {
  it('never gives an empty or unknown figure a pass', () => {
    expect(markOf(null)).toBeNull();
    expect(markOf({ name: 'no limit known', direction: null, cannotProve: false })).toBe('no-limit');
    expect(markOf({ name: 'fail', direction: 'under', cannotProve: false })).toBe('under');
  });
  it('counts a dash as read and an empty place not', () => {
    const [row] = sheet.rows;
    if (!row) throw new Error('no row');
    expect(isRead(sheet, row, '1')).toBe(true);
    expect(isRead(sheet, row, '2')).toBe(false);
  });
  it('leaves what is said beside the limits to the limits', () => {
    expect(loudNotes({ ...sheet, notes: ['height read: not checked', 'G11: check was due 3 May'] })).toEqual([
      'G11: check was due 3 May',
    ]);
  });
});
