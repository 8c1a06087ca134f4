/** Looking at questions and answers. */
import type { z } from 'zod';
import { engineLabel } from '../../catalogue/compute/spot-labels.ts';
import { getCustomer, listContacts, listPersons } from '../../customers/store.ts';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import type { Moment } from '../../kernel/days.ts';
import { formatDay, formatDayTime } from '../../kernel/format.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { cents } from '../../kernel/units.ts';
import { standingAnswers } from '../../lines/compute/authorised.ts';
import { NOTHING_EARLIER } from '../../lines/compute/bill.ts';
import { optionPrice } from '../../lines/compute/stop.ts';
import {
  agreedSoFar,
  linesOnBill,
  type TicketMoney,
  washedCastings,
  wholeBill,
} from '../../lines/compute/ticket-bill.ts';
import { getAddedWork, listApprovals, listOptionsOf } from '../../lines/store/answers.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { priceStop, readStopBook } from '../../lines/store/stops.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { getShop } from '../../shop/store.ts';
import { getTicket } from '../../tickets/store.ts';
import type { ApprovalView, askingContract, OptionView } from '../contract.ts';
import { stopView } from './options.ts';
import { listUnanswered } from './unanswered.ts';

type Questions = Pick<
  Handlers<typeof askingContract>,
  'approvals/get-question' | 'approvals/list-answers' | 'approvals/list-unanswered'
>;

export const questions: Questions = {
  'approvals/get-question': {
    run({ addedWorkId }, ctx) {
      const { db } = ctx;
      const row = getAddedWork(db, addedWorkId);
      const ticket = getTicket(db, row.ticket_id);
      const money = readTicketMoney(db, ticket.id, ctx.today);
      const stop = readStopBook(db, ticket.id, money);
      const { authorised } = agreedSoFar(money);
      const casting = stop.castings.find((c) => c.id === row.casting_id);
      const asker = nameOf(ctx, row.created_by);
      const number = `${ticket.number}-A${row.number}`;
      return {
        id: row.id,
        version: row.version,
        ticketId: ticket.id,
        ticketNumber: ticket.number,
        number,
        revision: row.revision,
        castingId: row.casting_id,
        tag: casting?.tag ?? 0,
        operationWords: operationWords(ctx, row.operation_id),
        words: row.words,
        findings: listFindings(ctx, addedWorkId),
        photos: listPhotos(ctx, addedWorkId),
        askedAt: row.asked_at ?? row.created_at,
        askedBy: asker,
        expiresAt: row.expires_at,
        expired: row.closed_at === null && row.expires_at < ctx.now,
        ifNoAnswer: row.if_no_answer,
        closedAt: row.closed_at,
        authorised: authorised.amount,
        authorisedTaxIn: authorised.taxIn,
        ceiling: authorised.ceiling,
        totalBefore: wholeBill(money, withoutOptions(ctx, money, addedWorkId)).figures.beforeTax,
        options: listOptionViews(ctx, ticket.id, money, addedWorkId),
        stopCasting: stopView(stop, priceStop(stop, new Set([row.casting_id]))),
        stopAll: stopView(stop, priceStop(stop, 'everything')),
        ...approvers(ctx, ticket.customer_id),
        answers: listAnswerViews(ctx, ticket.id).filter((a) => a.aboutWords.includes(number)),
        tries: listTries(ctx, ticket.id, row.asked_at ?? row.created_at),
      };
    },
  },
  'approvals/list-answers': {
    run: ({ ticketId }, ctx) => ({ answers: listAnswerViews(ctx, ticketId) }),
  },
  'approvals/list-unanswered': {
    run: ({ ticketId }, ctx) => {
      const hourClock = getShop(ctx.db).hour_clock;
      return {
        rows: listUnanswered(ctx, ticketId ?? null).map(({ lastDay, ...row }) => ({
          ...row,
          expiresWords:
            row.expiresAt === null ? formatDay(lastDay) : formatDayTime(ctx.local(row.expiresAt), { hourClock }),
        })),
      };
    },
  },
};

const nameOf = ({ db }: QueryCtx, staff: number | null): string =>
  staff === null
    ? ''
    : (db.one(
        db.q
          .selectFrom('staff')
          .select('name')
          .where('id', '=', staff as never),
      )?.name ?? '');

const operationWords = ({ db }: QueryCtx, operation: number | null): string | null =>
  operation === null
    ? null
    : (db.one(
        db.q
          .selectFrom('operation as o')
          .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
          .select('k.shop_words')
          .where('o.id', '=', operation as never),
      )?.shop_words ?? null);

const listFindings = ({ db }: QueryCtx, id: Parameters<typeof getAddedWork>[1]) =>
  db
    .all(
      db.q
        .selectFrom('added_work_finding as a')
        .innerJoin('finding as f', 'f.id', 'a.finding_id')
        .leftJoin('spot as s', 's.id', 'f.spot_id')
        .innerJoin('casting as c', 'c.id', 'f.casting_id')
        .innerJoin('casting_type as y', 'y.id', 'c.casting_type_id')
        .leftJoin('engine_type as e', 'e.id', 'y.engine_type_id')
        .leftJoin('staff as w', 'w.id', 'f.created_by')
        .select(['f.id', 'f.words', 'f.place_words', 'f.created_at', 'w.name'])
        .select(['s.kind as spotKind', 's.label', 's.cylinder', 'y.kind', 'c.position', 'e.numbering'])
        .where('a.added_work_id', '=', id)
        .orderBy('f.id'),
    )
    .map(({ spotKind, label, cylinder, ...f }) => ({
      id: f.id,
      words: f.words,
      place:
        spotKind === null || label === null
          ? f.place_words
          : engineLabel({ kind: spotKind, label, cylinder }, f, f.numbering),
      at: f.created_at,
      by: f.name ?? '',
    }));

const listPhotos = ({ db }: QueryCtx, id: Parameters<typeof getAddedWork>[1]) =>
  db.all(
    db.q
      .selectFrom('added_work_finding as a')
      .innerJoin('photo as p', 'p.finding_id', 'a.finding_id')
      .innerJoin('attachment as t', 't.id', 'p.attachment_id')
      .leftJoin('photo_hidden as h', 'h.photo_id', 'p.id')
      .select(['t.sha256', 'p.caption'])
      .where('a.added_work_id', '=', id)
      .where('h.id', 'is', null)
      .orderBy('p.id'),
  );

/** The ticket as it would be without the ways of this question. */
const withoutOptions = (ctx: QueryCtx, money: TicketMoney, id: Parameters<typeof getAddedWork>[1]) => {
  const own = new Set<number>(listOptionsOf(ctx.db, id).map((o) => o.id));
  return linesOnBill(money).filter((line) => line.optionId === null || !own.has(line.optionId));
};

function listOptionViews(
  ctx: QueryCtx,
  ticketId: TicketId,
  money: TicketMoney,
  id: Parameters<typeof getAddedWork>[1],
): z.output<typeof OptionView>[] {
  const views = listLineViews(ctx.db, ticketId, money, readStopBook(ctx.db, ticketId, money).book);
  const standing = standingAnswers(money.answers);
  const { authorised, most } = agreedSoFar(money);
  const base = withoutOptions(ctx, money, id);
  return listOptionsOf(ctx.db, id).map((row) => {
    const own = money.lines.filter((line) => line.optionId === row.id && !line.withdrawn);
    const price = optionPrice(
      {
        lines: base.map((line) => line.bill),
        washed: washedCastings(money, base, 'planned'),
        earlier: NOTHING_EARLIER,
        last: true,
        terms: money.terms,
      },
      own.map((line) => line.bill),
      washedCastings(money, [...base, ...own], 'planned'),
    );
    const isStop = row.kind === 'stop_casting' || row.kind === 'stop_all';
    const answer = standing.findLast((a) => a.about === 'added_work' && a.question === row.id)?.answer ?? null;
    const against = authorised.taxIn ? price.with.figures.total : price.with.figures.beforeTax;
    const extraTax = price.extraWithTax - price.extraBeforeTax;
    const newTax = price.with.figures.total - price.with.figures.beforeTax;
    return {
      id: row.id,
      letter: row.letter,
      kind: row.kind,
      words: row.words,
      daysMore: row.days_more,
      // What was asked stands, whatever the ticket has become since.
      extra: row.extra_cents,
      extraWithTax: cents(row.extra_cents + (isStop ? 0 : extraTax)),
      newTotal: row.new_total_cents,
      newTotalWithTax: cents(row.new_total_cents + (isStop ? 0 : newTax)),
      pastCeiling: authorised.ceiling && !isStop && answer !== 'yes' && against > most ? cents(against - most) : null,
      ifDeclinedWords: row.if_declined_words,
      lines: views.filter((view) => own.some((line) => line.id === view.id)),
      answer: answer === 'yes' || answer === 'no' ? answer : null,
    };
  });
}

/** Who may say yes, in the order they were added, with their numbers. */
function approvers({ db }: QueryCtx, customer: Parameters<typeof getCustomer>[1]) {
  const contacts = listContacts(db, customer);
  return {
    anyoneMayApprove: getCustomer(db, customer).who_approves === 'anyone',
    mayApprove: listPersons(db, customer)
      .filter((person) => person.may_approve === 1)
      .map((person) => ({
        personId: person.id,
        name: person.name,
        limit: person.approve_limit_cents,
        numbers: contacts.filter((c) => c.person === person.id && c.kind === 'phone').map((c) => c.value),
      })),
  };
}

/** Answers of a ticket, the latest first. */
function listAnswerViews(ctx: QueryCtx, ticketId: TicketId): z.output<typeof ApprovalView>[] {
  const { number } = getTicket(ctx.db, ticketId);
  const rows = listApprovals(ctx.db, ticketId);
  const takenBack = new Set(rows.map((row) => row.withdraws_id));
  return rows.map((row) => ({
    id: row.id,
    about: row.about,
    aboutWords: aboutWords(row, number),
    answer: row.answer,
    amount: row.amount_cents,
    taxIn: row.tax_in === 1,
    saidBy: row.said_by,
    means: row.means,
    numberCalled: row.number_called,
    words: row.words,
    saidAt: row.said_at,
    writtenBy: row.written_by ?? '',
    override: row.override_name === null ? null : { by: row.override_name, why: row.override_why ?? '' },
    withdrawn: takenBack.has(row.id),
  }));
}

function aboutWords(row: ReturnType<typeof listApprovals>[number], ticket: number): string {
  switch (row.about) {
    case 'estimate':
      return `estimate ${ticket}-E${row.estimate_revision}`;
    case 'added_work':
      return `added work ${ticket}-A${row.added_work_number}${row.option_letter ? `, way ${row.option_letter}` : ''}`;
    case 'ceiling':
      return 'ceiling';
    case 'scrap':
      return 'scrap';
    case 'overrun':
      return 'more hours';
  }
}

const listTries = ({ db }: QueryCtx, ticket: TicketId, since: Moment) =>
  db
    .all(
      db.q
        .selectFrom('contact_log as c')
        .leftJoin('staff as s', 's.id', 'c.created_by')
        .select(['c.created_at', 'c.words', 'c.reached', 's.name'])
        .where('c.ticket_id', '=', ticket)
        .where('c.about', '=', 'answer')
        .where('c.created_at', '>=', since)
        .orderBy('c.id', 'desc'),
    )
    .map((row) => ({ at: row.created_at, by: row.name ?? '', words: row.words, reached: row.reached === 1 }));
