import { describe, expect, it } from 'vitest';
import { operationViews, type ViewInput } from '#core/floor/compute/operation-view.ts';
import { ticketNow } from '#core/state/compute/tickets.ts';
import { at, casting, factsOf, line, operation, run } from '../../state/builders.ts';

const PEOPLE = new Map([
  [4, { initials: 'KT', name: 'K. T.' }],
  [5, { initials: 'DR', name: 'D. R.' }],
]);

function rowsOf(wanted: Parameters<typeof factsOf>[0], more: Partial<ViewInput> = {}) {
  const input: ViewInput = {
    now: ticketNow(factsOf(wanted)),
    people: PEOPLE,
    more: new Map([
      [1, { chargeUnit: 'seat', centreCode: 'guide-seat', redoCause: null, notNeededWhy: null, cautions: 'eyes' }],
    ]),
    needed: [],
    tableOf: () => null,
    inTable: () => false,
    given: [],
    me: 4 as never,
    ...more,
  };
  return operationViews(input, 1);
}

describe('operationViews', () => {
  it('ends a row with who did it, who is on it, what it waits for, or that it is not approved', () => {
    const rows = rowsOf({
      operations: [
        operation(1, { finishedAt: at(60), finishedBy: 5 as never, units: 12, code: 'seat-cut', setUp: '45 deg' }),
        operation(2),
        operation(3, { lineId: 2 as never }),
        operation(4),
      ],
      runs: [run(1, { endedAt: at(45) }), run(2)],
      lines: [line(1), line(2, { covered: false, answer: null })],
    });
    expect(rows.map((row) => [row.mark, row.right, row.minutes])).toEqual([
      ['done', 'done DR', 35],
      ['running', 'KT', null],
      ['uncovered', 'not approved, do not start', null],
      ['open', '', null],
    ]);
    expect(rows[0]).toMatchObject({
      words: 'Seat cut',
      second: '12 seats, 45 deg',
      unitWords: 'seats',
      cautions: 'eyes',
    });
    expect(rows[1]).toMatchObject({ mine: at(10), mayStop: true, mayStart: false, mayFinish: true, next: true });
  });

  it('asks each crack check for a result of its own, and nothing that stands in a table', () => {
    const cell = { state: 'read', verdict: null } as never;
    const need = (operation: number, quantity: string) =>
      ({
        operation,
        quantity,
        spot: null,
        point: null,
        stage: 'after',
        required: true,
        words: quantity,
        cell,
      }) as never;
    const rows = rowsOf(
      { operations: [operation(1, { code: 'penetrant-check' }), operation(2, { code: 'pressure-test' })] },
      {
        needed: [need(1, 'crack-result'), need(2, 'crack-result'), need(2, 'thickness')],
        inTable: (quantity) => quantity === 'thickness',
        given: [{ operation: 1 as never, quantity: 'crack-result', typed: 'none found', reading: 9 as never }],
      },
    );
    expect(rows.map((row) => row.results.map(({ quantity, value, reading }) => [quantity, value, reading]))).toEqual([
      [['crack-result', 'none found', 9]],
      [['crack-result', '', null]],
    ]);
    expect(rows[1]?.results[0]?.choices).toContain('crack found');
  });

  it('offers Both for the same open operation of the pair only', () => {
    const pair = {
      castings: [casting(1, { pair: 1 }), casting(2, { pair: 1 }), casting(3, { pair: 2 })],
      operations: [
        operation(1, { code: 'seat-cut' }),
        operation(2, { code: 'seat-cut', castingId: 2 as never, version: 7 }),
        operation(3, { code: 'seat-cut', castingId: 3 as never }),
      ],
    };
    expect(rowsOf(pair)[0]?.both).toEqual({ operationId: 2, version: 7, tag: 30_902 });
    const done = [
      ...pair.operations.slice(0, 1),
      operation(2, { code: 'seat-cut', castingId: 2 as never, finishedAt: at(1) }),
    ];
    expect(rowsOf({ ...pair, operations: done })[0]?.both).toBeNull();
  });

  it('offers Done down to here where it would close more than one', () => {
    const rows = rowsOf({
      operations: [
        operation(1, { finishedAt: at(1) }),
        operation(2),
        operation(3),
        operation(4, { notNeededAt: at(2) }),
      ],
    });
    expect(rows.map((row) => row.downTo.map((o) => o.operationId))).toEqual([[], [], [2, 3], []]);
  });

  it('points to the hand that is on it, else to the first that may be started', () => {
    const next = (me: number) =>
      rowsOf(
        { operations: [operation(1), operation(2), operation(3)], runs: [run(2), run(3, { staffId: 5 as never })] },
        { me: me as never },
      )
        .filter((row) => row.next)
        .map((row) => row.id);
    expect([next(4), next(5), next(9)]).toEqual([[2], [3], [2]]);
    expect(
      rowsOf({ operations: [operation(1, { lineId: 9 as never }), operation(2)] })
        .filter((row) => row.next)
        .map((r) => r.id),
    ).toEqual([2]);
  });
});
