import { describe, expect, it } from 'vitest';
import { BENCH_TABLES } from '#core/catalogue/compute/bench-tables.ts';
import { id } from '#core/kernel/ids.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Facts, Spot } from '#core/readings/compute/model.ts';
import {
  listNeeded,
  neededSummary,
  stopsSigning,
  type Want,
  type WantingOperation,
} from '#core/readings/compute/needed.ts';
import { factsOf, limitOf, readingOf, valves } from '#tests/kit/bench-facts.ts';
import { ports } from '#tests/kit/valve-bench.ts';

const want = (quantity: string, words: Partial<Want> = {}): Want => ({
  quantity,
  stage: 'after',
  where: 'worked_spots',
  required: true,
  ...words,
});
const operation = (wants: readonly Want[], words: Partial<WantingOperation> = {}): WantingOperation => ({
  id: id<'operation'>(5),
  spots: [],
  redo: false,
  wants,
  ...words,
});
const needed = (facts: Partial<Facts>, ...operations: readonly WantingOperation[]) =>
  listNeeded(openBench(factsOf({ spots: valves('1E', '1I'), ...facts })), operations, BENCH_TABLES);
const spot = id<'spot'>(1);

describe('listNeeded', () => {
  it('names every place that is not measured: 1E margin', () => {
    const list = needed({ readings: [readingOf('margin', '0.050', 'in', { spot })] }, operation([want('margin')]));

    expect(list.map((it) => `${it.words} ${it.isMet}`)).toEqual(['1E margin true', '1I margin false']);
    expect(neededSummary(list)).toBe('1 of 2 read');
    expect(list.map(stopsSigning)).toEqual([false, true]);
    expect(list[0]).toMatchObject({ value: '0.050 in', limit: 'no limit known' });
  });

  it('asks for the worked places only, and once for the casting', () => {
    const list = needed(
      {},
      operation([want('margin'), want('thickness', { where: 'once' })], { spots: [id<'spot'>(2)] }),
    );

    expect(list.map((it) => it.words)).toEqual(['1I margin', 'thickness']);
  });

  it('wants the points that the table shows', () => {
    const list = needed({}, operation([want('guide-id')], { spots: [spot] }));

    expect(list.map((it) => it.point)).toEqual(['top', 'mid', 'bot']);
  });

  it('takes for before what was last known, and for after only its own', () => {
    const readings = [readingOf('stem', '0.3410', 'in', { spot, operation: id<'operation'>(3) })];

    expect(needed({ readings }, operation([want('stem', { stage: 'before' })], { spots: [spot] }))[0]?.isMet).toBe(
      true,
    );
    expect(needed({ readings }, operation([want('stem')], { spots: [spot], redo: true }))[0]?.isMet).toBe(false);
    expect(
      needed({ readings }, operation([want('stem')], { spots: [spot], id: id<'operation'>(3), redo: true }))[0]?.isMet,
    ).toBe(true);
  });

  it('asks of a port where its valve was worked, and of one that serves several', () => {
    const [first, second] = ports('1I', '1E');
    const both = { ...(first as Spot), id: id<'spot'>(201), label: '1-2I', cylinder: null };
    const spots = [...valves('1E', '1I', '2I'), ...(first && second ? [first, second] : []), both];
    const labels = (worked: number[]) =>
      needed({ spots }, operation([want('port-vacuum-fall')], { spots: worked.map((it) => id<'spot'>(it)) })).map(
        (it) => it.words.split(' ')[0],
      );

    expect(labels([1])).toEqual(['1E']);
    expect(labels([2])).toEqual(['1I', '1-2I']);
    expect(labels([])).toEqual(['1I', '1E', '1-2I']);
  });

  it('wants of a redo its own figure also where it was typed instead of computed', () => {
    const typed = readingOf('deck-flatness', '0.0020', 'in', { operation: id<'operation'>(3) });
    const met = (of: number) =>
      needed({ readings: [typed] }, operation([want('deck-flatness')], { id: id<'operation'>(of), redo: true }))[0]
        ?.isMet;

    expect([met(3), met(7)]).toEqual([true, false]);
  });

  it('stops a signature for a fail without a lead’s yes, and not for one that no limit judges', () => {
    const limits = [limitOf('margin', 'in', { low: '0.047' })];
    const readings = [readingOf('margin', '0.040', 'in', { spot })];
    const decisions = [
      {
        quantity: 'margin',
        spot,
        point: null,
        stage: 'after' as const,
        value: 1_016_000,
        accepted: true,
        words: 'agreed',
        by: 'BL',
      },
    ];
    const one = operation([want('margin', { required: false })], { spots: [spot] });

    expect(needed({ limits, readings }, one).map(stopsSigning)).toEqual([true]);
    expect(needed({ limits, readings, decisions }, one).map(stopsSigning)).toEqual([false]);
    expect(needed({ readings }, one).map(stopsSigning)).toEqual([false]);
  });

  it('is not met by chosen shims that nobody wrote as fitted', () => {
    const limits = [limitOf('height-with-shim', 'in', { low: '1.490', high: '1.510', target: '1.500' })];
    const readings = [readingOf('installed-height', '1.518', 'in', { spot, stage: 'before' })];
    const one = operation([want('height-with-shim')], { spots: [spot] });

    expect(needed({ limits, readings }, one)[0]?.isMet).toBe(false);
    expect(
      needed({ limits, readings: [...readings, readingOf('shims-fitted', '0.015', null, { spot })] }, one)[0],
    ).toMatchObject({ isMet: true, value: '1.503 in', limit: '1.490 – 1.510 in, casting type sheet' });
  });

  it('wants no map of cracks where none was found', () => {
    const found = (typed: string) => ({ readings: [readingOf('crack-result', typed, null)] });
    const one = operation([want('crack-result', { where: 'once' }), want('crack-map', { where: 'once' })]);

    expect(needed(found('none found'), one)).toHaveLength(1);
    expect(needed(found('crack found'), one)).toHaveLength(2);
  });

  it('needs nothing where nothing is wanted', () => {
    expect(neededSummary(needed({}, operation([])))).toBe('');
    expect(needed({}, operation([want('bore')]))).toEqual([]);
  });
});
