/** Checking in: one command that makes customer, ticket, castings, pieces, marks, work and promise together. */
import { z } from 'zod';
import { AddedCasting, Material, NewCasting, POSITIONS } from '../castings/contract.ts';
import { CustomerWish } from '../customers/contract.ts';
import { command, query } from '../kernel/contract.ts';
import { changeOf, TakenOverSchema } from '../kernel/field-changes.ts';
import {
  BasisPointsSchema,
  CentsSchema,
  DaySchema,
  GramsSchema,
  idOf,
  optionalWords,
  PriceE4Schema,
  SeenVersion,
  words,
} from '../kernel/schemas.ts';
import { FileInput } from '../photos/contract.ts';
import { MetalSchema } from '../state/contract.ts';
import { PromiseWish, ticketFields } from '../tickets/contract.ts';

const Amount = CentsSchema.refine((value) => value >= 0, 'An amount is not below 0.');

/** One thing asked for. At least one of operation, package and said. */
export const Wish = z.strictObject({
  /** Indexes into `castings`; empty for all of them. */
  castings: z.array(z.int().min(0)).max(100).default([]),
  /** Code of an operation or a package of the catalogue. */
  operation: words(80, 'the operation').optional(),
  package: words(80, 'the package').optional(),
  /**
   * In the customer's words, "hot tank". Kept beside the shop's words. Alone, it is looked up in the catalogue; what the
   * metal forbids becomes the right wash; what is not found stays as what they want.
   */
  said: optionalWords(240, 'what they asked for'),
  /** Where the count is asked or differs from the casting's; left out: counted from the casting. */
  quantity: z.int().min(0).max(100_000).optional(),
  note: optionalWords(240, 'the note'),
});

const PaperOfPile = z.object({
  kind: z.enum(['claim', 'traveller', 'casting-tag', 'bag-tag']),
  castingId: idOf<'casting'>().nullable(),
  containerId: idOf<'container'>().nullable(),
  words: z.string(),
});

export const AccountView = z.object({
  state: z.enum(['none', 'ok', 'warn', 'over', 'on stop']),
  /** "Account on stop since 2 March: two cheques came back." Empty when nothing is the matter. */
  words: z.string(),
  used: CentsSchema,
  limit: CentsSchema.nullable(),
  /** Work, ordering and release wait for a named yes; the tag does not. */
  waitsForYes: z.boolean(),
});

const ticketId = idOf<'ticket'>();
const Made = z.object({
  ticketId,
  number: z.int(),
  customerId: idOf<'customer'>(),
  castings: z.array(AddedCasting),
  /** Containers of the ticket itself. */
  containers: z.array(z.object({ containerId: idOf<'container'>(), label: z.string() })),
  account: AccountView,
  promise: z.object({ day: DaySchema, minute: z.int(), words: z.string() }).nullable(),
  /** Wishes that became something else, and those kept as words only: one sentence each. */
  notes: z.array(z.string()),
  /** What to print, in the order of the pile. */
  papers: z.array(PaperOfPile),
  /** Deposit the shop asks for; 0 for none. */
  depositAsked: CentsSchema,
});

export const checkInContract = {
  'tickets/check-in-ticket': command({
    may: 'tickets:edit',
    secret: ['signatureFile'],
    input: z.strictObject({
      /** An enquiry that now brings its castings; left out: a new ticket. */
      enquiryId: ticketId.nullable().default(null),
      customer: CustomerWish,
      ticket: z
        .strictObject({
          ...ticketFields,
          gasket: ticketFields.gasket.default('not_asked'),
          oldParts: ticketFields.oldParts.default('not_asked'),
          crackCheck: ticketFields.crackCheck.default('wanted'),
          certified: ticketFields.certified.default(false),
          declaredValue: ticketFields.declaredValue.default(null),
        })
        .prefault({}),
      castings: z.array(NewCasting).max(100).default([]),
      /** Boxes and trays of the whole ticket: the customer's gasket set. */
      containers: z
        .array(
          z.strictObject({
            kind: z.enum(['bag', 'tray', 'board', 'box', 'basket', 'pallet']).default('box'),
            contents: words(240, 'what is inside'),
            count: z.int().min(0).max(10_000).nullable().default(null),
            ownerMark: z.enum(['ours_with_casting', 'customers_own', 'new', 'old_return']).default('customers_own'),
            spotWords: optionalWords(120, 'the place'),
          }),
        )
        .max(100)
        .default([]),
      wishes: z.array(Wish).max(200).default([]),
      /** Ceiling without a call, as agreed at the counter. */
      ceiling: z
        .strictObject({
          amount: Amount,
          taxIn: z.boolean(),
          personId: idOf<'customer_person'>().nullable().default(null),
          saidBy: words(80, 'who said it'),
          means: z.enum(['signature', 'text', 'email', 'phone', 'counter']).default('counter'),
          numberCalled: optionalWords(60, 'the number called'),
          words: words(2000, 'their words'),
          /** For a person who may not approve, or above their limit. */
          overrideWhy: optionalWords(240, 'the reason'),
        })
        .nullable()
        .default(null),
      rush: BasisPointsSchema.nullable().default(null),
      depositAsked: Amount.nullable().default(null),
      promise: PromiseWish.nullable().default(null),
      signed: z
        .strictObject({ how: z.enum(['drawn', 'on_paper', 'left_unsigned']), by: optionalWords(80, 'the name') })
        .nullable()
        .default(null),
      signatureFile: FileInput.nullable().default(null),
      /** Copy limits of the castings of this ticket, in order ("Like ticket ..."). */
      like: ticketId.nullable().default(null),
      /** The draft this came from; dropped when all is kept. */
      draftId: idOf<'draft'>().nullable().default(null),
    }),
    output: Made,
  }),
  /** Small work over the counter: name, words, price. A tag only if it stays. */
  'tickets/quick-ticket': command({
    may: 'tickets:edit',
    input: z.strictObject({
      customer: CustomerWish,
      words: words(240, 'what is done'),
      price: PriceE4Schema.refine((value) => value >= 0, 'A price is not below 0.'),
      quantity: z.int().min(1).max(10_000).default(1),
      taxClass: z.enum(['labour_repair', 'labour_fabrication', 'part', 'fee']).default('labour_repair'),
      casting: NewCasting.nullable().default(null),
      promise: PromiseWish.nullable().default(null),
    }),
    output: Made,
  }),
  /** What a check-in page is filled with for "Like ticket ...": work, packages, limits; never readings or prices. */
  'tickets/get-like': query({
    may: 'tickets:see',
    input: z.strictObject({ ticketId }),
    output: z.object({
      number: z.int(),
      engine: z.string().nullable(),
      engineWords: z.string().nullable(),
      useWords: z.string().nullable(),
      gasket: ticketFields.gasket,
      valveLift: z.string().nullable(),
      castings: z.array(
        z.object({
          type: z.string(),
          typeName: z.string(),
          typePrivate: z.boolean(),
          kindWords: z.string(),
          position: z.enum(POSITIONS),
          closeTolerance: z.boolean(),
          pair: z.int().nullable(),
          /** How many limits of its own are copied. */
          limits: z.int(),
        }),
      ),
      wishes: z.array(
        z.object({
          castings: z.array(z.int()),
          operation: z.string().nullable(),
          package: z.string().nullable(),
          words: z.string(),
          quantity: z.int().nullable(),
        }),
      ),
    }),
  }),
  /** The account of a customer at the counter, before anything is unloaded. */
  'customers/get-account': query({
    may: 'tickets:see',
    input: z.strictObject({ customerId: idOf<'customer'>() }),
    output: AccountView.extend({
      owed: CentsSchema,
      overdue: CentsSchema,
      standingInstruction: z.string().nullable(),
      depositSuggested: CentsSchema,
    }),
  }),
  /** One, a pair, or a lot of alike castings at a stroke, onto a ticket that stands. */
  'castings/add-casting': command({
    may: 'castings:edit',
    input: z.strictObject({ ticketId, castings: z.array(NewCasting).min(1).max(100) }),
    output: z.object({ castings: z.array(AddedCasting) }),
  }),
  'castings/change-casting': command({
    may: 'castings:edit',
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      seenVersion: SeenVersion,
      changes: z.strictObject({
        type: changeOf(words(80, 'the casting type')),
        material: changeOf(Material),
        closeTolerance: changeOf(z.boolean()),
        position: changeOf(z.enum(POSITIONS)),
        customerPositionWords: changeOf(optionalWords(120, 'the position')),
        castingNumber: changeOf(optionalWords(80, 'the casting number')),
        dateCode: changeOf(optionalWords(40, 'the date code')),
        serial: changeOf(optionalWords(80, 'the part or serial number')),
        earlierStamps: changeOf(optionalWords(240, 'the stamps')),
        shopStamp: changeOf(optionalWords(40, 'our stamp')),
        stampAllowed: changeOf(z.enum(['yes', 'tag_only', 'ask'])),
        pair: changeOf(z.int().min(1).max(100).nullable()),
        bare: changeOf(z.boolean()),
        cameAssembled: changeOf(z.boolean()),
        dressWords: changeOf(optionalWords(240, 'how it is dressed')),
        ownMarks: changeOf(optionalWords(240, 'their marks')),
        weight: changeOf(GramsSchema.nullable()),
      }),
    }),
    output: z.object({
      version: z.int(),
      takenOver: z.array(TakenOverSchema),
      identityHold: z.string().nullable(),
    }),
  }),
  /** What no longer fits the metal gives way to what does. */
  'castings/confirm-metal': command({
    may: 'floor:work',
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      material: z.enum(['iron_grey', 'iron_ductile', 'steel', 'aluminium', 'other'], {
        error: 'Say what metal it is. Bare casting, two places, away from inserts and studs; both hold: iron.',
      }),
      how: z.enum(['known', 'magnet']),
    }),
    output: z.object({
      version: z.int(),
      metal: MetalSchema,
      /** What no longer fits the metal, in words; empty when nothing changed. */
      warnings: z.array(z.string()),
    }),
  }),
  /** Put on the wrong ticket: moves with its tag before its first operation. */
  'castings/move-casting': command({
    may: 'castings:edit',
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      seenVersion: SeenVersion,
      toTicketId: idOf<'ticket'>(),
      why: words(240, 'why it moves'),
    }),
    output: z.object({ version: z.int(), positionInTicket: z.int() }),
  }),
  /** The customer signs the list of pieces and conditions, on the screen or on paper; or it stays unsigned. */
  'intake/sign-claim': command({
    may: 'tickets:edit',
    secret: ['signatureFile'],
    input: z.strictObject({
      ticketId,
      how: z.enum(['drawn', 'on_paper', 'left_unsigned']),
      signedBy: optionalWords(80, 'the name'),
      signatureFile: FileInput.nullable().default(null),
    }),
    output: z.object({ locked: z.boolean(), words: z.string() }),
  }),
} as const;
