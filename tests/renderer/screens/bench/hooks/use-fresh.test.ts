import { describe, expect, it } from 'vitest';
import type { Entry } from '#renderer/client/outbox.ts';
import { freshOf } from '#renderer/screens/bench/hooks/use-fresh.ts';
import { cellOf } from '../sheets.ts';

const entry = (place: string, shown: string, more: Partial<Entry> = {}): Entry => ({
  key: `${place} ${shown}`,
  order: 1,
  parcel: null,
  person: 7,
  at: '2026-03-09T14:00:00.000Z',
  place,
  shown,
  ...more,
});
const judged = { text: '35.46', cell: cellOf('35.46'), column: null };
const seenAs = (typed: string) => new Map([['a', { ...judged, typed }]]);

describe('freshOf', () => {
  it('keeps the verdict of what was just entered while it waits and after it is kept', () => {
    const seen = seenAs('3546');
    expect(freshOf([entry('a', '3546')], seen).get('a')).toEqual({ ...judged, waiting: true });
    expect(freshOf([], seen).get('a')).toEqual({ ...judged, waiting: false });
  });

  it('shows what waits from before a reload without a verdict', () => {
    expect(freshOf([entry('a', '35.46')], new Map()).get('a')).toEqual({
      text: '35.46',
      cell: null,
      column: null,
      waiting: true,
    });
  });

  it('says nothing of the verdict of a figure that was put in place of the one seen', () => {
    expect(freshOf([entry('a', '36.00')], seenAs('35.46')).get('a')).toEqual({
      text: '36.00',
      cell: null,
      column: null,
      waiting: true,
    });
  });

  it('leaves a refused figure to the question about it', () => {
    const refused = entry('a', '35.46', { refused: { kind: 'invalid-input', code: 'x', message: '' } });
    expect(freshOf([refused], seenAs('35.46')).size).toBe(0);
  });
});
