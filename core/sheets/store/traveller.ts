/** What the traveller shows: the work in its order, the sizes wanted, warnings, what came with the casting. */

import { formatTime } from '../../kernel/format.ts';
import type { CastingId } from '../../kernel/ids.ts';
import type { OperationFact, TicketFacts } from '../../state/compute/facts.ts';
import type { OperationNow } from '../../state/compute/operations.ts';
import { ticketNow } from '../../state/compute/tickets.ts';
import { HOLD_WORDS } from '../../state/compute/words.ts';
import { loadFacts } from '../../state/store/load-facts.ts';
import { listPromises } from '../../tickets/store.ts';
import { list, sentence, tagDay } from '../compute/words.ts';
import type { Named, TravellerPaper } from '../contract/papers.ts';
import {
  countWords,
  getPrintedCasting,
  identityLines,
  itemWords,
  listContainers,
  listItems,
  listMarks,
  markWords,
  OWNER_BARS,
  type PrintedCasting,
  shortWords,
  sideWords,
  tagOf,
} from './castings.ts';
import { drawPrinted } from './drawing.ts';
import { codesOf, readGrids, readWanted } from './grid.ts';
import { readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';
import { readSpec } from './spec.ts';

type Draft = Omit<TravellerPaper, 'head' | 'changed' | 'changedSince'>;

/** @throws AppError `not-found` for a casting that is not there */
export function readTraveller(scene: Scene, id: CastingId): Draft {
  const { db } = scene;
  const casting = getPrintedCasting(db, id);
  const { ticket, customer } = readTicketPeople(db, casting.ticket_id);
  const facts = loadFacts(db, casting.ticket_id);
  const operations = ticketNow(facts).operations.filter((now) => now.castingId === id && now.live);
  const marks = listMarks(db, id);
  const wanted = readWanted(
    scene,
    operations.map((now) => now.id as OperationFact['id']),
  );
  return {
    tag: tagOf(casting),
    position: sideWords(casting),
    piece: countWords(casting),
    ticket: String(ticket.number),
    customer: customer.short_name,
    promise: promiseOf(scene, casting),
    rush: facts.ticket.rush,
    about: `${identityLines(casting).join('. ')}.`,
    drawing: drawPrinted(db, casting, marks),
    marks: marks.map((mark) => ({ no: mark.no, words: benchWords(mark) })),
    spec: readSpec(scene, casting, codesOf(wanted)),
    warnings: warningsOf(scene, casting, ticket),
    operations: operations.map((now, index) => ({
      ...operationOf(scene, facts, now, index),
      readings: list(
        (wanted.get(now.id as OperationFact['id']) ?? []).flatMap(({ words, computed }) => (computed ? [] : [words])),
      ),
    })),
    notes: notesOf(scene, casting, facts),
    grids: readGrids(scene, casting, wanted),
  };
}

const benchWords = (mark: ReturnType<typeof listMarks>[number]): string => {
  const words = markWords(mark).words.replace(/\.$/, '');
  return words.charAt(0).toLowerCase() + words.slice(1);
};

function promiseOf(scene: Scene, casting: PrintedCasting): TravellerPaper['promise'] {
  const promise = listPromises(scene.db, casting.ticket_id).at(-1);
  if (!promise) return { day: 'NO DAY', time: 'YET' };
  return { day: tagDay(promise.on_day), time: formatTime(promise.at_minute, scene.settings) };
}

function warningsOf(
  { db }: Scene,
  casting: PrintedCasting,
  ticket: ReturnType<typeof readTicketPeople>['ticket'],
): string[] {
  const items = listItems(db, casting.id);
  const caps = items.find(({ words, counted }) => /cap/.test(words) && (counted ?? 0) > 0);
  const first = items.filter(({ remove_before_wash, removed_at }) => remove_before_wash === 1 && removed_at === null);
  const own = items.some(({ customers_own }) => customers_own === 1);
  return [
    ticket.gasket === 'mls' ? 'MLS GASKET' : '',
    casting.stamp_allowed === 'tag_only' ? 'DO NOT STAMP' : '',
    casting.close_tolerance === 1 ? 'CLOSE TOLERANCE' : '',
    caps ? `${caps.counted} ${caps.words.toUpperCase()} STAY WITH THIS ${casting.kind.toUpperCase()}` : '',
    own ? "CUSTOMER'S OWN PARTS" : '',
    first.length === 0 ? '' : `OFF BEFORE ANY WASH: ${list(first.map(({ words }) => words.toUpperCase()))}`,
    casting.weight_class === 'two' ? 'TWO PEOPLE' : casting.weight_class === 'hoist' ? 'USE A HOIST' : '',
    ticket.valve_lift_typed === null ? '' : `HIGH LIFT ${ticket.valve_lift_typed}`,
  ].filter(Boolean);
}

function operationOf(
  scene: Scene,
  facts: TicketFacts,
  now: OperationNow,
  index: number,
): TravellerPaper['operations'][number] {
  const fact = facts.operations.find((one) => one.id === now.id);
  const kind = scene.db.one(
    scene.db.q
      .selectFrom('operation as o')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .select(['k.shop_words', 'k.cautions'])
      .where('o.id', '=', now.id as OperationFact['id']),
  );
  const waived = now.waived.map((waiver) => `rule ${waiver.rule.no} waived: ${waiver.waiver?.reason ?? ''}`);
  const note = [
    now.covered ? '' : 'ONLY IF APPROVED',
    fact?.redoOf == null ? '' : 'done again',
    fact?.setUp,
    fact?.instruction,
    kind?.cautions,
    ...waived,
  ].filter(Boolean);
  return {
    no: now.covered ? String(index + 1) : `${index + 1}?`,
    name: sentence(kind?.shop_words ?? ''),
    note: note.join('. '),
    units: String(fact?.units ?? 1),
  };
}

function notesOf({ db }: Scene, casting: PrintedCasting, facts: TicketFacts): Named[] {
  const items = listItems(db, casting.id);
  const containers = listContainers(db, casting.ticket_id).filter((one) => one.casting_id === casting.id);
  const short = items.flatMap((item) => shortWords(item) ?? []);
  const loose = items.filter(
    (item) => item.container_id === null && (item.counted ?? 0) > 0 && shortWords(item) === undefined,
  );
  const parts = facts.parts.filter((part) => part.castingId === casting.id || part.castingId === null);
  const holds = facts.holds.filter((hold) => hold.castingId === null || hold.castingId === casting.id);
  const boxes = containers.map(
    ({ label, kind, contents, owner_mark }) =>
      `${kind} ${label}: ${list([contents, OWNER_BARS[owner_mark].toLowerCase()])}`,
  );
  return [
    { label: 'Came with', words: list([...loose.map(itemWords), ...boxes, ...short.map((words) => `${words}: ask`)]) },
    { label: 'Parts', words: list(parts.map((part) => `${part.words}: ${partWords(part)}`)) },
    { label: 'Held', words: list(holds.map((hold) => list([HOLD_WORDS[hold.reason], hold.words]))) },
    { label: 'Marks', words: casting.own_marks ?? '' },
  ].filter(({ words }) => words !== '');
}

function partWords(part: TicketFacts['parts'][number]): string {
  if (part.fittedAt !== null) return 'fitted';
  if (part.hereAt !== null) return 'here';
  if (part.source === 'customer') return 'customer brings it';
  if (part.source === 'stock') return 'from stock';
  return part.orderedAt === null ? 'not ordered' : 'ordered';
}
