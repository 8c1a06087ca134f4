/**
 * Puts work, parts and charges on a ticket: priced by the day of the ticket, frozen, with their operations on the castings.
 * Check-in, the ticket page and added work all add through here.
 */
import type { WriteDb } from '../../db/query.ts';
import { AppError, badField, type ErrorOffer, notFound } from '../../kernel/errors.ts';
import type { CastingId, Id, OperationId, SpotId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import type { Cents, PriceE4 } from '../../kernel/units.ts';
import {
  type Draft,
  type Drafted,
  draftOperation,
  draftPackage,
  type PriceBook,
  type Refusal,
} from '../compute/book.ts';
import type { PriceTerms } from '../compute/line.ts';
import type { PricingDay } from '../compute/offer.ts';
import { insertOperations, resequence } from './operations.ts';
import { readPriceBook } from './price-book.ts';
import { listTicketCastings, type TicketCasting } from './priced-castings.ts';
import { getTicketForPrice, type TicketForPrice } from './ticket-money.ts';
import { insertWorkLine } from './work-lines.ts';

/** All that adding needs, read once; call `finishJob` when everything is added. */
export type Job = Readonly<{
  ticket: TicketForPrice;
  castings: readonly TicketCasting[];
  book: PriceBook;
  pricing: PricingDay;
  /** Set for the lines of an added-work option. */
  optionId: Id<'added_work_option'> | null;
  touched: Set<CastingId>;
}>;

export function openJob(db: WriteDb, ticketId: TicketId, optionId: Job['optionId'] = null): Job {
  const ticket = getTicketForPrice(db, ticketId);
  const book = readPriceBook(db);
  const pricing = { list: ticket.priceList, on: ticket.priceDay, factors: book.factors };
  return { ticket, castings: listTicketCastings(db, ticketId), book, pricing, optionId, touched: new Set() };
}

/** Put the operations of every casting that got new ones in order. */
export function finishJob(db: WriteDb, job: Job): void {
  for (const casting of job.castings) if (job.touched.has(casting.id)) resequence(db, job.book, casting);
}

export type Added = Readonly<{
  lineId: WorkLineId;
  operationIds: OperationId[];
  amount: Cents;
  working: string;
  words: string;
}>;

export type OperationWishInput = Readonly<{
  operationKindId: Id<'operation_kind'>;
  quantity: number | null;
  countNote?: string | null;
  wishedWords?: string | null;
  instruction?: string | null;
  spots?: readonly SpotId[];
}>;

/**
 * Add one operation to a casting.
 *
 * @param field input path of the wish, for the sentence beside it
 * @throws AppError `pricing/does-not-fit` with what does fit as offers, `rates/none-in-force`, `pricing/count-missing`
 */
export function addOperation(
  db: WriteDb,
  job: Job,
  castingId: CastingId,
  wish: OperationWishInput,
  field: string,
): Added {
  const casting = castingOf(job, castingId);
  const kind = job.book.kinds.get(wish.operationKindId);
  if (!kind || kind.retired) throw notFound('pricing/no-such-operation', 'This operation');
  const drafted = draftOperation(job.book, kind, casting, job.pricing, wish.quantity);
  const draft = draftOrRefuse(job, drafted, casting, field);
  if (draft.asksQuantity) {
    const message = `Say how many: ${kind.words} is sold by the ${draft.offer.unit}.`;
    throw badField('pricing/count-missing', `${field}.quantity`, message);
  }
  return addDraft(db, job, [casting], draft, {
    kind: 'operation',
    operationKindId: kind.id,
    castingTypeId: casting.castingTypeId,
    countNote: wish.countNote ?? null,
    wishedWords: wish.wishedWords ?? null,
    instruction: wish.instruction ?? null,
    spots: wish.spots ?? [],
    priceFrom: 'rate',
    priceWhy: null,
    net: false,
  });
}

export type PackageWishInput = Readonly<{
  packageId: Id<'package'>;
  wishedWords?: string | null;
  /** An agreed price of one casting, with its reason. */
  price?: PriceE4 | null;
  priceWhy?: string | null;
  net?: boolean;
}>;

/** Add one package line over castings of one type. @throws AppError as `addOperation` */
export function addPackage(
  db: WriteDb,
  job: Job,
  castingIds: readonly CastingId[],
  wish: PackageWishInput,
  field: string,
): Added {
  const castings = [...new Set(castingIds)].map((id) => castingOf(job, id));
  const [first] = castings;
  const pack = job.book.packages.get(wish.packageId);
  if (!pack || pack.retired || !first) throw notFound('pricing/no-such-package', 'This package');
  if (castings.some((c) => c.castingTypeId !== first.castingTypeId || c.metal !== first.metal)) {
    const message = 'These castings are of different types. Add the package to each type by itself.';
    throw badField('pricing/mixed-types', field, message);
  }
  const price = wish.price ?? null;
  if (price !== null && !wish.priceWhy)
    throw badField('pricing/why-missing', `${field}.priceWhy`, 'Write why this price.');
  const drafted = draftPackage(job.book, pack, first, job.pricing, { castings: castings.length, price });
  return addDraft(db, job, castings, draftOrRefuse(job, drafted, first, field), {
    kind: 'package',
    packageId: pack.id,
    castingTypeId: first.castingTypeId,
    wishedWords: wish.wishedWords ?? null,
    instruction: null,
    spots: [],
    priceFrom: price === null ? 'rate' : 'typed',
    priceWhy: price === null ? null : (wish.priceWhy ?? null),
    net: price !== null && (wish.net ?? false),
  });
}

type More = Omit<
  Parameters<typeof insertWorkLine>[1],
  keyof PriceTerms | 'ticketId' | 'castings' | 'words' | 'amount' | 'taxClass' | 'priceDay'
> &
  Readonly<{ instruction: string | null; spots: readonly SpotId[] }>;

function addDraft(db: WriteDb, job: Job, castings: readonly TicketCasting[], draft: Draft, more: More): Added {
  const { instruction, spots, ...line } = more;
  const { offer } = draft;
  const lineId = insertWorkLine(db, {
    ...line,
    ...offer,
    ticketId: job.ticket.id,
    castings: castings.map((c) => c.id),
    words: draft.words,
    priceDay: job.ticket.priceDay,
    optionId: job.optionId,
  });
  const of = { ticketId: job.ticket.id, lineId, optionId: job.optionId, instruction, spots };
  const operationIds = castings.flatMap((casting) => {
    job.touched.add(casting.id);
    return insertOperations(db, casting, draft.operations, of);
  });
  return { lineId, operationIds, amount: offer.amount, working: offer.working, words: draft.words };
}

/** @throws AppError `pricing/not-on-this-ticket` */
export function castingOf(job: Job, id: CastingId): TicketCasting {
  const found = job.castings.find((casting) => casting.id === id);
  if (!found) {
    const message = 'This casting is not on this ticket. Look at the tag, then choose it on its own ticket.';
    throw new AppError('rule-broken', 'pricing/not-on-this-ticket', message);
  }
  return found;
}

function draftOrRefuse(job: Job, drafted: Drafted, casting: TicketCasting, field: string): Draft {
  if ('draft' in drafted) return drafted.draft;
  const { refusal } = drafted;
  const code = refusal.priceOnly ? 'rates/none-in-force' : 'pricing/does-not-fit';
  throw new AppError('rule-broken', code, refusal.words, {
    fields: { [field]: refusal.words },
    offers: offersOf(job, refusal, casting),
  });
}

/** Ways on as buttons: the operations that do fit, ready to be added. */
const offersOf = (job: Job, refusal: Refusal, casting: TicketCasting): ErrorOffer[] =>
  refusal.fits.map((kind) => ({
    words: `Add ${kind.words}`,
    request: 'pricing/add-operations',
    input: {
      ticketId: job.ticket.id,
      castingId: casting.id,
      operations: [{ operationKindId: kind.id }],
    },
  }));
