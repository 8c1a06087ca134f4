/** Adding, changing and taking back what is charged on a ticket; estimates; a price without a ticket. */
import { z } from 'zod';
import { DescribedType } from '../castings/contract.ts';
import { command, query } from '../kernel/contract.ts';
import {
  BasisPointsSchema,
  CentsSchema,
  DaySchema,
  idOf,
  MomentSchema,
  optionalWords,
  SecondsSchema,
  SeenVersion,
  words,
} from '../kernel/schemas.ts';
import {
  BillView,
  ChargeWish,
  LineView,
  OperationWish,
  PackageWish,
  PartWish,
  QuoteLine,
  RefusalView,
} from '../lines/contract.ts';
import { TypedPrice } from '../rates/contract.ts';

const MATERIALS = ['iron_grey', 'iron_ductile', 'steel', 'aluminium', 'other', 'not_known'] as const;
const Ticket = { ticketId: idOf<'ticket'>() };
const Line = { lineId: idOf<'work_line'>(), seenVersion: SeenVersion };
const AddedLine = z.object({
  lineId: idOf<'work_line'>(),
  operationIds: z.array(idOf<'operation'>()),
  amount: CentsSchema,
  working: z.string(),
});
const Stepped = z.object({ version: z.int(), amount: CentsSchema, working: z.string() });

/** A casting that is only described yet, as the check-in screen holds it. */
export const QuoteCasting = z.strictObject({
  /** Names the casting for the sender. */
  key: words(40, 'a key'),
  /** Code of a casting type of the catalogue; or described by its counts. */
  type: words(80, 'the casting type').optional(),
  described: DescribedType.optional(),
  material: z.enum(MATERIALS),
  closeTolerance: z.boolean().default(false),
  operations: z.array(OperationWish).max(80).default([]),
  packages: z.array(PackageWish).max(10).default([]),
  parts: z.array(PartWish).max(80).default([]),
});

export const EstimateView = z.object({
  id: idOf<'estimate'>(),
  revision: z.int(),
  /** "20455-E1". */
  number: z.string(),
  sentAt: MomentSchema,
  sentBy: z.string(),
  validUntil: DaySchema,
  /** Past its day and not answered. */
  expired: z.boolean(),
  beforeTax: CentsSchema,
  tax: CentsSchema,
  total: CentsSchema,
  words: z.string().nullable(),
  answer: z.enum(['yes', 'no', 'part']).nullable(),
  /** A line was added, changed or withdrawn since. */
  outdated: z.boolean(),
});

const AuthorisedView = z.object({
  amount: CentsSchema,
  taxIn: z.boolean(),
  ceiling: z.boolean(),
  /** "ceiling 1500.00 before tax, and A1 a 326.72"; "nothing agreed yet". */
  words: z.string(),
  /** Done and ordered so far, on the same basis (with or without tax). */
  exposure: CentsSchema,
  /** What may still be begun or ordered; negative when past it. */
  left: CentsSchema,
  overrunBp: BasisPointsSchema,
});

export const pricingContract = {
  'pricing/add-operations': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ...Ticket,
      castingId: idOf<'casting'>(),
      operations: z.array(OperationWish).min(1, 'Choose an operation.').max(80),
    }),
    output: z.object({ lines: z.array(AddedLine) }),
  }),
  /** One line for all castings named. A lot's agreed price is typed, with its reason. */
  'pricing/add-package-line': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ...Ticket,
      packageId: idOf<'package'>(),
      castings: z.array(idOf<'casting'>()).min(1, 'Choose a casting.').max(200),
      wishedWords: optionalWords(240, 'the wish'),
      price: TypedPrice.nullable().default(null),
      priceWhy: optionalWords(240, 'why this price'),
      net: z.boolean().default(false),
    }),
    output: AddedLine,
  }),
  'pricing/add-charge': command({
    may: 'tickets:edit',
    input: z.strictObject({ ...Ticket, castingId: idOf<'casting'>().nullable().default(null), charge: ChargeWish }),
    output: AddedLine,
  }),
  /** Only while no estimate and no question with this line was sent. */
  'pricing/change-quantity': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ...Line,
      quantity: z.int().positive('Write how many.').max(10_000_000, 'That is too many.'),
      countNote: optionalWords(240, 'the note'),
    }),
    output: Stepped,
  }),
  'pricing/override-price': command({
    may: 'pricing:override',
    input: z.strictObject({
      ...Line,
      price: TypedPrice,
      why: words(240, 'why this price'),
      net: z.boolean().default(false),
    }),
    output: Stepped,
  }),
  /** The line stays, crossed out; what is begun or ordered of it cannot be withdrawn. */
  'pricing/withdraw-line': command({
    may: 'tickets:edit',
    input: z.strictObject({ ...Line, why: words(240, 'why it is withdrawn') }),
    output: z.object({ version: z.int() }),
  }),
  /** Worked hours of an hourly line. Billing more than was estimated needs the customer's yes. */
  'pricing/set-hours': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ...Line,
      actual: SecondsSchema.refine((value) => value >= 0 && value <= 36_000_000, 'Hours are 0 to 10,000.'),
    }),
    output: Stepped.extend({ overEstimate: z.boolean() }),
  }),
  'pricing/agree-rush': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ...Ticket,
      seenVersion: SeenVersion,
      /** Left out: the shop's usual share. */
      bp: BasisPointsSchema.refine((value) => value > 0, 'Write the share.')
        .nullable()
        .default(null),
    }),
    output: z.object({ version: z.int(), bp: BasisPointsSchema }),
  }),
  /** The rush day was missed, or rush is no longer wanted: it falls away from the bill. */
  'pricing/lose-rush': command({
    may: 'tickets:edit',
    input: z.strictObject({ ...Ticket, seenVersion: SeenVersion }),
    output: z.object({ version: z.int() }),
  }),
  /** A numbered revision with every live line; prices are frozen from then on. */
  'pricing/send-estimate': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ...Ticket,
      /** Left out: the shop's usual number of days. */
      validUntil: DaySchema.nullable().default(null),
      words: optionalWords(600, 'the words'),
    }),
    output: z.object({ estimateId: idOf<'estimate'>(), revision: z.int(), number: z.string(), total: CentsSchema }),
  }),
  'pricing/get-estimate': query({
    may: 'pricing:see',
    input: z.strictObject({ estimateId: idOf<'estimate'>() }),
    output: EstimateView.extend({
      ...Ticket,
      ticketNumber: z.int(),
      /** As they were sent, in printing order; `casting` null for lines of the ticket and for derived ones. */
      lines: z.array(
        z.object({
          lineId: idOf<'work_line'>().nullable(),
          role: z.string(),
          tag: z.int().nullable(),
          words: z.string(),
          quantityWords: z.string(),
          priceWords: z.string(),
          amount: CentsSchema,
          /** The answer on this line. */
          answer: z.enum(['yes', 'no']).nullable(),
        }),
      ),
    }),
  }),
  /** The whole price of a ticket as it stands. */
  'pricing/get-sheet': query({
    may: 'pricing:see',
    input: z.strictObject(Ticket),
    output: z.object({
      ...Ticket,
      ticketNumber: z.int(),
      ticketVersion: z.int(),
      priceDay: DaySchema,
      /** Live and withdrawn, in printing order: by casting, then lines of the ticket. */
      lines: z.array(LineView),
      /** All live lines that were not declined; options count once they are answered yes. */
      bill: BillView,
      estimates: z.array(EstimateView),
      authorised: AuthorisedView,
      rush: z.object({ bp: BasisPointsSchema, lost: z.boolean() }).nullable(),
    }),
  }),
  /** A price without a ticket: the live price while a check-in is filled in. Writes nothing. */
  'pricing/get-quote': query({
    may: 'pricing:see',
    input: z.strictObject({
      customerId: idOf<'customer'>().nullable().default(null),
      /** Left out: today. */
      day: DaySchema.nullable().default(null),
      castings: z.array(QuoteCasting).max(60),
      parts: z.array(PartWish).max(80).default([]),
      charges: z.array(ChargeWish).max(40).default([]),
      rushBp: BasisPointsSchema.nullable().default(null),
      /** To say how far below the ceiling the quote stays. */
      ceiling: CentsSchema.nullable().default(null),
      ceilingTaxIn: z.boolean().default(false),
    }),
    output: z.object({
      lines: z.array(QuoteLine),
      bill: BillView,
      refusals: z.array(RefusalView),
      /** Ceiling less quote on the ceiling's own basis; null without a ceiling. */
      belowCeiling: CentsSchema.nullable(),
    }),
  }),
} as const;
