import { describe, expect, it } from 'vitest';
import { moment } from '#core/kernel/days.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { placeAt } from '#core/readings/compute/place.ts';
import { checkOpen, keepEntry, SILENT, word } from '#core/readings/handlers/keep.ts';
import { practiceHead } from '#tests/kit/practice-head.ts';

const facts = practiceHead('LO-4');

describe('checkOpen', () => {
  const signed = openBench({ ...facts, lockedSince: moment('2026-03-09T12:00:00.000Z') });

  it('closes at the signature, but takes what was read before it and came late', () => {
    expect(checkOpen(openBench(facts), null)).toBeNull();
    expect(checkOpen(signed, '2026-03-09T11:59:00.000Z')).toBe('arrived after');
    expect(() => checkOpen(signed, '2026-03-09T12:00:00.000Z')).toThrow('signed off');
    expect(() => checkOpen(signed, null)).toThrow('signed off');
  });
});

describe('keepEntry', () => {
  it('asks, doubts and refuses before anything is kept', () => {
    const bench = openBench(facts);
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const place = placeAt(bench, { quantity: 'installed-height', spot, point: null, stage: 'before' });
    if (!place) throw new Error('no place');
    const keep = (typed: string, sure = false) => keepEntry(bench, place, { ...SILENT, typed, sure }, 'typed');

    expect(keep('1.512')).toMatchObject({ typed: '1.512', kind: 'number' });
    expect(() => keep('12')).toThrow(expect.objectContaining({ code: 'readings/ask' }));
    expect(() => keep('15.12')).toThrow(expect.objectContaining({ code: 'readings/unlikely' }));
    expect(keep('15.12', true).typed).toBe('15.12');
    expect(() => keep('')).toThrow(expect.objectContaining({ code: 'readings/empty' }));
    expect(word('taken_back', 'taken back')).toMatchObject({ value: null });
  });
});
