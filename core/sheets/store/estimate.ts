/** What an estimate shows: the lines as they were sent, by casting, and what they come to. */
import { formatDayYear } from '../../kernel/format.ts';
import type { EstimateId, WorkLineId } from '../../kernel/ids.ts';
import { agreedSoFar } from '../../lines/compute/ticket-bill.ts';
import { getEstimate, listLinesOfEstimate } from '../../lines/store/answers.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { listPromises } from '../../tickets/store.ts';
import { longDayTime, sentence } from '../compute/words.ts';
import type { EstimatePaper, MoneyLine, Named, TotalLine } from '../contract/papers.ts';
import { packageNotes, tagsOf } from './bill-lines.ts';
import { listPrintedCastings, metalWords, pieceWords, tagOf } from './castings.ts';
import { oweIfNotSaved } from './owe.ts';
import { partyOf, readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';

type View = ReturnType<typeof listLineViews>[number];
type Sent = ReturnType<typeof listLinesOfEstimate>[number];

/** @throws AppError `not-found` for an estimate that is not there */
export function readEstimate(scene: Scene, id: EstimateId): Omit<EstimatePaper, 'head'> {
  const { db } = scene;
  const estimate = getEstimate(db, id);
  const people = readTicketPeople(db, estimate.ticket_id);
  const money = readTicketMoney(db, estimate.ticket_id, scene.today);
  const views = listLineViews(db, estimate.ticket_id, money, readPriceBook(db));
  const sent = listLinesOfEstimate(db, id);
  const promise = listPromises(db, estimate.ticket_id).at(-1);
  const { authorised } = agreedSoFar(money);
  const viewOf = (line: WorkLineId | null) => views.find((view) => view.id === line);
  return {
    number: `${people.ticket.number}-E${estimate.revision}`,
    ticket: String(people.ticket.number),
    to: partyOf(people),
    orderNumber: people.ticket.order_number ?? '',
    made: formatDayYear(scene.localDay(estimate.created_at)),
    validUntil: formatDayYear(estimate.valid_until),
    groups: groupsOf(scene, sent, viewOf, estimate.ticket_id),
    currency: scene.shop.currency_code,
    totals: totalsOf(scene, estimate, sent),
    promise: promise
      ? {
          when: longDayTime(promise.on_day, promise.at_minute, scene.settings),
          condition: promise.depends_on ?? 'if no cracks are found',
        }
      : { when: 'we ring you with a day', condition: 'the day is counted from your yes' },
    ceiling: authorised.ceiling
      ? `Agreed already: up to ${scene.money(authorised.amount)} ${authorised.taxIn ? 'with' : 'before'} tax without a call.`
      : '',
    notes: notesOf(
      scene,
      estimate,
      views.filter((view) => sent.some((line) => line.work_line_id === view.id)),
    ),
    signFor: people.customer.printName,
  };
}

/** Lines by casting in the order of the ticket, then those of the ticket as a whole. */
function groupsOf(
  scene: Scene,
  sent: readonly Sent[],
  viewOf: (line: WorkLineId | null) => View | undefined,
  ticket: Sent['ticket_id'],
): EstimatePaper['groups'] {
  const castings = listPrintedCastings(scene.db, ticket);
  const lines = sent.filter((line) => line.work_line_id !== null);
  const tagOfLine = (line: Sent): number | undefined => {
    const view = viewOf(line.work_line_id);
    const tags = view ? tagsOf(view) : [];
    return tags.length === 1 ? tags[0] : undefined;
  };
  const of = (wanted: readonly Sent[]) => wanted.map((line) => moneyLine(scene, line, viewOf(line.work_line_id)));
  const byCasting = castings.flatMap((casting) => {
    const own = lines.filter((line) => tagOfLine(line) === casting.tag_no);
    const words = `${pieceWords(casting)}, ${metalWords(casting.material)}, ${casting.type_name}`;
    return own.length === 0 ? [] : [{ tag: tagOf(casting), words, lines: of(own) }];
  });
  const rest = lines.filter((line) => !castings.some(({ tag_no }) => tagOfLine(line) === tag_no));
  return rest.length === 0
    ? byCasting
    : [...byCasting, { words: castings.length === 0 ? 'Work' : 'For the whole ticket', lines: of(rest) }];
}

function moneyLine(scene: Scene, line: Sent, view: View | undefined): MoneyLine {
  const tags = view ? tagsOf(view) : [];
  const amount = scene.money(line.amount_cents);
  const plain = !view || (view.quantityWords === '1' && view.priceWords === amount);
  return {
    words: sentence(tags.length > 1 ? `${line.words}, ${tags.map((tag) => `tag ${tag}`).join(', ')}` : line.words),
    ...(!plain && { units: view.quantityWords, price: view.priceWords }),
    amount,
  };
}

function totalsOf(scene: Scene, estimate: ReturnType<typeof getEstimate>, sent: readonly Sent[]): TotalLine[] {
  const derived = sent.filter((line) => line.work_line_id === null);
  return [
    ...derived.map((line) => ({ words: line.words, amount: scene.money(line.amount_cents) })),
    { words: 'Before tax', amount: scene.money(estimate.before_tax_cents) },
    { words: 'Tax', amount: scene.money(estimate.tax_cents) },
    { words: `Total ${scene.shop.currency_code}`, amount: scene.money(estimate.total_cents), strong: true },
  ];
}

function notesOf(scene: Scene, estimate: ReturnType<typeof getEstimate>, views: readonly View[]): Named[] {
  const owe = oweIfNotSaved(scene, estimate.ticket_id);
  const answer = {
    label: 'Without an answer',
    words: `nothing is begun. The prices stand until ${formatDayYear(estimate.valid_until)}.`,
  };
  return [
    ...(estimate.words === null ? [] : [{ label: 'Note:', words: estimate.words }]),
    ...packageNotes(scene, views),
    ...(owe === null
      ? []
      : [{ label: 'If it cannot be saved', words: `you still owe about ${scene.money(owe)} before tax.` }]),
    answer,
  ];
}
