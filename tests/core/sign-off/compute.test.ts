/** What a signature waits for, and who may give it. */
import { describe, expect, it } from 'vitest';
import type { NeededReading } from '#core/readings/compute/needed.ts';
import type { Cell } from '#core/readings/compute/sheet-model.ts';
import { countsApart, nextPlace, openReadings, signingStops, whyNotSigner, workedOn } from '#core/sign-off/compute.ts';
import { know } from '#core/state/compute/live.ts';
import { GROUPS, RULES } from '../catalogue/compute/first-catalogue.ts';
import { at, casting, factsOf, hold, operation, run, signature } from '../state/builders.ts';

const cell = (more: Partial<Cell>): Cell => ({
  state: 'read',
  text: '1.705',
  value: 43_307_000,
  unit: 'in',
  verdict: null,
  word: '',
  limit: null,
  marks: [],
  reading: null,
  earlier: [],
  choose: [],
  decision: null,
  ...more,
});
const needed = (more: Partial<NeededReading>): NeededReading => ({
  operation: 1 as never,
  quantity: 'installed-height',
  spot: 7 as never,
  point: null,
  stage: 'before',
  required: true,
  words: '3E1 installed height',
  cell: cell({}),
  isMet: true,
  value: '1.705 in',
  limit: '1.690 – 1.710 in, cam card',
  ...more,
});
const verdict = (name: 'pass' | 'fail' | 'too close to call' | 'no limit known') =>
  ({ name, direction: null, cannotProve: false }) as const;

describe('openReadings', () => {
  it('lists what is missing, failed, too close or judged by nothing, and says which of them stop', () => {
    const found = openReadings([
      needed({}),
      needed({ cell: cell({ verdict: verdict('pass') }) }),
      needed({ isMet: false, value: '' }),
      needed({ isMet: false, required: false }),
      needed({ cell: cell({ verdict: verdict('fail') }) }),
      needed({ cell: cell({ verdict: verdict('too close to call') }) }),
      needed({
        cell: cell({ verdict: verdict('fail'), decision: { accepted: true, words: 'customer knows', by: 'BL' } }),
      }),
      needed({ cell: cell({ verdict: verdict('no limit known') }) }),
    ]);
    expect(found.map((r) => [r.verdict, r.stops])).toEqual([
      ['not measured', true],
      ['fail', true],
      ['too close to call', true],
      ['fail', false],
      // Never pass (I37): it may be signed and prints so.
      ['no limit known', false],
    ]);
  });
});

describe('countsApart', () => {
  it('wants every piece back that came out (I19)', () => {
    const pieces = { words: 'plugs', out: 2, back: 1, explained: false };
    expect(countsApart([pieces])).toEqual(['2 plugs out, 1 back. Find the rest before signing.']);
    expect(
      countsApart([
        { ...pieces, back: 2 },
        { ...pieces, back: null },
        { ...pieces, explained: true },
      ]),
    ).toEqual([]);
  });
});

function stopsOf(wanted: Parameters<typeof factsOf>[0], more: Partial<Parameters<typeof signingStops>[0]> = {}) {
  const known = know(factsOf(wanted));
  const [first] = known.facts.castings;
  if (!first) throw new Error('no casting');
  return signingStops({ known, casting: first, readings: [], counts: [], ...more }).map((stop) => stop.words);
}
const DONE = { operations: [operation(1, { finishedAt: at(60) })] };

describe('signingStops', () => {
  it('is empty when all work is done and nothing is open', () => {
    expect(stopsOf(DONE)).toEqual([]);
  });

  it('names undone work, missing readings, failed ones and counts (I18, I19)', () => {
    const readings = openReadings([
      needed({ isMet: false }),
      needed({ words: '4I2 installed height', value: '1.730 in', cell: cell({ verdict: verdict('fail') }) }),
    ]);
    expect(
      stopsOf({ operations: [operation(1, { code: 'seat-cut' })] }, { readings, counts: ['2 plugs out, 1 back.'] }),
    ).toEqual([
      'Not done: seat cut.',
      'Not measured: 3E1 installed height. Measure or mark it not applicable.',
      '4I2 installed height reads 1.730 in, 1.690 – 1.710 in, cam card: fail. A lead decides.',
      '2 plugs out, 1 back.',
    ]);
  });

  it('waits for the plug map of a block, which nobody can let pass', () => {
    const block = { ...DONE, rules: RULES, groups: GROUPS };
    const plugs = 'The plug map is not complete. Find every plug before signing.';
    expect(stopsOf({ ...block, castings: [casting(1, { kind: 'block' })] })).toEqual([plugs]);
    expect(
      stopsOf({ ...block, castings: [casting(1, { kind: 'block', ticked: new Set(['plug-map-complete']) })] }),
    ).toEqual([]);
    expect(stopsOf(block)).toEqual([]);
  });

  it('waits for every hold but waiting money', () => {
    expect(stopsOf({ ...DONE, holds: [hold()] })).toEqual(['On hold: waiting parts. Close the hold first.']);
    expect(stopsOf({ ...DONE, holds: [hold({ reason: 'money' })] })).toEqual([]);
    expect(stopsOf({ ...DONE, holds: [hold({ castingId: 2 as never })] })).toEqual([]);
    expect(stopsOf({ ...DONE, holds: [hold({ operationId: 1 as never })] })).toHaveLength(1);
    expect(stopsOf({ ...DONE, holds: [hold({ castingId: 2 as never, reason: 'identity' })] })).toHaveLength(1);
  });

  it('signs nothing that has no work, left, or is scrap', () => {
    expect(stopsOf({})).toEqual(['No work is on it: send it home unworked, or add work.']);
    expect(stopsOf({ ...DONE, castings: [casting(1, { outAt: at(1) })] })).toEqual(['This casting has left the shop.']);
    expect(stopsOf({ ...DONE, castings: [casting(1, { scrapAt: at(1) })] })).toEqual([
      'This casting was declared scrap.',
    ]);
  });
});

describe('nextPlace', () => {
  const of = (wanted: Parameters<typeof factsOf>[0]) => nextPlace(know(factsOf(wanted)), 1);

  it('is first, then second where two sign, then none', () => {
    expect(of(DONE)).toBe('first');
    expect(of({ ...DONE, signOffs: [signature()] })).toBeNull();
    const two = { operations: [operation(1, { finishedAt: at(60), twoSignatures: true })] };
    expect(of({ ...two, signOffs: [signature()] })).toBe('second');
    expect(of({ ...two, signOffs: [signature(), signature({ id: 2, place: 'second' })] })).toBeNull();
    expect(of({ ...two, signOffs: [signature({ reopened: true })] })).toBe('first');
  });
});

describe('whyNotSigner', () => {
  const known = know(
    factsOf({ operations: [operation(1, { finishedAt: at(60), finishedBy: 4 as never })], signOffs: [signature()] }),
  );
  const why = (staff: number | null, same = false) => whyNotSigner(known, 1, staff as never, same);

  it('lets nobody sign their own work, nor both places, unless the owner says so (I20)', () => {
    expect(why(4)).toBe('You worked on this one. Another person signs.');
    expect(why(5)).toBe('You signed the first place. Another person signs the second.');
    expect([why(6), why(4, true), why(5, true)]).toEqual([null, null, null]);
    expect(why(null, true)).toMatch(/^Nobody is signed in/);
  });
});

describe('workedOn', () => {
  it('counts whoever was on it, not only who finished it', () => {
    const known = know(
      factsOf({
        operations: [operation(1), operation(2, { castingId: 2 as never })],
        runs: [run(1), run(2, { staffId: 6 as never })],
      }),
    );
    expect([workedOn(known, 1, 4 as never), workedOn(known, 1, 6 as never)]).toEqual([true, false]);
  });
});
