/** Schemas of what is charged on a ticket, shared by prices, parts, questions and invoices. No requests of its own. */
import { z } from 'zod';
import {
  BasisPointsSchema,
  CentsSchema,
  DaySchema,
  FactorSchema,
  idOf,
  MomentSchema,
  optionalWords,
  PriceE4Schema,
  SecondsSchema,
  words,
} from '../kernel/schemas.ts';
import { TaxClassSchema, TypedPrice } from '../rates/contract.ts';
import { DERIVED_ROLES } from './compute/bill.ts';
import { LINE_KINDS } from './compute/line.ts';

const Pieces = z.int('Write a whole number.').positive('Write how many.').max(10_000_000, 'That is too many.');

/** One operation asked for. `quantity`: pieces, or seconds for work sold by the hour; null takes the casting's own count. */
export const OperationWish = z.strictObject({
  operationKindId: idOf<'operation_kind'>(),
  quantity: Pieces.nullable().default(null),
  /** "only the exhausts". */
  countNote: optionalWords(240, 'the note'),
  /** What the customer called it. */
  wishedWords: optionalWords(240, 'the wish'),
  instruction: optionalWords(600, 'the instruction'),
  /** Places worked on, where not all. */
  spots: z.array(idOf<'spot'>()).max(400).default([]),
});
export const PackageWish = z.strictObject({
  packageId: idOf<'package'>(),
  wishedWords: optionalWords(240, 'the wish'),
});
/** A part: from stock with its list price, or described with a typed price or cost and markup. */
export const PartWish = z.strictObject({
  stockItemId: idOf<'stock_item'>().nullable().default(null),
  words: optionalWords(240, 'what part it is'),
  makerNumber: optionalWords(80, 'the number'),
  quantity: Pieces,
  source: z.enum(['shop', 'stock', 'customer']).default('stock'),
  sell: z.enum(['list', 'markup', 'typed']).default('list'),
  /** Selling price of one, for `typed`. */
  price: TypedPrice.nullable().default(null),
  priceWhy: optionalWords(240, 'why this price'),
  cost: TypedPrice.nullable().default(null),
  markup: BasisPointsSchema.nullable().default(null),
  /** The operation that must not start before the part is here. */
  blocks: idOf<'operation_kind'>().nullable().default(null),
  newUsed: z.enum(['new', 'used', 'rebuilt']).default('new'),
});
/** A charge typed by a person. `quantity` is seconds for hourly. */
export const ChargeWish = z.strictObject({
  kind: z.enum(['fee', 'freight', 'text', 'hourly', 'sublet', 'core', 'storage']),
  words: words(240, 'what it is for'),
  quantity: Pieces.default(1),
  price: TypedPrice,
  priceWhy: optionalWords(240, 'why this price'),
  /** Left out: the kind's own class; hourly is labour_repair. */
  taxClass: TaxClassSchema.nullable().default(null),
});

/** A part as benches and counter see it. */
export const PartView = z.object({
  id: idOf<'part_line'>(),
  version: z.int(),
  ticketId: idOf<'ticket'>(),
  castingId: idOf<'casting'>().nullable(),
  tag: z.int().nullable(),
  workLineId: idOf<'work_line'>().nullable(),
  words: z.string(),
  makerNumber: z.string().nullable(),
  quantity: z.int(),
  source: z.enum(['shop', 'stock', 'customer']),
  newUsed: z.enum(['new', 'used', 'rebuilt']),
  /** The state word: needed, quoted, ordered, back-ordered, here, fitted, returned, customer bringing. */
  word: z.string(),
  supplierWords: z.string().nullable(),
  expectedOn: DaySchema.nullable(),
  hereCount: z.int().nullable(),
  orderedAt: MomentSchema.nullable(),
  hereAt: MomentSchema.nullable(),
  fittedAt: MomentSchema.nullable(),
  checked: z.object({ at: MomentSchema, by: z.string() }).nullable(),
  /** Shop's words of the operation it holds up. */
  blocks: z.string().nullable(),
});

/** One priced line. Amounts in cents, unit prices in 1/10 000. */
export const LineView = z.object({
  id: idOf<'work_line'>(),
  version: z.int(),
  position: z.int(),
  kind: z.enum(LINE_KINDS),
  /** The casting, when the line is of one. */
  castingId: idOf<'casting'>().nullable(),
  tag: z.int().nullable(),
  /** All castings it covers; several for a lot, none for a line of the ticket as a whole. */
  castings: z.array(z.object({ id: idOf<'casting'>(), tag: z.int() })),
  operationKindId: idOf<'operation_kind'>().nullable(),
  packageId: idOf<'package'>().nullable(),
  /** Customer's words; they print. */
  words: z.string(),
  /** Shop's words; equal for typed charges and parts. */
  shopWords: z.string(),
  wishedWords: z.string().nullable(),
  countNote: z.string().nullable(),
  quantity: z.int(),
  per: z.int(),
  unit: z.string(),
  /** "8 valves", "1.5 h", "2"; "1" for one piece. */
  quantityWords: z.string(),
  unitPrice: PriceE4Schema,
  factors: z.array(z.object({ code: z.string(), factor: FactorSchema })),
  /** "45.00 × 1.15": the price column. */
  priceWords: z.string(),
  /** "aluminium 1.15"; empty for none. */
  factorWords: z.string(),
  /** "8 valves × 6.50 × 1.50": the whole working. */
  working: z.string(),
  amount: CentsSchema,
  taxClass: TaxClassSchema,
  /** An agreed price, outside discounts. */
  net: z.boolean(),
  priceFrom: z.enum(['rate', 'typed', 'stock']),
  priceWhy: z.string().nullable(),
  /** Shop's words of the operations inside a package, in order. */
  inside: z.array(z.string()),
  /** For hours: what was worked, when it is known. */
  actualSeconds: SecondsSchema.nullable(),
  /** The customer was given this price: withdraw and write anew instead of changing it. */
  asked: z.boolean(),
  answer: z.enum(['yes', 'no']).nullable(),
  covered: z.boolean(),
  /** Why not, as a sentence; empty when covered. */
  coverWords: z.string(),
  /** Work begun, part ordered, outside work out. */
  committed: z.boolean(),
  /** Number of the invoice it stands on. */
  invoiceNumber: z.int().nullable(),
  /** The added-work option it belongs to, for example "A1 a". */
  option: z.string().nullable(),
  withdrawn: z.object({ at: MomentSchema, why: z.string() }).nullable(),
  partId: idOf<'part_line'>().nullable(),
});

/** The sums of a document. Every one in cents; discounts are negative. */
const FiguresView = z.object({
  labour: CentsSchema,
  labourDiscount: CentsSchema,
  rush: CentsSchema,
  supplies: CentsSchema,
  fee: CentsSchema,
  minimum: CentsSchema,
  parts: CentsSchema,
  partsDiscount: CentsSchema,
  sublet: CentsSchema,
  core: CentsSchema,
  other: CentsSchema,
  beforeTax: CentsSchema,
  tax: CentsSchema,
  total: CentsSchema,
});
export const BillView = z.object({
  figures: FiguresView,
  /** Discount, rush, supplies, fee, minimum; those of 0 left out. */
  derived: z.array(
    z.object({
      role: z.enum(DERIVED_ROLES),
      words: z.string(),
      working: z.string(),
      amount: CentsSchema,
      taxClass: TaxClassSchema,
    }),
  ),
  taxes: z.array(
    z.object({
      code: z.string(),
      words: z.string(),
      bp: BasisPointsSchema,
      base: CentsSchema,
      amount: CentsSchema,
      exempt: z.string().nullable(),
      working: z.string(),
    }),
  ),
});

/** Why a wish cannot be had on a casting, with what does fit. Also the shape of the refusal of `pricing/add-operations`. */
export const RefusalView = z.object({
  castingKey: z.string(),
  operationKindId: idOf<'operation_kind'>().nullable(),
  packageId: idOf<'package'>().nullable(),
  /** "ALUMINIUM: no caustic. Use the aluminium-safe wash." */
  words: z.string(),
  /** True: no price in force, or a count nobody gave; the casting itself does not refuse it. */
  priceOnly: z.boolean(),
  fits: z.array(z.object({ operationKindId: idOf<'operation_kind'>(), words: z.string() })),
});

/** A line of a quote: like a line of a ticket, without its history. */
export const QuoteLine = LineView.pick({
  kind: true,
  operationKindId: true,
  packageId: true,
  words: true,
  shopWords: true,
  quantity: true,
  per: true,
  unit: true,
  quantityWords: true,
  unitPrice: true,
  factors: true,
  priceWords: true,
  factorWords: true,
  working: true,
  amount: true,
  taxClass: true,
  inside: true,
}).extend({
  castingKey: z.string().nullable(),
  /** A person has to say how many (hours, holes, pins) before it counts. */
  asksQuantity: z.boolean(),
});
