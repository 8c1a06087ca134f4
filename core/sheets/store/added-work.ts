/** What an added-work request shows: the finding, the ways to go with their prices, what a stop costs and why. */

import { formatDay, formatTime } from '../../kernel/format.ts';
import type { AddedWorkId } from '../../kernel/ids.ts';
import { cents } from '../../kernel/units.ts';
import { agreedSoFar, type TicketMoney } from '../../lines/compute/ticket-bill.ts';
import { getAddedWork, listOptionsOf } from '../../lines/store/answers.ts';
import { priceStop, readStopBook } from '../../lines/store/stops.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { openDayAfter } from '../../tickets/compute/open-days.ts';
import { calendarOf, listPromises } from '../../tickets/store.ts';
import { joinAlike, list, sentence } from '../compute/words.ts';
import type { AddedWorkPaper, MoneyLine } from '../contract/papers.ts';
import { getPrintedCasting, type PrintedCasting, pieceWords, tagOf } from './castings.ts';
import { drawFinding } from './drawing.ts';
import { canCarry, fileMark } from './files.ts';
import { partyOf, readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';

type Question = ReturnType<typeof getAddedWork>;
type Option = ReturnType<typeof listOptionsOf>[number];

/** @throws AppError `not-found` for a request that is not there */
export function readAddedWork(scene: Scene, id: AddedWorkId): Omit<AddedWorkPaper, 'head'> {
  const { db } = scene;
  const question = getAddedWork(db, id);
  const people = readTicketPeople(db, question.ticket_id);
  const casting = getPrintedCasting(db, question.casting_id);
  const money = readTicketMoney(db, question.ticket_id, scene.today);
  const { authorised } = agreedSoFar(money);
  const basis = authorised.taxIn ? 'with tax' : 'before tax';
  const photo = photoOf(scene, question);
  const party = partyOf(people);
  const order = people.ticket.order_number === null ? '' : `order ${people.ticket.order_number}`;
  return {
    number: `${people.ticket.number}-A${question.number}`,
    to: { name: party.name, ...(list([party.more, order]) !== '' && { more: list([party.more, order]) }) },
    answerBy: scene.shortMoment(question.expires_at),
    agreed: authorised.ceiling
      ? `ceiling ${scene.money(authorised.base?.amount ?? authorised.amount)} ${basis}`
      : `${scene.money(authorised.amount)} ${basis}`,
    tag: tagOf(casting),
    found: question.words,
    foundMore: findingWords(scene, question, casting),
    ...readingOf(scene, question),
    drawing: drawFinding(db, casting, spotsOf(scene, question)),
    ...(photo && { photo }),
    ways: listOptionsOf(db, id).map((option) => wayOf(scene, question, option)),
    ...soFarOf(scene, question, money),
    currency: scene.shop.currency_code,
    silence:
      question.if_no_answer ??
      `work on this casting waits. After ${scene.shortMoment(question.expires_at)} we ring again; the storage terms of your claim ticket apply.`,
    signFor: people.customer.printName,
  };
}

/** Places the findings name. */
const spotsOf = ({ db }: Scene, question: Question) =>
  db.all(
    db.q
      .selectFrom('added_work_finding as a')
      .innerJoin('finding as f', 'f.id', 'a.finding_id')
      .innerJoin('spot as s', 's.id', 'f.spot_id')
      .select(['s.kind', 's.label', 's.cylinder'])
      .where('a.added_work_id', '=', question.id)
      .orderBy('f.id'),
  );

/** Who found it, when, in which step, and how many pictures are kept. */
function findingWords(scene: Scene, question: Question, casting: PrintedCasting): string[] {
  const { db } = scene;
  const rows = db.all(
    db.q
      .selectFrom('added_work_finding as a')
      .innerJoin('finding as f', 'f.id', 'a.finding_id')
      .leftJoin('staff as s', 's.id', 'f.created_by')
      .leftJoin('operation as o', 'o.id', 'f.operation_id')
      .leftJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .select(['f.created_at', 'f.words', 'f.place_words', 's.name as by', 'k.customer_words'])
      .where('a.added_work_id', '=', question.id)
      .orderBy('f.id'),
  );
  const photos = countPhotos(scene, question);
  return [
    `On the ${pieceWords(casting).toLowerCase()}, tag ${casting.tag_no}.`,
    ...rows.map(
      (row) =>
        `Found ${scene.shortMoment(row.created_at)} by ${row.by ?? ''}${row.customer_words === null ? '' : ` in: ${row.customer_words}`}. ${list([sentence(row.words), row.place_words])}.`,
    ),
    photos === 0 ? '' : `${photos === 1 ? 'One photo is kept' : `${photos} photos are kept`} and can be sent.`,
  ].filter(Boolean);
}

const photosOf = ({ db }: Scene, question: Question) =>
  db.all(
    db.q
      .selectFrom('photo as p')
      .innerJoin('attachment as a', 'a.id', 'p.attachment_id')
      .innerJoin('added_work_finding as w', 'w.finding_id', 'p.finding_id')
      .leftJoin('photo_hidden as h', 'h.photo_id', 'p.id')
      .select(['a.sha256', 'a.mime'])
      .where('w.added_work_id', '=', question.id)
      .where('h.id', 'is', null)
      .orderBy('p.id'),
  );

const countPhotos = (scene: Scene, question: Question): number => photosOf(scene, question).length;

/** The first picture that a PDF can carry. */
const photoOf = (scene: Scene, question: Question): string | undefined => {
  const found = photosOf(scene, question).find(({ mime }) => canCarry(mime));
  return found && fileMark(found.sha256);
};

/** The last figure read at the place of the finding, beside its limit in words. */
function readingOf({ db }: Scene, question: Question): Pick<AddedWorkPaper, 'reading'> {
  if (question.operation_id === null) return {};
  const row = db.one(
    db.q
      .selectFrom('reading as r')
      .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
      .leftJoin('spot as s', 's.id', 'r.spot_id')
      .leftJoin('reading as later', 'later.supersedes_id', 'r.id')
      .select(['q.words', 's.label', 'r.typed', 'r.unit', 'r.kind', 'r.note'])
      .where('r.operation_id', '=', question.operation_id)
      .where('later.id', 'is', null)
      .where('r.kind', 'in', ['number', 'choice', 'text'])
      .orderBy('r.id', 'desc')
      .limit(1),
  );
  if (!row) return {};
  const value = row.unit === null || row.typed.endsWith(row.unit) ? row.typed : `${row.typed} ${row.unit}`;
  return {
    reading: {
      what: sentence(list([row.words, row.label])),
      value,
      limit: row.note ?? 'see the finding',
      verdict: 'found',
    },
  };
}

const STOPS = ['stop_casting', 'stop_all'];

function wayOf(scene: Scene, question: Question, option: Option): AddedWorkPaper['ways'][number] {
  const stop = STOPS.includes(option.kind);
  const titles = {
    work: 'Repair it',
    other_casting: 'Another casting',
    stop_casting: 'Stop this casting',
    stop_all: 'Stop everything',
  };
  return {
    letter: option.letter,
    title: titles[option.kind],
    words: option.words,
    rows: [
      { label: 'Extra', value: stop ? '-' : scene.money(option.extra_cents) },
      {
        label: stop && option.kind === 'stop_all' ? 'To pay before tax' : 'New total before tax',
        value: scene.money(option.new_total_cents),
      },
      { label: 'New date', value: dateOf(scene, question, option) },
    ],
    small: smallOf(option),
  };
}

function dateOf(scene: Scene, question: Question, option: Option): string {
  if (option.kind === 'stop_all') return 'collect when packed';
  // The promise that stood when the question was put.
  const asked = question.asked_at ?? question.created_at;
  const promise = listPromises(scene.db, question.ticket_id).findLast(({ created_at }) => created_at <= asked);
  const more = `${option.days_more} ${option.days_more === 1 ? 'day' : 'days'} more`;
  if (!promise) return option.days_more === 0 ? 'as agreed' : more;
  const day =
    option.days_more === 0
      ? promise.on_day
      : openDayAfter(calendarOf(scene.db, 'bench'), promise.on_day, option.days_more);
  return `${formatDay(day)}, ${formatTime(promise.at_minute, scene.settings)}`;
}

/** Warranty of each way, and what a repair that fails its test costs. Common practice, no source. */
function smallOf(option: Option): string[] {
  const declined = option.if_declined_words === null ? [] : [`If you say no: ${option.if_declined_words}`];
  switch (option.kind) {
    case 'work':
      return [
        'Warranty as on our other work, from the day you collect. A crack beside the repair is not covered.',
        'If it fails its test again we stop and ring you; the test done is charged.',
        ...declined,
      ];
    case 'other_casting':
      return ['Warranty on our work; on the casting only if it is ours.', ...declined];
    default:
      return ['You pay for work done and parts ordered only. The sheet will name what was found.'];
  }
}

/** What "to pay if stopped" is made of, as it stands now. */
function soFarOf(scene: Scene, question: Question, money: TicketMoney): Pick<AddedWorkPaper, 'soFar' | 'soFarTotal'> {
  const { bill, kept } = priceStop(readStopBook(scene.db, question.ticket_id, money), 'everything');
  const asked = listOptionsOf(scene.db, question.id).find(({ kind }) => kind === 'stop_all')?.new_total_cents;
  if (asked !== undefined && asked !== bill.figures.beforeTax) {
    // More was done since: the price of the day it was asked stands beside no list of another day.
    return { soFar: [{ words: 'as reckoned when you were asked', amount: scene.money(asked) }], soFarTotal: [] };
  }
  const lines = joinAlike(
    kept.map(({ line, amount, working }) => ({
      words: sentence(list([line.words, working])),
      tags: line.castingIds,
      units: '',
      price: '',
      amount,
    })),
  ).map(
    ({ words, count, amount }): MoneyLine => ({
      words: count > 1 ? `${words}, ${count} castings` : words,
      amount: scene.money(cents(amount)),
    }),
  );
  const derived = bill.derived.map(({ words, amount }) => ({ words, amount: scene.money(amount) }));
  return {
    soFar:
      lines.length === 0
        ? [{ words: 'nothing is done or ordered yet', amount: scene.money(bill.figures.labour) }]
        : [...lines, ...derived],
    soFarTotal: [
      {
        words: 'To pay if everything stops now, before tax',
        amount: scene.money(bill.figures.beforeTax),
        strong: true,
      },
    ],
  };
}
