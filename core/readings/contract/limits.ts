/** Limits: typed with where they come from, checked by a second person, chosen by a lead. */
import { z } from 'zod';
import { command, query } from '../../kernel/contract.ts';
import type { LimitId } from '../../kernel/ids.ts';
import { UNIT_CODES } from '../../kernel/measure-units.ts';
import { DaySchema, idOf, optionalWords, words } from '../../kernel/schemas.ts';
import type { LimitShown } from '../compute/sheet-model.ts';

const Stage = z.enum(['before', 'after']);
const Side = z.enum(['I', 'E', 'any']);
const UnitName = z.enum(UNIT_CODES);

/** A limit with what it judges. */
export type LimitListed = LimitShown & Readonly<{ quantity: string; words: string; stage: 'before' | 'after' }>;

/** A limit with who answers for it. Initials; empty for what the program brought. */
export type LimitAnswered = LimitShown & Readonly<{ typedBy: string; checkedBy: string }>;

/** The limit that judges, and those that a lead could take in its place. */
export type LimitInForce = LimitAnswered &
  Readonly<{ quantity: string; words: string; stage: 'before' | 'after'; others: readonly LimitAnswered[] }>;

const figures = {
  low: optionalWords(20, 'the lower limit'),
  high: optionalWords(20, 'the upper limit'),
  target: optionalWords(20, 'the target'),
  unit: UnitName,
  side: Side.default('any'),
  stage: Stage,
  quantity: z.string().min(1).max(40),
  /** The same figures in the other unit as the source prints them: kept, never used, compared. */
  secondUnitText: optionalWords(80, 'the second unit'),
  sourceTag: optionalWords(40, 'the tag'),
  sourceWords: words(240, 'where the figure comes from'),
};

export const limitsContract = {
  /** A limit of the catalogue or a customer's written instruction. */
  'limits/add-limit': command({
    may: 'catalogue:edit',
    input: z.strictObject({
      ...figures,
      for: z.enum(['shop', 'customer_instruction', 'engine_type', 'casting_type']),
      castingType: idOf<'casting_type'>().nullable().default(null),
      engineType: idOf<'engine_type'>().nullable().default(null),
      ticket: idOf<'ticket'>().nullable().default(null),
      casting: idOf<'casting'>().nullable().default(null),
      material: z.enum(['iron_grey', 'iron_ductile', 'steel', 'aluminium', 'other']).nullable().default(null),
      from: DaySchema.nullable().default(null),
      replaces: idOf<'limit_row'>().nullable().default(null),
    }),
    output: z.custom<Readonly<{ limit: LimitId; warnings: readonly string[] }>>(),
  }),
  /** A limit for this job only, by counter or machinist; not checked until a second person checks it. */
  'limits/add-job-limit': command({
    may: 'floor:work',
    input: z.strictObject({
      ...figures,
      casting: idOf<'casting'>(),
      /** The customer wrote it: an instruction, and not data of the engine. */
      customerWrote: z.boolean().default(false),
    }),
    output: z.custom<Readonly<{ limit: LimitId; warnings: readonly string[] }>>(),
  }),
  /**
   * What judges this casting and what could: one entry for a quantity, stage and side, in the order of the catalogue, with
   * sources, who typed and who checked each.
   */
  'limits/list-resolved': query({
    may: 'castings:see',
    input: z.strictObject({ casting: idOf<'casting'>() }),
    output: z.custom<readonly LimitInForce[]>(),
  }),
  /** Of these places for a shop limit, those for which the shop never had one: no row, not even a replaced one. */
  'limits/list-missing': query({
    may: 'catalogue:see',
    input: z.strictObject({
      limits: z.array(z.strictObject({ quantity: z.string().min(1).max(40), stage: Stage, side: Side })).max(1000),
    }),
    output: z.custom<readonly Readonly<{ quantity: string; stage: 'before' | 'after'; side: 'I' | 'E' | 'any' }>[]>(),
  }),
  /** Limits of the catalogue that count for a casting type today: its own, those of its engine and of the shop. */
  'limits/list-catalogue': query({
    may: 'catalogue:see',
    input: z.strictObject({ castingType: idOf<'casting_type'>() }),
    output: z.custom<readonly LimitListed[]>(),
  }),
  /** A second person has compared the figure with its source. */
  'limits/check-limit': command({
    may: 'floor:work',
    input: z.strictObject({ limit: idOf<'limit_row'>(), words: optionalWords(160, 'the words') }),
    output: z.custom<Readonly<{ limit: LimitId }>>(),
  }),
  /** A lead takes another limit for this casting, with a reason that is printed. */
  'limits/choose-limit': command({
    may: 'leads:decide',
    input: z.strictObject({ casting: idOf<'casting'>(), limit: idOf<'limit_row'>(), why: words(240, 'why') }),
    output: z.custom<Readonly<{ limit: LimitId }>>(),
  }),
} as const;
