/** What the claim ticket shows: what was left, in which condition, what was asked for, what was agreed. */
import { formatDay, formatPercent } from '../../kernel/format.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { agreedSoFar, wholeBill } from '../../lines/compute/ticket-bill.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { findText } from '../../shop/store.ts';
import { listPromises } from '../../tickets/store.ts';
import { list, longDayTime, sentence } from '../compute/words.ts';
import type { ClaimTicketPaper, Named } from '../contract/papers.ts';
import { billedViews, billTotals, derivedLines, moneyLines, packageNotes } from './bill-lines.ts';
import {
  identityLines,
  itemWords,
  listContainers,
  listItems,
  listMarks,
  listPrintedCastings,
  markWords,
  metalWords,
  OWNER_BARS,
  type PrintedCasting,
  type PrintedContainer,
  pieceWords,
  shortWords,
  tagOf,
} from './castings.ts';
import { pictureMark } from './files.ts';
import { oweIfNotSaved } from './owe.ts';
import { partyOf, readTicketPeople, staffName, type TicketPeople } from './people.ts';
import type { Scene } from './scene.ts';

type Draft<T> = Omit<T, 'head'>;

/** @throws AppError `not-found` for a ticket that is not there */
export function readClaimTicket(scene: Scene, id: TicketId): Draft<ClaimTicketPaper> {
  const { db } = scene;
  const people = readTicketPeople(db, id);
  const { ticket, customer } = people;
  const castings = listPrintedCastings(db, id);
  const money = readTicketMoney(db, id, scene.today);
  const views = billedViews(scene, id, money);
  const bill = wholeBill(money);
  return {
    number: String(ticket.number),
    leftBy: {
      ...partyOf(people),
      ...(ticket.brought_by && { more: list([partyOf(people).more, `brought by ${ticket.brought_by}`]) }),
    },
    orderNumber: ticket.order_number ?? '',
    takenIn: {
      when: ticket.arrived_at === null ? 'not here yet' : scene.moment(ticket.arrived_at),
      by: staffName(db, ticket.taken_in_by),
    },
    account: customer.terms_words,
    castings: castings.map((casting) => castingOf(scene, casting, castings.length)),
    containers: listContainers(db, id).map((container) => containerOf(scene, container)),
    asked: [...moneyLines(scene, views, castings.length), ...derivedLines(scene, bill)],
    currency: scene.shop.currency_code,
    totals: billTotals(scene, bill, totalWords(scene, id, bill.figures.total)),
    askedNotes: ticket.wanted_words === null ? [] : [`In your words: ${ticket.wanted_words}`],
    promise: promiseOf(scene, id),
    ceiling: ceilingOf(scene, money),
    oldParts: { return: 'you want them back', discard: 'not wanted', not_asked: 'not asked' }[ticket.old_parts],
    contact: list([people.person?.name, people.number]) || 'nobody named',
    deposit: depositOf(scene, id),
    said: saidOf(people),
    notes: [...packageNotes(scene, views), ...notesOf(scene, people, castings, id)],
    terms: termsOf(scene, people),
    signature: signatureOf(scene, people),
  };
}

function castingOf(scene: Scene, casting: PrintedCasting, of: number): ClaimTicketPaper['castings'][number] {
  const items = listItems(scene.db, casting.id).filter((item) => item.container_id === null);
  const whole = items.filter((item) => (item.counted ?? 0) > 0 && shortWords(item) === undefined).map(itemWords);
  const inside = casting.came_assembled === 1 ? ['came assembled: the inside is counted when it is taken apart'] : [];
  const came = [...inside, ...whole, ...(casting.dress_words === null ? [] : [casting.dress_words])];
  return {
    tag: tagOf(casting),
    words: pieceWords(casting),
    piece: `${casting.position_in_ticket} of ${of}`,
    lines: [metalWords(casting.material), ...identityLines(casting)],
    came: came.length === 0 && casting.bare === 1 ? 'bare casting' : sentence(list(came)) || 'nothing counted',
    short: items.flatMap((item) => shortWords(item) ?? []),
    conditions: listMarks(scene.db, casting.id).map(markWords),
  };
}

function containerOf({ db }: Scene, container: PrintedContainer): ClaimTicketPaper['containers'][number] {
  const owner = OWNER_BARS[container.owner_mark].toLowerCase();
  const inside = db.all(
    db.q.selectFrom('arrival_item').select(['words', 'counted']).where('container_id', '=', container.id),
  );
  const counted = inside.map(({ words, counted: pieces }) => `${pieces ?? ''} ${words}`.trim());
  return {
    numbers: [container.label],
    words: list([sentence(container.kind), owner]),
    contents: [container.contents, list([container.count === null ? '' : `${container.count} pieces`, ...counted])]
      .filter(Boolean)
      .join(': '),
    condition: container.spot_words ?? '',
  };
}

/** What the total is: the estimate as it was sent, or what has become of it since. */
function totalWords(scene: Scene, id: TicketId, total: Cents): string {
  const sent = scene.db.one(
    scene.db.q
      .selectFrom('estimate')
      .select(['valid_until', 'total_cents'])
      .where('ticket_id', '=', id)
      .orderBy('revision', 'desc')
      .limit(1),
  );
  if (!sent) return 'Estimate with tax';
  return sent.total_cents === total
    ? `Estimate with tax, good until ${formatDay(sent.valid_until)}`
    : 'With tax, as it stands now';
}

function promiseOf(scene: Scene, id: TicketId): ClaimTicketPaper['promise'] {
  const promise = listPromises(scene.db, id).at(-1);
  if (!promise) return { when: 'no day promised yet', condition: 'we ring you with a day' };
  return {
    when: longDayTime(promise.on_day, promise.at_minute, scene.settings),
    condition: promise.depends_on ?? 'if no cracks are found and nothing else turns up',
  };
}

function ceilingOf(scene: Scene, money: Parameters<typeof agreedSoFar>[0]): ClaimTicketPaper['ceiling'] {
  const { authorised } = agreedSoFar(money);
  if (!authorised.ceiling || authorised.base === null) return { amount: 'nothing', basis: 'agreed: we ring first' };
  return { amount: scene.money(authorised.base.amount), basis: authorised.base.taxIn ? 'with tax' : 'before tax' };
}

/** What is held for this ticket and applied to no invoice yet. */
function depositOf(scene: Scene, id: TicketId): string {
  const rows = scene.db.sql<{ receipt: number; kind: string; left: number }>(
    `SELECT p.receipt_number AS receipt, p.kind, p.amount_cents - COALESCE((SELECT SUM(a.amount_cents) FROM allocation a WHERE a.payment_id = p.id), 0) AS left
     FROM payment p WHERE p.for_ticket_id = ? AND p.amount_cents > 0 ORDER BY p.id`,
    id,
  );
  const held = rows.filter(({ left }) => left > 0);
  if (held.length === 0) return 'none';
  const sum = sumCents(held.map(({ left }) => cents(left)));
  return `${scene.money(sum)} held, ${list(held.map(({ kind, receipt }) => `${kind}, receipt R${receipt}`))}`;
}

const GASKETS = {
  mls: 'multi-layer steel gasket',
  composition: 'composition gasket',
  other: 'other gasket',
  not_asked: '',
};

function saidOf({ ticket }: TicketPeople): string {
  const said = [
    ticket.history_words,
    ticket.use_words === null ? '' : `used for: ${ticket.use_words}`,
    ticket.engine_words === null ? '' : `engine: ${ticket.engine_words}`,
    ticket.fuel_words === null ? '' : `fuel: ${ticket.fuel_words}`,
    GASKETS[ticket.gasket],
    ticket.valve_lift_typed === null ? '' : `valve lift ${ticket.valve_lift_typed}`,
  ].filter(Boolean);
  return said.length === 0 ? '' : `${said.join('. ')}.`;
}

function notesOf(scene: Scene, people: TicketPeople, castings: readonly PrintedCasting[], id: TicketId): Named[] {
  const { ticket, customer } = people;
  const marks = castings.flatMap((casting) =>
    casting.own_marks === null ? [] : `${casting.own_marks} = tag ${casting.tag_no}`,
  );
  const owe = oweIfNotSaved(scene, id);
  const value: Cents | null = ticket.declared_value_cents;
  return [
    owe === null
      ? null
      : {
          label: 'If it cannot be saved',
          words: `you still owe about ${scene.money(owe)} before tax: taking apart, washing and crack checks.`,
        },
    marks.length === 0
      ? null
      : { label: 'Your own marks:', words: `${list(marks)}, order kept. Washing takes paint off; the tags keep it.` },
    ticket.crack_check === 'declined'
      ? { label: 'Crack check declined.', words: 'We do not answer for cracks that were not looked for.' }
      : null,
    customer.standing_instruction === null
      ? null
      : { label: 'Standing instruction:', words: customer.standing_instruction },
    value === null
      ? null
      : { label: 'Value you told us:', words: `${scene.money(value)} ${scene.shop.currency_code}.` },
    ticket.rush_bp !== null && ticket.rush_lost_at === null
      ? {
          label: 'Rush agreed:',
          words: `${formatPercent(ticket.rush_bp, scene.settings)} on labour; it falls away if we miss the day.`,
        }
      : null,
  ].filter((note): note is Named => note !== null);
}

/** Terms as they stood when the ticket was opened, storage and warranty as they stand. */
function termsOf({ db, shop, today }: Scene, { ticket }: TicketPeople): string {
  const terms =
    ticket.terms_text_id === null
      ? undefined
      : db.one(db.q.selectFrom('text_version').select('body').where('id', '=', ticket.terms_text_id));
  const storage =
    findText(db, 'storage', today)?.body ??
    `Storage is charged from ${shop.storage_after_days} days after the later of ready and told.`;
  const warranty = findText(db, 'warranty', today);
  return [
    terms?.body ?? 'Our care ends when the pieces are counted out and signed for.',
    storage,
    warranty ? `Warranty: the text of ${warranty.from}, handed out on asking and printed with the invoice.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function signatureOf(scene: Scene, people: TicketPeople): ClaimTicketPaper['signature'] {
  const { ticket, customer } = people;
  const label = `Signed, for ${customer.printName}. I have read the condition notes above.`;
  if (ticket.signed_how === 'left_unsigned') {
    return {
      label: 'Left unsigned. The conditions above lock at the first operation; a copy goes to the customer.',
      written: 'left unsigned',
    };
  }
  if (ticket.signed_how !== 'drawn') return { label };
  const date = ticket.claim_signed_at === null ? undefined : scene.shortMoment(ticket.claim_signed_at);
  const png = ticket.claim_signature_id === null ? undefined : pictureMark(scene.db, ticket.claim_signature_id);
  return { label, written: ticket.signed_by ?? 'signed on the screen', ...(date && { date }), ...(png && { png }) };
}
