import { describe, expect, it } from 'vitest';
import type { Entry } from '#renderer/client/outbox.ts';
import { entriesAt, entryFor, takeBackFor, undoFor, waitingByPlace } from '#renderer/screens/bench/reading-parcel.ts';
import { spotAt } from '#renderer/screens/bench/reading-view.ts';
import { cellOf, readingOf, sheetOf } from './sheets.ts';

const sheet = sheetOf([cellOf('35.12', 5), cellOf(null), cellOf(null), cellOf(null)]);
const at = (column: string) => {
  const spot = spotAt(sheet, 'installed-height||before', column);
  if (!spot) throw new Error('no spot');
  return spot;
};
const typing = { text: '35.46', tool: 3, readOn: 'cup', operation: 44, takenAt: '2026-03-09T14:00:00.000Z' } as const;
const waiting = (key: string, more: Partial<Entry> = {}): Entry => ({
  key,
  order: 1,
  parcel: null,
  person: 7,
  at: '',
  place: '1|installed-height||before|2',
  shown: '35.40',
  ...more,
});

describe('entryFor', () => {
  it('is a new reading of its cell with gauge, unit, operation and moment', () => {
    const entry = entryFor(at('2'), typing, undefined, 'k1');
    expect(entry).toMatchObject({ key: 'k1', shown: '35.46', place: '1|installed-height||before|2' });
    expect(entry?.parcel).toEqual({
      name: 'readings/add-readings',
      input: {
        casting: 1,
        operation: 44,
        rows: [
          {
            quantity: 'installed-height',
            spot: 2,
            point: null,
            stage: 'before',
            typed: '35.46',
            unit: 'mm',
            tool: 3,
            readOn: 'cup',
            takenAt: typing.takenAt,
            sure: false,
          },
        ],
      },
    });
  });

  it('supersedes the reading that stands, so that the old one stays in sight', () => {
    const entry = entryFor(at('1'), typing, undefined, 'k1');
    expect(entry?.parcel).toMatchObject({ name: 'readings/supersede-reading', input: { reading: 5, typed: '35.46' } });
  });

  it('is nothing when the same figure stands there already', () => {
    expect(entryFor(at('1'), { ...typing, text: '35.12' }, undefined, 'k1')).toBeNull();
  });

  it('follows a figure of the same cell that this tablet has not sent yet', () => {
    const entry = entryFor(at('2'), typing, waiting('k0'), 'k1');
    expect(entry?.after).toMatchObject({ key: 'k0', parcel: { name: 'readings/supersede-reading' } });
    expect(entry?.parcel?.name).toBe('readings/add-readings');
  });
});

describe('undoFor', () => {
  const undoable = { key: 'k1', place: 'p', row: 'r', column: '1', text: '35.46', was: null };
  it('takes a lone reading back', () => {
    expect(undoFor(undoable, readingOf(9, '35.46'), false, 'k2')).toMatchObject({
      shown: '',
      parcel: { name: 'readings/take-back-reading', input: { reading: 9 } },
    });
  });
  it('puts the earlier figure back where a correction is undone', () => {
    const back = undoFor({ ...undoable, was: readingOf(5, '35.12') }, readingOf(9, '35.46'), false, 'k2');
    expect(back).toMatchObject({
      shown: '35.12',
      parcel: { name: 'readings/supersede-reading', input: { reading: 9, typed: '35.12', sure: true } },
    });
  });
  it('waits for what is still on its way', () => {
    expect(undoFor(undoable, null, true, 'k2')).toMatchObject({ parcel: null, after: { key: 'k1' } });
  });
  it('has nothing to do where nothing stands', () => {
    expect(undoFor(undoable, null, false, 'k2')).toBeNull();
  });
});

describe('takeBackFor', () => {
  it('names the reading it takes back', () => {
    expect(takeBackFor('p', readingOf(9, '35.46'), 'k')).toMatchObject({
      parcel: { input: { reading: 9 } },
      shown: '',
    });
  });
});

describe('waitingByPlace and entriesAt', () => {
  const refused = waiting('k2', { refused: { kind: 'invalid-input', code: 'readings/ask', message: '?' } });
  it('shows the last unsent figure of a place and leaves refused ones out', () => {
    expect(
      waitingByPlace([waiting('k0'), waiting('k1', { shown: '35.46' }), refused]).get('1|installed-height||before|2'),
    ).toBe('35.46');
    expect(waitingByPlace([refused]).size).toBe(0);
  });
  it('finds both of a place', () => {
    expect(entriesAt([waiting('k0'), refused], '1|installed-height||before|2')).toMatchObject({
      waiting: { key: 'k0' },
      refused: { key: 'k2' },
    });
  });
});
