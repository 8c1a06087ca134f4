import { describe, expect, it } from 'vitest';
import { moment } from '#core/kernel/days.ts';
import { id } from '#core/kernel/ids.ts';
import {
  firstRow,
  isEmphasised,
  isMeasured,
  isPrinted,
  isRead,
  openMeasured,
  replacedIn,
  rowPairs,
} from '#core/sheets/compute/measured.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { benchRow, measuredOf, tableOf } from '#tests/kit/measured-facts.ts';

const spot = id<'spot'>(1);
const width = (typed: string, words: object = {}) => readingOf('seat-width', typed, 'in', { spot, ...words });
const seats = tableOf([benchRow('seat-width'), benchRow('margin', { shown: false })]);

describe('openMeasured', () => {
  it('keeps tables in which something was read, and leaves out what the catalogue alone could compute', () => {
    const loads = tableOf([benchRow('greatest-lift'), benchRow('seal-clearance')], { code: 'loads' });
    const limits = [limitOf('seal-gap', 'in', { target: '0.500' }), limitOf('valve-lift', 'in', { target: '0.400' })];

    const read = measuredOf({ limits, readings: [width('.075')] }, [seats, loads]);

    expect(read.sheets.map(({ table }) => table.code)).toEqual(['trial']);
    // The same table counts as soon as one of its figures follows from a reading.
    const gap = readingOf('seal-gap', '.480', 'in', { spot });
    expect(measuredOf({ limits, readings: [gap] }, [loads]).sheets).toHaveLength(1);
  });

  it('opens the first run only where an operation was done again', () => {
    const run = measuredOf({ readings: [width('.075', { operation: id<'operation'>(1) })] }, [seats]);

    expect(run.first.size).toBe(0);
    expect(openMeasured({ ...run, redone: new Set([id<'operation'>(1)]) }).first.size).toBe(1);
  });
});

describe('firstRow', () => {
  const [one, two] = [id<'operation'>(1), id<'operation'>(2)];

  it('is what the first run left, computed figures too', () => {
    const tables = [tableOf([benchRow('guide-clearance'), benchRow('stem')])];
    const bores = ['top', 'mid', 'bot'].map((point) => readingOf('guide-id', '.3441', 'in', { spot, point }));
    const stems = [
      readingOf('stem', '.3402', 'in', { spot, operation: one }),
      readingOf('stem', '.3412', 'in', { spot, operation: two }),
    ];
    const measured = measuredOf({ readings: [...bores, ...stems] }, tables, { redone: new Set([two]) });
    const [clearance, stem] = measured.sheets[0]?.rows ?? [];

    expect(stem?.cells[0]?.text).toBe('0.3412');
    expect(stem && firstRow(measured, 'trial', stem)?.cells[0]?.text).toBe('0.3402');
    expect(clearance?.cells[0]?.text).toBe('0.0029');
    expect(clearance && firstRow(measured, 'trial', clearance)?.cells[0]?.text).toBe('0.0039');
  });

  it('is nothing where both runs say the same', () => {
    const readings = [width('.075', { operation: one }), width('.075', { operation: two })];
    const measured = measuredOf({ readings }, [seats], { redone: new Set([two]) });
    const [row] = measured.sheets[0]?.rows ?? [];

    expect(row && firstRow(measured, 'trial', row)).toBeUndefined();
  });
});

describe('replacedIn', () => {
  const old = width('.070');
  const cellOf = (words: object, more: object = {}) => {
    const measured = measuredOf({ readings: [old, width('.075', { supersedes: old.id, ...words })] }, [seats], more);
    const cell = measured.sheets[0]?.rows[0]?.cells[0];
    if (!cell) throw new Error('no cell');
    return replacedIn(measured, cell);
  };

  it('says what was replaced with a reason, when and by whom', () => {
    expect(cellOf({ reason: 'drum misread' })).toEqual([
      { text: '0.070', words: '0.070 replaced 2026-03-09 by Teodor Vaskelund: drum misread' },
    ]);
  });

  it('passes over a slip mended while measuring', () => {
    expect(cellOf({})).toEqual([]);
  });

  it('says every change after the first signature, also without a reason', () => {
    const firstSigned = moment('2026-03-09T13:00:00.000Z');

    expect(cellOf({}, { firstSigned })).toHaveLength(1);
    expect(cellOf({ at: moment('2026-03-09T12:00:00.000Z') }, { firstSigned })).toEqual([]);
  });

  it('says what was taken back, although nothing stands there now', () => {
    const gone = readingOf('seat-width', 'taken back', null, {
      spot,
      supersedes: old.id,
      kind: 'taken_back',
      reason: 'other head',
    });
    const measured = measuredOf({ readings: [old, gone] }, [seats]);
    const [row] = measured.sheets[0]?.rows ?? [];

    expect(row?.cells[0] && replacedIn(measured, row.cells[0])).toEqual([
      { text: '0.070', words: '0.070 taken back 2026-03-09 by Teodor Vaskelund: other head' },
    ]);
    expect(row && isPrinted(measured, row)).toBe(true);
  });
});

describe('isPrinted', () => {
  it('prints a hidden row that somebody read, and no hidden one that only computes', () => {
    const tables = [tableOf([benchRow('margin', { shown: false }), benchRow('bell-mouth', { shown: false })])];
    const bores = ['top', 'mid', 'bot'].map((point, n) => readingOf('guide-id', `.344${n}`, 'in', { spot, point }));
    const measured = measuredOf({ readings: [readingOf('margin', '.050', 'in', { spot }), ...bores] }, tables);

    expect(measured.sheets[0]?.rows.map((row) => [row.quantity, isPrinted(measured, row)])).toEqual([
      ['margin', true],
      ['bell-mouth', false],
    ]);
  });
});

describe('isRead', () => {
  it('holds for no cell that is empty or only planned', () => {
    const [row] = measuredOf({ readings: [width('.075')] }, [seats]).sheets[0]?.rows ?? [];

    expect(row?.cells.map(isRead)).toEqual([true, false]);
    expect(isRead(undefined)).toBe(false);
  });
});

describe('isMeasured', () => {
  it('tells a figure of the catalogue from one that follows from a reading', () => {
    const limits = [limitOf('seal-gap', 'in', { target: '0.500' }), limitOf('valve-lift', 'in', { target: '0.400' })];
    const measured = measuredOf({ limits, readings: [width('.075')] }, [
      tableOf([benchRow('seat-width'), benchRow('seal-clearance')]),
    ]);
    const [sheet] = measured.sheets;

    expect(sheet?.rows.map((row) => isMeasured(measured.bare, sheet, row))).toEqual([true, false]);
  });
});

describe('rowPairs', () => {
  it('puts what was found before what stands after, each quantity and point once', () => {
    const tables = [
      tableOf([
        benchRow('guide-id', { point: 'top' }),
        benchRow('stem'),
        benchRow('guide-id', { point: 'top', stage: 'before' }),
      ]),
    ];
    const measured = measuredOf({ readings: [readingOf('stem', '.3412', 'in', { spot })] }, tables);

    expect(
      rowPairs(measured.sheets[0]?.rows ?? []).map((pair) => pair.map((row) => `${row.quantity} ${row.stage}`)),
    ).toEqual([['guide-id before', 'guide-id after'], ['stem after']]);
  });
});

describe('isEmphasised', () => {
  it('is bold for sizes after work only (common practice, no source)', () => {
    expect(isEmphasised({ quantity: 'bore', stage: 'after' })).toBe(true);
    expect(isEmphasised({ quantity: 'bore', stage: 'before' })).toBe(false);
    expect(isEmphasised({ quantity: 'crosshatch', stage: 'after' })).toBe(false);
  });
});
