/** What lists read. Nothing in it may depend on today. */
import { describe, expect, it } from 'vitest';
import type { Cents, Seconds } from '#core/kernel/units.ts';
import { operationRows, slotOf, ticketRow } from '#core/state/compute/rows.ts';
import { ticketNow } from '#core/state/compute/tickets.ts';
import { at, casting, factsOf, hold, line, onDay, operation, part, question, run, signature } from '../builders.ts';

const nowOf = (wanted: Parameters<typeof factsOf>[0]) => ticketNow(factsOf(wanted));

describe('ticketRow', () => {
  it('says where it is or what it waits for', () => {
    const where = (wanted: Parameters<typeof factsOf>[0]) => ticketRow(nowOf(wanted)).where_words;
    const work = { operations: [operation(1, { code: 'seat-cut' }), operation(2)] };
    expect(where(work)).toBe('at Head bench');
    expect(where({ ...work, runs: [run(1)] })).toBe('seat cut now');
    expect(where({ ...work, holds: [hold()] })).toBe('waiting parts');
    expect(where({ ...work, questions: [question()] })).toBe('no answer yet');
    expect(where({ operations: [operation(1)], parts: [part({ blocks: 1 })] })).toBe('waits for pistons');
    expect(where({ operations: [operation(1, { finishedAt: at(5) })] })).toBe('to be signed off');
    expect(where({ ticket: { arrivedAt: null } })).toBe('not here yet');
  });

  it('counts the work left on the slowest casting, and sees when nothing of one can be begun', () => {
    const two = {
      castings: [casting(1), casting(2)],
      operations: [
        operation(1),
        operation(2, { unattendedSeconds: 300 as Seconds }),
        operation(3, { castingId: 2 as never }),
        operation(4, { finishedAt: at(1) }),
      ],
    };
    expect(ticketRow(nowOf(two))).toMatchObject({ left_s: 1500, stuck: 0 });
    expect(ticketRow(nowOf({ ...two, parts: [part({ blocks: 3, castingId: 2 as never })] })).stuck).toBe(1);
  });

  it('keeps the question that waits longest, the last promise beside the first, and what is to pay', () => {
    const promise = { minute: 1020, ownTime: false, dependsOn: null, at: at(0) };
    const row = ticketRow(
      nowOf({
        questions: [question({ id: 8, number: 2, askedAt: at(60) }), question({ id: 7, number: 1, askedAt: at(40) })],
        promises: [
          { ...promise, day: onDay('2026-03-11') },
          { ...promise, day: onDay('2026-03-12'), ownTime: true },
        ],
        money: { balance: 1000 as Cents, unbilled: 500 as Cents, held: 200 as Cents },
      }),
    );
    expect(row).toMatchObject({
      unanswered: 2,
      asked_id: 7,
      asked_kind: 'added work',
      first_promised_on: '2026-03-11',
      promised_on: '2026-03-12',
      own_time: 1,
      to_pay_cents: 1300,
    });
  });

  it('asks to tell again when it was signed after they were told', () => {
    const ready = {
      castings: [casting(1, { standsAt: 'ready' })],
      operations: [operation(1, { finishedAt: at(60) })],
      signOffs: [signature({ at: at(90) })],
    };
    const told = (minute: number) =>
      ticketRow(nowOf({ ...ready, contacts: [{ at: at(minute), about: 'ready', reached: true, words: 'told' }] }))
        .told_at;
    expect([told(95), told(80)]).toEqual([at(95), null]);
  });

  it('remembers the first call in vain since somebody was reached', () => {
    const call = (minute: number, reached: boolean) => ({
      at: at(minute),
      about: 'other',
      reached,
      words: `call ${minute}`,
    });
    const ring = (...contacts: ReturnType<typeof call>[]) => ticketRow(nowOf({ contacts })).ring_words;
    expect(ring(call(1, false), call(2, false))).toBe('call 1');
    expect(ring(call(1, false), call(2, true))).toBeNull();
    expect(ring(call(1, false), call(2, true), call(3, false))).toBe('call 3');
  });
});

describe('ticketRow of a promise', () => {
  const flags = (wanted: Parameters<typeof factsOf>[0]) => {
    const { promise_open, stuck, ready } = ticketRow(
      nowOf({
        promises: [{ day: onDay('2026-03-11'), minute: 1020, ownTime: false, dependsOn: null, at: at(0) }],
        ...wanted,
      }),
    );
    return { promise_open, stuck, ready };
  };

  it('is open until the work is ready, and stuck while somebody waits for somebody', () => {
    const work = { operations: [operation(1)] };
    expect(flags(work)).toEqual({ promise_open: 1, stuck: 0, ready: 0 });
    expect(flags({ ...work, holds: [hold()] })).toEqual({ promise_open: 1, stuck: 1, ready: 0 });
    expect(flags({ ...work, questions: [question()] })).toMatchObject({ stuck: 1 });
    expect(flags({ ...work, promises: [] })).toMatchObject({ promise_open: 0 });
    const ready = {
      castings: [casting(1, { standsAt: 'ready' })],
      operations: [operation(1, { finishedAt: at(1) })],
      signOffs: [signature()],
    };
    expect(flags(ready)).toEqual({ promise_open: 0, stuck: 0, ready: 1 });
    // Ready and fetched: nobody is told any more.
    expect(flags({ ...ready, castings: [casting(1, { outAt: at(99) })] })).toEqual({
      promise_open: 0,
      stuck: 0,
      ready: 0,
    });
  });
});

describe('operationRows', () => {
  it('holds open work only, each in its slot', () => {
    const rows = operationRows(
      nowOf({
        operations: [
          operation(1, { finishedAt: at(1) }),
          operation(2),
          operation(3),
          operation(4, { lineId: 2 as never }),
          operation(5, { notNeededAt: at(2) }),
          operation(6),
        ],
        lines: [line(1), line(2, { covered: false, answer: null })],
        runs: [run(2)],
        holds: [hold({ operationId: 6 as never })],
        parts: [part({ blocks: 3 })],
      }),
    );
    expect(rows.map((row) => [row.operation_id, row.slot, row.right_words, row.hold_reason])).toEqual([
      [2, 'running', '', null],
      [3, 'waiting', 'waits for pistons', null],
      [4, 'asked', 'not approved, do not start', null],
      [6, 'held', 'waiting parts', 'parts'],
    ]);
  });

  it('holds nothing of an enquiry, an ended ticket or a casting that left', () => {
    const work = { operations: [operation(1)] };
    expect(operationRows(nowOf({ ...work, ticket: { arrivedAt: null } }))).toEqual([]);
    expect(operationRows(nowOf({ ...work, castings: [casting(1, { outAt: at(1) })] }))).toEqual([]);
  });
});

describe('slotOf', () => {
  it('is next when nothing stops it', () => {
    const [state] = nowOf({ operations: [operation(1)] }).operations;
    expect(state && slotOf(state)).toBe('next');
  });
});
