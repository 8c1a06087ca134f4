/** Out of the door: count out, who took it, by which proof, and the money. */
import { z } from 'zod';
import { FATES, ItemView } from '../intake/contract.ts';
import { command, query } from '../kernel/contract.ts';
import { CentsSchema, DaySchema, GramsSchema, idOf, MomentSchema, optionalWords, words } from '../kernel/schemas.ts';
import { FileInput } from '../photos/contract.ts';
import { CastingWordSchema, MetalSchema, TicketWordSchema } from '../state/contract.ts';

const PROOFS = ['claim_ticket', 'identity', 'known'] as const;
const ticketId = idOf<'ticket'>();

const ReleaseInput = z.strictObject({
  ticketId,
  /** Castings that leave now. */
  castings: z.array(idOf<'casting'>()).max(200).default([]),
  /** Containers that leave now, each counted out (null where nothing was counted in). */
  containers: z
    .array(
      z.strictObject({
        containerId: idOf<'container'>(),
        counted: z.int().min(0).nullable().default(null),
        explained: optionalWords(240, 'the reason'),
      }),
    )
    .max(300)
    .default([]),
  /** Pieces whose end is said at the door: count out, fate, reason where the count differs. */
  items: z
    .array(
      z.strictObject({
        itemId: idOf<'arrival_item'>(),
        count: z.int().min(0).max(10_000),
        fate: z.enum(FATES),
        explained: optionalWords(240, 'the reason'),
      }),
    )
    .max(500)
    .default([]),
  /** Containers of a leaving casting that stay, each with its reason. */
  stays: z
    .array(z.strictObject({ containerId: idOf<'container'>(), why: words(240, 'why it stays') }))
    .max(300)
    .default([]),
  takenBy: words(80, 'who takes it'),
  personId: idOf<'customer_person'>().nullable().default(null),
  proof: z.enum(PROOFS, { error: 'Say by which proof: claim ticket, identity paper, or known to us.' }),
  /** Required for an identity paper: which one. */
  proofWords: optionalWords(160, 'which paper'),
  signedOnPaper: z.boolean().default(false),
  signatureFile: FileInput.nullable().default(null),
  /** Set when castings leave that are not signed off. */
  unworkedWhy: optionalWords(240, 'why it leaves unworked'),
});

const Released = z.object({
  releaseId: idOf<'release'>(),
  pieces: z.int(),
  /** The ticket afterwards. */
  ticketWord: TicketWordSchema,
  /** "All out: 6 pieces." or "3 of 6 pieces out; casting 41473 stays." */
  words: z.string(),
  staying: z.array(z.object({ label: z.string(), words: z.string() })),
});

/** One row of the count. */
const ReleaseRow = z.object({
  castingId: idOf<'casting'>().nullable(),
  containerId: idOf<'container'>().nullable(),
  /** Tag number or container label. */
  label: z.string(),
  metal: MetalSchema.nullable(),
  title: z.string(),
  contents: z.string().nullable(),
  place: z.string().nullable(),
  /** Pieces in: 1 for a casting, the count of a container where it was counted. */
  piecesIn: z.int(),
  sealed: z.boolean(),
  castingWord: CastingWordSchema.nullable(),
  /** What keeps it here, in words; empty when it may go. */
  stops: z.array(z.string()),
  out: z.boolean(),
  outAt: MomentSchema.nullable(),
  items: z.array(ItemView),
});

export const releaseContract = {
  'racks/get-release': query({
    may: 'floor:see',
    input: z.strictObject({ ticketId }),
    output: z.object({
      ticketId,
      number: z.int(),
      ticketWord: TicketWordSchema,
      customer: z.string(),
      customerId: idOf<'customer'>(),
      phone: z.string().nullable(),
      persons: z.array(z.object({ personId: idOf<'customer_person'>(), name: z.string(), mayCollect: z.boolean() })),
      rows: z.array(ReleaseRow),
      /** Containers of the ticket itself stand in `rows` too. */
      piecesIn: z.int(),
      money: z.object({
        /** "paid in full", "794.03 is open", "on account, net 30". */
        words: z.string(),
        open: CentsSchema,
        unbilled: CentsSchema,
        /** Goods may go without a named yes. */
        clear: z.boolean(),
        why: z.string().nullable(),
      }),
      oldParts: z.enum(['return', 'discard', 'not_asked']),
      identityInDoubt: z.boolean(),
      /** What keeps the whole ticket here. */
      stops: z.array(z.string()),
      /** Earlier part releases, newest first. */
      releases: z.array(
        z.object({
          releaseId: idOf<'release'>(),
          at: MomentSchema,
          takenBy: z.string(),
          proofWords: z.string(),
          by: z.string(),
          pieces: z.int(),
          unpaidWhy: z.string().nullable(),
          labels: z.array(z.string()),
        }),
      ),
    }),
  }),
  'racks/release-goods': command({
    may: 'release:do',
    secret: ['signatureFile'],
    input: ReleaseInput,
    output: Released,
  }),
  'racks/release-unpaid': command({
    may: 'leads:decide',
    pin: 'again',
    secret: ['signatureFile'],
    input: ReleaseInput.extend({ reason: words(240, 'why it may go unpaid') }),
    output: Released,
  }),
  'racks/get-ready-label': query({
    may: 'floor:see',
    input: z.strictObject({ ticketId }),
    output: z.object({
      number: z.int(),
      customer: z.string(),
      /** "4 pieces, 68 kg, two people" */
      words: z.string(),
      pieces: z.int(),
      weight: GramsSchema.nullable(),
      weightWords: z.string(),
      storageFrom: DaySchema.nullable(),
      toPay: CentsSchema,
      mayCollect: z.array(z.string()),
      labels: z.array(
        z.object({
          kind: z.enum(['casting', 'container']),
          label: z.string(),
          metal: MetalSchema.nullable(),
          words: z.string(),
          place: z.string().nullable(),
          /** "1 of 4". */
          piece: z.string(),
          weightWords: z.string(),
        }),
      ),
    }),
  }),
} as const;
