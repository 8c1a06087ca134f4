/** Builds what the measuring computes see, from a few words: a head, its limits, its readings. No database. */
import { QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import { day, moment } from '#core/kernel/days.ts';
import { id } from '#core/kernel/ids.ts';
import { readTyped } from '#core/kernel/measure.ts';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import type { Facts, Limit, Reading, ShimStock, Spot, Tool } from '#core/readings/compute/model.ts';

type LimitWords = Partial<Omit<Limit, 'low' | 'high' | 'target'>> &
  Readonly<{ low?: string | null; high?: string | null; target?: string | null }>;

const value = (text: string | null | undefined, unit: UnitCode) => (text == null ? null : measureOf(text, unit));
let next = 0;
const newId = () => {
  next += 1;
  return next;
};

/** A limit as a source prints it; of the casting's type unless said. */
export function limitOf(quantity: string, unit: UnitCode, words: LimitWords = {}): Limit {
  const { low, high, target, ...rest } = words;
  return {
    id: id<'limit_row'>(newId()),
    quantity,
    stage: 'after',
    forWhat: 'casting_type',
    casting: null,
    side: 'any',
    material: null,
    unit,
    typedLow: low ?? null,
    typedHigh: high ?? null,
    typedTarget: target ?? null,
    secondUnitText: null,
    sourceTag: null,
    sourceWords: 'casting type sheet',
    checked: true,
    from: day('2026-01-01'),
    replaces: null,
    ...rest,
    low: value(low, unit),
    high: value(high, unit),
    target: value(target, unit),
  };
}

/** Valves in one row, called `1E`, `1I` and so on. */
export const valves = (...labels: readonly string[]): Spot[] =>
  labels.map((label, index) => ({
    id: id<'spot'>(index + 1),
    kind: 'valve',
    label,
    benchOrder: index + 1,
    row: 1,
    bank: 'none',
    cylinder: Number(/\d+/.exec(label)?.[0]),
    side: label.includes('I') ? 'I' : 'E',
  }));

export const toolOf = (words: Partial<Tool> = {}): Tool => ({
  id: id<'tool'>(newId()),
  name: 'G',
  kind: 'gauge',
  serial: null,
  workCentre: null,
  unit: 'in',
  uncertainty: null,
  uncertaintyBp: null,
  nextDue: null,
  overdue: false,
  retired: false,
  ...words,
});

type ReadingWords = Partial<Reading> & Readonly<{ spot?: Reading['spot'] }>;

/** A reading as typed in a unit; words when the unit is null. */
export function readingOf(quantity: string, typed: string, unit: UnitCode | null, words: ReadingWords = {}): Reading {
  const family = QUANTITIES.find((it) => it.code === quantity)?.family ?? 'length';
  const read = unit === null ? null : readTyped(typed, { family, unit, signed: true });
  if (read && read.kind !== 'figure') throw new Error(`no figure: ${typed}`);
  return {
    id: id<'reading'>(newId()),
    quantity,
    spot: null,
    point: null,
    stage: 'after',
    operation: null,
    kind: unit === null ? 'choice' : 'number',
    typed,
    unit: read?.unit ?? null,
    value: read?.value ?? null,
    mark: 'entered',
    readOn: null,
    tool: null,
    at: moment('2026-03-09T14:00:00.000Z'),
    by: 'TV',
    supersedes: null,
    reason: null,
    note: null,
    ...words,
  };
}

const stockOf = (unit: 'in' | 'mm', maxStack: string, ...sizes: readonly string[]): ShimStock => ({
  unit,
  thicknesses: sizes.map((text) => ({ thickness: measureOf(text, unit), text })),
  maxStack: measureOf(maxStack, unit),
});
export const INCH_SHIMS = stockOf('in', '0.060', '0.015', '0.030', '0.060');
export const MM_SHIMS = stockOf('mm', '1.50', '0.25', '0.50', '1.00');

/** Facts of a head; everything left out is empty. */
export const factsOf = (words: Partial<Facts> = {}): Facts => ({
  casting: {
    id: id<'casting'>(1),
    ticket: id<'ticket'>(1),
    tag: 41170,
    kind: 'head',
    words: 'a head',
    material: 'iron_grey',
    position: 'single',
    typeCode: 'X-1',
    camLayout: 'ohv',
    fuel: 'petrol',
    weight: null,
  },
  engine: null,
  pair: [],
  earlier: [],
  quantities: QUANTITIES,
  spots: [],
  readings: [],
  limits: [],
  choices: [],
  decisions: [],
  tools: [],
  shims: [INCH_SHIMS, MM_SHIMS],
  valveLift: null,
  system: 'inch',
  guard: false,
  lockedSince: null,
  ...words,
});
