/** The word of a casting, rule by rule, first match from the top. */
import { describe, expect, it } from 'vitest';
import { castingNow } from '#core/state/compute/castings.ts';
import { know } from '#core/state/compute/live.ts';
import { operationNow } from '#core/state/compute/operations.ts';
import { at, casting, container, factsOf, hold, operation, run, signature } from '../builders.ts';

function wordOf(wanted: Parameters<typeof factsOf>[0]) {
  const known = know(factsOf(wanted));
  const [first] = known.facts.castings;
  if (!first) throw new Error('no casting');
  return castingNow(
    known,
    first,
    known.facts.operations.map((o) => operationNow(known, o)),
  ).word;
}
const done = (id: number, more: Parameters<typeof operation>[1] = {}) => operation(id, { finishedAt: at(id), ...more });

describe('castingNow', () => {
  it('follows the work: received, stripped, clean, crack check, machining, assembled', () => {
    const open = operation(9);
    expect(wordOf({})).toBe('received');
    expect(wordOf({ castings: [casting(1, { bare: true })] })).toBe('stripped');
    expect(wordOf({ operations: [done(1, { gate: 'strip' }), open] })).toBe('stripped');
    expect(wordOf({ operations: [done(1, { gate: 'strip' }), done(2, { gate: 'clean' }), open] })).toBe('clean');
    const checked = { operations: [done(3, { gate: 'crack' }), open] };
    expect(wordOf(checked)).toBe('received');
    expect(wordOf({ ...checked, castings: [casting(1, { crackResults: new Map([[3, 'none found']]) })] })).toBe(
      'passed crack check',
    );
    expect(wordOf({ ...checked, castings: [casting(1, { crackResults: new Map([[3, 'crack found']]) })] })).toBe(
      'received',
    );
    expect(wordOf({ operations: [operation(4, { gate: 'machine' })], runs: [run(4)] })).toBe('in machine work');
    expect(wordOf({ operations: [done(5, { gate: 'assemble' }), open] })).toBe('assembled');
  });

  it('believes the last check: a re-test after the repair counts', () => {
    const operations = [done(3, { gate: 'crack' }), done(6, { gate: 'crack' }), operation(9)];
    const results = new Map([
      [3, 'crack found'],
      [6, 'none found'],
    ]);
    expect(wordOf({ operations, castings: [casting(1, { crackResults: results })] })).toBe('passed crack check');
  });

  it('says work done only when there was work, all of it is done and none of it assembles', () => {
    expect(wordOf({ operations: [done(1), done(2)] })).toBe('work done');
    expect(wordOf({ operations: [done(1), done(2, { gate: 'assemble' })] })).toBe('assembled');
  });

  it('is signed off with its signatures, two where an operation asks for two, and staged when all of it stands ready', () => {
    const one = { operations: [done(1)], signOffs: [signature()] };
    expect(wordOf(one)).toBe('signed off');
    const two = { operations: [done(1, { twoSignatures: true })], signOffs: [signature()] };
    expect(wordOf(two)).toBe('work done');
    expect(wordOf({ ...two, signOffs: [signature(), signature({ id: 2, place: 'second' })] })).toBe('signed off');
    expect(wordOf({ ...one, signOffs: [signature({ reopened: true })] })).toBe('work done');
    const ready = { ...one, castings: [casting(1, { standsAt: 'ready' })] };
    const id = 1 as never;
    expect(wordOf(ready)).toBe('staged');
    expect(wordOf({ ...ready, containers: [container({ castingId: id, standsAt: 'parts' })] })).toBe('signed off');
    expect(wordOf({ ...ready, containers: [container({ castingId: id, standsAt: 'ready' })] })).toBe('staged');
  });

  it('is on hold by itself, its ticket, or an operation that would be ready', () => {
    const work = { operations: [operation(1), operation(2, { lineId: 2 as never })] };
    expect(wordOf({ ...work, holds: [hold()] })).toBe('on hold');
    expect(wordOf({ ...work, holds: [hold({ castingId: 1 as never })] })).toBe('on hold');
    expect(wordOf({ ...work, holds: [hold({ castingId: 7 as never })] })).toBe('received');
    expect(wordOf({ ...work, holds: [hold({ operationId: 1 as never })] })).toBe('on hold');
    // Operation 2 has no line that covers it: its hold keeps nothing back that could be done.
    expect(wordOf({ ...work, holds: [hold({ operationId: 2 as never })] })).toBe('received');
  });

  it('is scrap only when the lead and the customer both said so', () => {
    expect(wordOf({ castings: [casting(1, { scrapAt: at(3) })] })).toBe('on hold');
    expect(wordOf({ castings: [casting(1, { scrapAt: at(3), scrapAgreed: true })] })).toBe('scrap');
    expect(wordOf({ castings: [casting(1, { scrapAt: at(3), scrapAgreed: true, outAt: at(4) })] })).toBe('released');
  });
});
