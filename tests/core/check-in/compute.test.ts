import { describe, expect, it } from 'vitest';
import { accountState, findSold, type Sold } from '#core/check-in/compute.ts';
import { basisPoints, cents } from '#core/kernel/units.ts';

const SOLD: readonly Sold[] = [
  { what: 'operation', id: 1, names: ['hot tank', 'caustic wash', 'hot-tank'] },
  { what: 'operation', id: 2, names: ['pressure test', 'test for leaks', 'pressure-test'] },
  { what: 'operation', id: 3, names: ['pressure re-test', 're-test', 'pressure-retest'] },
  { what: 'package', id: 9, names: ['valve job', 'valve job', 'valve-job'] },
];

describe('findSold', () => {
  it.each([
    ['Hot Tank', 1],
    ['hot tank the head', 1],
    ['VALVE  JOB', 9],
    ['test for leaks', 2],
    ['caustic', 1],
  ])('%s is %i', (said, id) => {
    expect(findSold(said, SOLD)?.id).toBe(id);
  });
  it.each(['pressure', 'make it purr', '', '???', 'hot'])('%j is nothing certain', (said) => {
    expect(findSold(said, SOLD)).toBeUndefined();
  });
});

describe('accountState', () => {
  const use = (state: 'none' | 'ok' | 'warn' | 'over', used: number, bp: number) => ({
    used: cents(used),
    limit: cents(250_000),
    bp: basisPoints(bp),
    state,
  });
  it.each([
    ['ok', '', false],
    ['warn', 'Near the limit: 2,013.50 of 2,500.00 used, 80.54\u00a0%.', false],
    ['over', 'Over the limit: 2,013.50 of 2,500.00 used, 80.54\u00a0%. Tag it; work waits for a named yes.', true],
  ] as const)('%s', (state, words, waits) => {
    expect(accountState({ stopWords: null, use: use(state, 201_350, 8054) }, { language: 'en' })).toMatchObject({
      state,
      words,
      waitsForYes: waits,
    });
  });
  it('says the stop before anything else', () => {
    expect(accountState({ stopWords: 'Account on stop.', use: use('over', 1, 1) }, { language: 'en' })).toMatchObject({
      state: 'on stop',
      words: 'Account on stop.',
      waitsForYes: true,
    });
  });
});
