/** The whole ticket page from one reading of its facts. */
import type { z } from 'zod';
import { formatMoney } from '../../kernel/format.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { answerOnLine } from '../../lines/compute/authorised.ts';
import { listAddedWork, listApprovals, listOptions } from '../../lines/store/answers.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { listParts } from '../../lines/store/parts.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { readIdentities } from '../../racks/store/goods.ts';
import { partWord } from '../../state/compute/goods.ts';
import { toldAt } from '../../state/compute/rows.ts';
import { chipsOfToday, isLate, type TicketNow, ticketNow } from '../../state/compute/tickets.ts';
import { loadFacts } from '../../state/store/load-facts.ts';
import { getTicket, type TicketRow } from '../../tickets/store.ts';
import { agreementLine } from '../compute.ts';
import type { TicketPage } from '../contract.ts';
import { accountOf, customerHead, fieldsOf, saidRows, signedOf, staffOf } from './head.ts';
import { moneyView } from './money.ts';
import {
  activityViews,
  atWords,
  contactViews,
  holdViews,
  movedWords,
  promiseViews,
  type Reading,
  releaseViews,
} from './rows.ts';
import { castingViews, operationViews } from './work.ts';

type Page = z.output<typeof TicketPage>;

/** @throws AppError `not-found` */
export function readPage(reading: Reading, id: TicketId): Page {
  const { db, today, minute, settings } = reading;
  const row = getTicket(db, id);
  const facts = loadFacts(db, id);
  const now = ticketNow(facts);
  const money = readTicketMoney(db, id, today);
  const book = readPriceBook(db);
  const lines = listLineViews(db, id, money, book);
  const identities = readIdentities(db, id, settings);
  const operations = operationViews(reading, now, lines);
  const holds = holdViews(reading, id);
  const promises = promiseViews(reading, id);
  const questions = questionViews(reading, id, row.number, now);
  const open = questions.filter((one) => !one.answered);
  const last = promises.at(-1) ?? null;
  return {
    ticketId: row.id,
    version: row.version,
    number: row.number,
    quick: row.quick === 1,
    customer: customerHead(reading, row),
    fields: fieldsOf(reading, row),
    said: saidRows(reading, row),
    arrivedAt: row.arrived_at,
    arrivedWords: row.arrived_at === null ? 'not here yet' : atWords(reading, row.arrived_at),
    takenInBy: staffOf(reading, row.taken_in_by),
    signed: signedOf(reading, row),
    conditionsLocked: identities.castings.length > 0 && identities.castings.every((one) => one.conditionsLocked),
    word: now.word,
    chips: [...now.chips, ...chipsOfToday(now, { day: today, minute })],
    agreement: agreementLine(now.word),
    notReady: [...now.missing],
    castings: castingViews(reading, now, identities.castings, operations, holds),
    operations,
    containers: identities.containers,
    lines: lines.map((line) => ({
      lineId: line.id,
      version: line.version,
      kind: line.kind,
      words: line.shopWords,
      wished: line.wishedWords,
      castingId: line.castingId,
      tags: line.castings.map((one) => one.tag),
      quantity: line.quantity,
      per: line.per,
      amount: line.amount,
      working: line.working,
      net: line.net,
      answerWords: line.answer ?? (line.covered ? 'under the ceiling' : 'not asked'),
      covered: line.covered,
      withdrawnWhy: line.withdrawn?.why ?? null,
      billed: line.invoiceNumber !== null,
      option: line.option,
    })),
    parts: partViews(reading, id),
    holds,
    questions,
    approvals: approvalViews(reading, id),
    promise: last,
    firstPromise: promises[0] ?? null,
    promises,
    promiseWords: movedWords(promises),
    late: isLate(last && { day: last.day, minute: last.minute }, now, { day: today, minute }),
    money: {
      ...moneyView(reading, id, money, facts.money, open),
      account: accountOf(reading, row),
    },
    contacts: contactViews(reading, id),
    activity: activityViews(reading, id),
    releases: releaseViews(reading, id),
    photos: db.sql<{ n: number }>('SELECT COUNT(*) AS n FROM photo WHERE ticket_id = ?', id)[0]?.n ?? 0,
    next: nextSteps(row, now, open.length),
  };
}

function questionViews(reading: Reading, id: TicketId, number: number, now: TicketNow): Page['questions'] {
  const options = listOptions(reading.db, id);
  const waiting = new Set(now.known.unanswered.filter((one) => one.kind === 'added work').map((one) => one.id));
  return listAddedWork(reading.db, id).map((row) => {
    const extras = options
      .filter((one) => one.added_work_id === row.id && one.kind === 'work')
      .map((one) => one.extra_cents as number);
    return {
      addedWorkId: row.id,
      number: row.number,
      label: `${number}-A${row.number}`,
      castingId: row.casting_id,
      words: row.words,
      extra: cents(Math.max(0, ...extras)) as Cents,
      askedAt: row.asked_at,
      expiresAt: row.expires_at,
      answered: !waiting.has(row.id),
    };
  });
}

function approvalViews({ db, settings }: Reading, id: TicketId): Page['approvals'] {
  const rows = listApprovals(db, id);
  const takenBack = new Set(rows.flatMap((row) => row.withdraws_id ?? []));
  return rows.map((row) => {
    const number = row.number_called === null ? '' : ` ${row.number_called}`;
    const amount = formatMoney(row.amount_cents, settings);
    return {
      approvalId: row.id,
      about: row.about,
      words: `${row.answer} to ${aboutOf(row)}, ${amount}${row.tax_in === 1 ? ' with tax' : ''}. ${row.said_by}, ${row.means}${number}: ${row.words}`,
      at: row.said_at,
      by: row.written_by ?? '',
      takenBack: takenBack.has(row.id),
    };
  });
}

function aboutOf(row: ReturnType<typeof listApprovals>[number]): string {
  if (row.about === 'added_work')
    return row.option_letter === null
      ? `A${row.added_work_number}`
      : `A${row.added_work_number} (${row.option_letter})`;
  return row.about === 'estimate' ? `estimate ${row.estimate_revision ?? ''}`.trim() : row.about;
}

const partViews = ({ db }: Reading, id: TicketId): Page['parts'] =>
  listParts(db, id).map((part) => {
    const word = partWord({
      source: part.source,
      quotedAt: part.quoted_at,
      orderedAt: part.ordered_at,
      backOrderedAt: part.back_ordered_at,
      hereAt: part.here_at,
      fittedAt: part.fitted_at,
      returnedAt: part.returned_at,
    });
    const more = [
      part.supplier_words,
      part.expected_on === null ? null : `expected ${part.expected_on}`,
      part.blocks_words === null ? null : `blocks ${part.blocks_words}`,
    ];
    return {
      partLineId: part.id,
      version: part.version,
      castingId: part.casting_id,
      words: part.words,
      quantity: part.quantity,
      word,
      expectedOn: part.expected_on,
      more: more.filter((one) => one !== null).join(', '),
    };
  });

/** What the page offers next, most likely first. */
function nextSteps(row: TicketRow, now: TicketNow, questions: number): Page['next'] {
  const steps: Page['next'] = [];
  const has = (...words: string[]) => words.includes(now.word);
  const { facts } = now.known;
  const over = has('collected', 'closed', 'declined', 'abandoned');
  if (!over && (questions > 0 || now.known.unanswered.length > 0))
    steps.push({ words: 'Log the answer', go: 'answer' });
  if (has('enquiry')) steps.push({ words: 'Check in castings', go: 'check-in' });
  if (row.arrived_at !== null && row.signed_how === null && !over) steps.push({ words: 'Sign the list', go: 'sign' });
  const unasked = facts.lines.some(
    (line) => !line.withdrawn && answerOnLine(facts.answers, line.id) === null && !line.asked && !line.covered,
  );
  const ready = has('ready');
  // The work is done: what is past the estimate is spoken about when they are told.
  if (unasked && !over && !ready) steps.push({ words: 'Send an estimate', go: 'estimate' });
  if (ready && toldAt(facts) === null) steps.push({ words: 'Tell the customer', go: 'tell' });
  if (ready) steps.push({ words: 'Invoice', go: 'invoice' });
  if (has('ready', 'invoiced', 'paid')) steps.push({ words: 'Hand over', go: 'release' });
  if (facts.promises.length === 0 && has('checked in', 'approved', 'in work', 'waiting approval'))
    steps.push({ words: 'Promise a day', go: 'promise' });
  steps.push({ words: 'Print', go: 'print' });
  return steps;
}
