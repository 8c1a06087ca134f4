import { describe, expect, it } from 'vitest';
import { EMPTY, inputOf, isFinding, placeFrom } from '#renderer/screens/bench/finding.ts';
import { castingOf, operationOf } from './castings.ts';

const spot = { key: 'valve:1E', label: '1E', kind: 'valve', x: 1, y: 1, r: 1 };

describe('placeFrom', () => {
  it('names the spot that was touched', () => {
    expect(placeFrom({ x: 100, y: 200, spot }, [{ id: 32, kind: 'valve', label: '1E' }])).toMatchObject({
      spot: 32,
      words: 'valve 1E',
    });
  });
  it('says the place on the drawing in words where no spot is', () => {
    expect(placeFrom({ x: 3_700, y: 2_000, spot: null }, [])).toMatchObject({
      spot: null,
      words: '37 % from the front, 20 % down on the drawing',
    });
  });
});

describe('inputOf', () => {
  const bench = castingOf([operationOf(3, 'pressure test', { mine: '2026-03-09T14:00:00.000Z' as never })]);
  it('sends kind, spot, photo and hold, and the operation at work', () => {
    const place = { x: 1, y: 1, spot: 32, words: 'valve 1E' };
    const input = inputOf(bench, {
      ...EMPTY,
      kind: 5,
      place,
      photos: [{ sha256: 'a', takenAt: 'm' }],
      hold: 'crack_or_scrap',
    });
    expect(input).toEqual({
      castingId: 1,
      operationId: 3,
      findingKindId: 5,
      spotId: 32,
      place: null,
      words: null,
      photos: [{ file: { sha256: 'a' }, takenAt: 'm' }],
      hold: { reason: 'crack_or_scrap' },
    });
  });
  it('sends the place in words where no spot was meant', () => {
    const place = { x: 1, y: 1, spot: null, words: '1 % from the front' };
    expect(inputOf(bench, { ...EMPTY, words: ' crack ', place })).toMatchObject({
      place: '1 % from the front',
      spotId: null,
      words: ' crack ',
    });
  });
});

describe('isFinding', () => {
  it('takes back only what was kept as a finding', () => {
    expect(isFinding(EMPTY)).toBe(true);
    expect(isFinding({ words: 1 })).toBe(false);
    expect(isFinding(null)).toBe(false);
  });
});
