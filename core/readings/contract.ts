/** Readings, the limits that judge them, and the gauges they were taken with. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import type { Day } from '../kernel/days.ts';
import type { ReadingId, ToolId } from '../kernel/ids.ts';
import { UNIT_CODES } from '../kernel/measure-units.ts';
import { DaySchema, idOf, MomentSchema, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';
import type { Tool } from './compute/model.ts';
import type { Preview, Sheet, ShimChoices } from './compute/sheet-model.ts';
import { exportContract } from './contract/export.ts';
import { limitsContract } from './contract/limits.ts';
import { oversizeContract } from './contract/oversize.ts';
import { surveysContract } from './contract/surveys.ts';

const Stage = z.enum(['before', 'after']);
const UnitName = z.enum(UNIT_CODES);
const ReadOn = z.enum(['bare_pocket', 'cup', 'cup_and_shim']);
const TypedText = words(240, 'the reading');

/** Where a figure belongs. `spot` and `point` are null where the quantity has none. */
const cell = {
  quantity: z.string().min(1).max(40),
  spot: idOf<'spot'>().nullable().default(null),
  point: z.string().max(20).nullable().default(null),
  stage: Stage,
};

/** What the fingers did. `unit`: the unit of the row; a mark in the text wins over it. */
const entry = {
  typed: TypedText,
  unit: UnitName.nullable().default(null),
  tool: idOf<'tool'>().nullable().default(null),
  readOn: ReadOn.nullable().default(null),
  /** `compared` with a card, or sent by a gauge. */
  mark: z.enum(['compared', 'from_tool']).nullable().default(null),
  note: optionalWords(240, 'the note'),
  /** When the tablet took it; empty: now. */
  takenAt: MomentSchema.nullable().default(null),
  /** The person has answered the question about an unlikely figure. */
  sure: z.boolean().default(false),
};

/** The sheet of one table, and what the tables of a casting are. */
export type TableListed = Readonly<{
  code: string;
  words: string;
  summary: string;
  /** Code of the operation whose screen opens with it. */
  operation: string | null;
}>;

export type ToolListed = Tool &
  Readonly<{ version: number; uncertaintyText: string; range: string; lastCheck: Day | null }>;

const castingAndTable = { casting: idOf<'casting'>(), table: z.string().min(1).max(40) };

export const readingsContract = {
  ...limitsContract,
  /** One table with everything the screen shows. */
  'readings/get-table': query({
    may: 'castings:see',
    input: z.strictObject(castingAndTable),
    output: z.custom<Sheet>(),
  }),
  /** The tables this casting can have: those of its operations first, then those with readings, then the others. */
  'readings/list-tables': query({
    may: 'castings:see',
    input: z.strictObject({ casting: idOf<'casting'>() }),
    output: z.custom<readonly TableListed[]>(),
  }),
  /** While a figure is typed: how it reads, and what it would do. Keeps nothing. */
  'readings/get-preview': query({
    may: 'castings:see',
    input: z.strictObject({ ...castingAndTable, ...cell, ...entry, typed: z.string().max(240) }),
    output: z.custom<Preview>(),
  }),
  'readings/get-shim-choice': query({
    may: 'castings:see',
    input: z.strictObject({ casting: idOf<'casting'>(), spot: idOf<'spot'>() }),
    output: z.custom<ShimChoices>(),
  }),
  /**
   * Keep figures, words or counts, all or none. A bare length without a rule is asked about: `readings/ask` with the
   * readings in `facts.choices`. An unlikely figure: `readings/unlikely` with `facts.meant`; send again with `sure`.
   */
  'readings/add-readings': command({
    may: 'floor:work',
    input: z.strictObject({
      casting: idOf<'casting'>(),
      operation: idOf<'operation'>().nullable().default(null),
      rows: z
        .array(z.strictObject({ ...cell, ...entry }))
        .min(1, 'Type a reading.')
        .max(400),
    }),
    output: z.custom<Readonly<{ readings: readonly ReadingId[] }>>(),
  }),
  /** The chosen shims are in: written for every valve whose height is read and passes with them. */
  'readings/fit-shims': command({
    may: 'floor:work',
    input: z.strictObject({
      casting: idOf<'casting'>(),
      operation: idOf<'operation'>().nullable().default(null),
      /** Only these valves; left out: all. */
      spots: z.array(idOf<'spot'>()).max(96).nullable().default(null),
    }),
    output: z.custom<Readonly<{ readings: readonly ReadingId[]; words: string }>>(),
  }),
  /** Put another value in place of a reading; the old one stays, struck through. After sign-off a reason is needed. */
  'readings/supersede-reading': command({
    may: 'floor:work',
    input: z.strictObject({ reading: idOf<'reading'>(), ...entry, reason: optionalWords(240, 'the reason') }),
    output: z.custom<Readonly<{ reading: ReadingId }>>(),
  }),
  /** Nothing to measure here; shows as a dash. */
  'readings/mark-not-applicable': command({
    may: 'floor:work',
    input: z.strictObject({
      casting: idOf<'casting'>(),
      operation: idOf<'operation'>().nullable().default(null),
      cells: z.array(z.strictObject(cell)).min(1).max(400),
      reason: optionalWords(240, 'the reason'),
    }),
    output: z.custom<Readonly<{ readings: readonly ReadingId[] }>>(),
  }),
  /** Take a reading back: the cell reads as not measured, the row stays. */
  'readings/take-back-reading': command({
    may: 'floor:work',
    input: z.strictObject({ reading: idOf<'reading'>(), reason: optionalWords(240, 'the reason') }),
    output: z.custom<Readonly<{ reading: ReadingId }>>(),
  }),
  /** Two people read one cell: this one stands, the others are taken back. */
  'readings/choose-reading': command({
    may: 'floor:work',
    input: z.strictObject({ reading: idOf<'reading'>(), reason: optionalWords(240, 'the reason') }),
    output: z.custom<Readonly<{ reading: ReadingId }>>(),
  }),
  /** A lead accepts or refuses a failed or close figure, with words. The verdict stays. */
  'readings/decide-reading': command({
    may: 'leads:decide',
    input: z.strictObject({
      casting: idOf<'casting'>(),
      ...cell,
      accept: z.boolean(),
      words: words(240, 'why'),
    }),
    output: z.custom<Readonly<{ value: number | null }>>(),
  }),
  /** Show or hide a row of a table for this casting only. */
  'readings/show-row': command({
    may: 'floor:work',
    input: z.strictObject({
      ...castingAndTable,
      quantity: z.string().min(1).max(40),
      point: z.string().max(20).nullable().default(null),
      stage: Stage,
      shown: z.boolean(),
    }),
    output: z.custom<Readonly<{ shown: boolean }>>(),
  }),
  'tools/add-tool': command({
    may: 'catalogue:edit',
    input: z.strictObject({
      name: words(40, 'the name'),
      serial: optionalWords(40, 'the serial number'),
      kind: words(60, 'what it is'),
      /** Code of the work centre where it lives. */
      workCentre: z.string().max(40).nullable().default(null),
      unit: UnitName,
      rangeLow: optionalWords(20, 'the low end'),
      rangeHigh: optionalWords(20, 'the high end'),
      resolution: optionalWords(20, 'the smallest step'),
      uncertainty: optionalWords(20, 'the uncertainty'),
      /** Hundredths of a percent of the reading, for testers. */
      uncertaintyBp: z.int().min(1).max(10_000).nullable().default(null),
      setAgainst: optionalWords(80, 'the standard'),
    }),
    output: z.custom<Readonly<{ tool: ToolId; version: number }>>(),
  }),
  'tools/retire-tool': command({
    may: 'catalogue:edit',
    input: z.strictObject({ tool: idOf<'tool'>(), seenVersion: SeenVersion }),
    output: z.custom<Readonly<{ version: number }>>(),
  }),
  'tools/record-check': command({
    may: 'catalogue:edit',
    input: z.strictObject({
      tool: idOf<'tool'>(),
      on: DaySchema,
      result: words(160, 'the result'),
      nextDue: DaySchema,
    }),
    output: z.custom<Readonly<{ tool: ToolId }>>(),
  }),
  'tools/list-tools': query({
    may: 'castings:see',
    input: z.strictObject({}),
    output: z.custom<readonly ToolListed[]>(),
  }),
  ...exportContract,
  ...surveysContract,
  ...oversizeContract,
} as const;
