import { describe, expect, it } from 'vitest';
import type { OperationNow } from '#core/state/compute/operations.ts';
import { TICKET_WORDS } from '#core/state/compute/words.ts';
import { agreementLine, doingWords, markOf, nextOf, saidOf } from '#core/ticket-page/compute.ts';

const operation = (id: number, changes: Partial<OperationNow>): OperationNow => ({
  id,
  castingId: 1,
  word: 'requested',
  live: true,
  covered: true,
  stops: [],
  soft: [],
  waived: [],
  running: [],
  begun: false,
  ...changes,
});
const stop = (short: string) => ({
  kind: 'rule' as const,
  strength: 'hard' as const,
  words: short,
  short,
  wayOn: null,
  rule: null,
});
const names = ['', 'Valve grind', 'Seat cut', 'Assemble'];
const doing = (operations: OperationNow[]) =>
  doingWords(
    { operations },
    (id) => names[id] ?? '',
    () => '10:20, DR',
  );

describe('agreementLine', () => {
  it('marks one stage, those before it as past', () => {
    const line = agreementLine('in work');
    expect(line.filter((stage) => stage.here).map((stage) => stage.word)).toEqual(['in work']);
    expect(line.filter((stage) => stage.past)).toHaveLength(3);
  });
  it.each(TICKET_WORDS)('marks at most one stage for %s', (word) => {
    const here = agreementLine(word).filter((stage) => stage.here);
    expect(here.length).toBe(['enquiry', 'declined', 'abandoned'].includes(word) ? 0 : 1);
  });
});

describe('markOf', () => {
  it.each([
    ['done', true, 'done'],
    ['signed', true, 'done'],
    ['started', true, 'running'],
    ['stopped', true, 'running'],
    ['declined', false, 'off'],
    ['not needed', true, 'off'],
    ['approved', true, 'open'],
    ['quoted', false, 'uncovered'],
  ] as const)('%s, covered %s: %s', (word, covered, mark) => {
    expect(markOf({ word, covered })).toBe(mark);
  });
});

describe('nextOf', () => {
  it('is the first that may start', () => {
    expect(
      nextOf([
        operation(1, { word: 'done' }),
        operation(2, { word: 'ready to start' }),
        operation(3, { word: 'ready to start' }),
      ])?.id,
    ).toBe(2);
  });
});

describe('doingWords', () => {
  it.each([
    [
      'Valve grind started 10:20, DR, then Seat cut',
      [operation(1, { word: 'started' }), operation(2, { word: 'ready to start' })],
    ],
    [
      'Valve grind stopped: waits for guide size',
      [operation(1, { word: 'stopped', stops: [stop('waits for guide size')] })],
    ],
    ['next Seat cut', [operation(1, { word: 'done' }), operation(2, { word: 'ready to start' })]],
    [
      'Seat cut: not approved, do not start',
      [operation(2, { covered: false, stops: [stop('not approved, do not start')] })],
    ],
    ['all done', [operation(1, { word: 'done' })]],
    ['no work asked for', []],
  ])('%s', (words, operations) => {
    expect(doing(operations)).toBe(words);
  });
});

describe('saidOf', () => {
  it('leaves out what was not said', () => {
    expect(
      saidOf([
        ['Gasket', 'MLS'],
        ['Use', null],
        ['Notes', ''],
      ]),
    ).toEqual([{ label: 'Gasket', words: 'MLS' }]);
  });
});
