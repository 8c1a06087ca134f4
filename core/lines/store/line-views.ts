/** Gathers what a screen shows of the lines of a ticket. */
import type { z } from 'zod';
import type { ReadDb } from '../../db/query.ts';
import type { CastingId, PartLineId, TicketId } from '../../kernel/ids.ts';
import { answerOnLine, notCoveredWords } from '../compute/authorised.ts';
import type { Bill } from '../compute/bill.ts';
import type { PriceBook } from '../compute/book.ts';
import { PER_HOUR } from '../compute/line.ts';
import { lineWords, plainUnit } from '../compute/line-views.ts';
import { committedLines, coverageOf, type TicketMoney } from '../compute/ticket-bill.ts';
import type { BillView, LineView } from '../contract.ts';
import { listOptions } from './answers.ts';
import { listTicketCastings, type TicketCasting } from './priced-castings.ts';
import { listWorkLines, type WorkLine } from './work-lines.ts';

type View = z.output<typeof LineView>;

/** Every line of a ticket: by casting in the order of the ticket, then the lines of the ticket as a whole. */
export function listLineViews(db: ReadDb, ticket: TicketId, money: TicketMoney, book: PriceBook): View[] {
  const castings = listTicketCastings(db, ticket);
  const known: Known = {
    money,
    book,
    castings,
    inside: insideOf(db, ticket, book),
    options: new Map(listOptions(db, ticket).map((o) => [o.id as number, `A${o.added_work_number} ${o.letter}`])),
    parts: new Map(partsByLine(db, ticket)),
    committed: new Set(committedLines(money).map((line) => line.id)),
  };
  const place = (view: View) => {
    const at = castings.findIndex((c) => c.id === (view.castingId ?? view.castings[0]?.id));
    return at < 0 ? castings.length : at;
  };
  return listWorkLines(db, ticket)
    .map((line) => viewOf(line, known))
    .sort((a, b) => place(a) - place(b) || a.position - b.position);
}

type Known = Readonly<{
  money: TicketMoney;
  book: PriceBook;
  castings: readonly TicketCasting[];
  inside: ReadonlyMap<number, string[]>;
  options: ReadonlyMap<number, string>;
  parts: ReadonlyMap<number, PartLineId>;
  committed: ReadonlySet<number>;
}>;

function viewOf(line: WorkLine, known: Known): View {
  const { book, castings } = known;
  const names = namesOf(line, book, castings);
  return {
    id: line.id,
    version: line.version,
    position: line.position,
    kind: line.kind,
    castingId: line.castingId,
    tag: line.castingId === null ? null : tagOf(castings, line.castingId),
    castings: line.castingIds.map((id) => ({ id, tag: tagOf(castings, id) ?? 0 })),
    operationKindId: line.operationKindId,
    packageId: line.packageId,
    words: line.words,
    ...names,
    wishedWords: line.wishedWords,
    countNote: line.countNote,
    quantity: line.quantity,
    per: line.per,
    unitPrice: line.unitPrice,
    factors: [...line.factors],
    ...lineWords(line, names.unit),
    amount: line.amount,
    taxClass: line.taxClass,
    net: line.net,
    priceFrom: line.priceFrom,
    priceWhy: line.priceWhy,
    inside: line.kind === 'package' ? (known.inside.get(line.id) ?? []) : [],
    actualSeconds: line.per === PER_HOUR ? line.actualSeconds : null,
    committed: known.committed.has(line.id),
    option: line.optionId === null ? null : (known.options.get(line.optionId) ?? null),
    withdrawn: line.withdrawnAt === null ? null : { at: line.withdrawnAt, why: line.withdrawnWhy ?? '' },
    partId: known.parts.get(line.id) ?? null,
    ...answerView(line, known),
  };
}

function answerView(line: WorkLine, { money }: Known) {
  const facts = money.lines.find((other) => other.id === line.id);
  const coverage = facts && coverageOf(money, facts);
  const covered = coverage?.covered === true && line.withdrawnAt === null;
  return {
    asked: facts?.asked ?? false,
    answer: answerOnLine(money.answers, line.id),
    covered,
    coverWords: covered || !coverage ? '' : notCoveredWords(coverage, line.amount),
    invoiceNumber: facts?.invoiceNumber ?? null,
  };
}

const partsByLine = (db: ReadDb, ticket: TicketId) =>
  db
    .all(db.q.selectFrom('part_line').select(['id', 'work_line_id']).where('ticket_id', '=', ticket))
    .flatMap((part) => (part.work_line_id === null ? [] : [[part.work_line_id as number, part.id] as const]));

const tagOf = (castings: readonly TicketCasting[], id: CastingId): number | null =>
  castings.find((c) => c.id === id)?.tag ?? null;

function namesOf(line: WorkLine, book: PriceBook, castings: readonly TicketCasting[]) {
  const kind = line.operationKindId === null ? undefined : book.kinds.get(line.operationKindId);
  const pack = line.packageId === null ? undefined : book.packages.get(line.packageId);
  const casting = castings.find((c) => c.id === line.castingIds[0]);
  const use = kind && casting ? kind.uses.get(casting.kind) : undefined;
  const shop = kind?.words ?? pack?.shopWords;
  return {
    shopWords: shop === undefined ? line.words : shop.charAt(0).toUpperCase() + shop.slice(1),
    unit: use?.chargeUnit ?? plainUnit(line.per),
  };
}

/** Shop's words of the operations of each line, each once, in traveller order. */
function insideOf(db: ReadDb, ticket: TicketId, book: PriceBook): Map<number, string[]> {
  const rows = db.all(
    db.q
      .selectFrom('operation')
      .select(['work_line_id', 'operation_kind_id'])
      .where('ticket_id', '=', ticket)
      .where('work_line_id', 'is not', null)
      .orderBy('position')
      .orderBy('id'),
  );
  const inside = new Map<number, string[]>();
  for (const row of rows) {
    const words = book.kinds.get(row.operation_kind_id)?.words;
    if (row.work_line_id === null || words === undefined) continue;
    const known = inside.get(row.work_line_id) ?? [];
    if (!known.includes(words)) inside.set(row.work_line_id, [...known, words]);
  }
  return inside;
}

/** A bill as screens read it. */
export const billView = ({ figures, derived, taxes }: Bill): z.output<typeof BillView> => ({
  figures,
  derived: derived.map(({ role, words, working, amount, taxClass }) => ({ role, words, working, amount, taxClass })),
  taxes: [...taxes],
});
