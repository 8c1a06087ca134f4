/** The whole page of a casting at the bench, in one answer. No price, no telephone, no address. */
import type { z } from 'zod';
import { metalView } from '../../castings/compute.ts';
import { applies, holds } from '../../catalogue/compute/order-rules.ts';
import { engineLabel } from '../../catalogue/compute/spot-labels.ts';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import { formatDayTime } from '../../kernel/format.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { bowAdvice, bowOf } from '../../readings/compute/bow.ts';
import type { NeededReading } from '../../readings/compute/needed.ts';
import { readNeeded } from '../../readings/store/needed.ts';
import { getShop, settingsOf } from '../../shop/store.ts';
import { ruleInput } from '../../state/compute/reasons.ts';
import { signaturesNeeded, signaturesOf } from '../../state/compute/signed.ts';
import type { TicketNow } from '../../state/compute/tickets.ts';
import { FACT_WORDS, HOLD_WORDS, TICKED_FACTS } from '../../state/compute/words.ts';
import type { BenchSchema, OperationRow } from '../../state/contract.ts';
import { readTicketNow } from '../../state/store/load-facts.ts';
import { placeWords, promiseView, warningsOf } from '../compute/bench-words.ts';
import { operationViews } from '../compute/operation-view.ts';
import type { floorContract } from '../contract.ts';
import * as store from '../store/bench.ts';
import { listHolds } from '../store/queue.ts';
import { arrivalOf } from './arrival.ts';
import { sizesOf } from './sizes.ts';
import { holdView, who } from './views.ts';

type Page = z.input<typeof BenchSchema>;

export const bench: Pick<Handlers<typeof floorContract>, 'floor/get-bench'> = {
  'floor/get-bench': {
    run({ tag }, ctx) {
      const head = store.readBenchHead(ctx.db, tag);
      const now = readTicketNow(ctx.db, head.ticket_id);
      return pageOf(ctx, head, now) as z.output<typeof BenchSchema>;
    },
  },
};

function pageOf(ctx: QueryCtx, head: store.BenchHead, now: TicketNow): Page {
  const { db, today, minute } = ctx;
  const { facts } = now.known;
  const settings = settingsOf(getShop(db));
  const kinds = store.countKinds(db, head.ticket_id);
  const live = now.known.live.filter((o) => o.castingId === head.id);
  const needed = readNeeded(
    db,
    head.id,
    live.map((o) => o.id),
    today,
  );
  const tables = store.listTableRows(db, head);
  const operations = operationViews(
    {
      now,
      people: store.listNames(db),
      more: store.listOperationMore(db, head.ticket_id),
      needed,
      tableOf: (code, quantity) =>
        (tables.find((t) => t.operation === code) ?? tables.find((t) => t.quantity === quantity))?.code ?? null,
      inTable: (quantity) => tables.some((t) => t.quantity === quantity),
      given: store.listGiven(db, head.id),
      me: ctx.session.staff,
    },
    head.id,
  );
  const arrival = arrivalOf(db, head);
  const ownHolds = listHolds(db, head.ticket_id).filter(
    (hold) =>
      hold.reason === 'identity' ||
      hold.casting_id === head.id ||
      isOnOperation(hold.operation_id, operations) ||
      isOnTicket(hold),
  );
  const promise = facts.promises.at(-1) ?? null;
  return {
    castingId: head.id,
    version: head.version,
    ticketId: head.ticket_id,
    ticketNumber: head.number,
    tag: head.tag_no,
    customer: head.short_name,
    kind: head.kind,
    position: head.position,
    numbering: head.numbering,
    placeWords: placeWords(head.kind, head.position, head.position_in_ticket, kinds.get(head.kind) ?? 1),
    typeWords: head.type_name,
    castingTypeId: head.casting_type_id,
    castingNumber: head.casting_number,
    shopStamp: head.shop_stamp,
    metal: metalView(head.material, head.metal_confirmed_at),
    word: now.castings.find((c) => c.id === head.id)?.word ?? 'received',
    identityInDoubt: facts.holds.some((hold) => hold.reason === 'identity'),
    warnings: [
      ...warningsOf({
        material: head.material,
        stampAllowed: head.stamp_allowed,
        gasket: head.gasket,
        crackCheckDeclined: head.crack_check === 'declined',
        weightClass: head.weight_class,
        heldParts: arrival.customersOwn,
        removeFirst: arrival.removeFirst,
        valveLift: head.valve_lift_typed,
        certified: head.certified === 1,
      }),
      ...bendAdvice(now, head.id, needed),
      ...pairQuestions(now, head.id),
    ],
    promise: promiseView(promise, facts.ticket.rush, { day: today, minute }, settings),
    pair: pairOf(now, head, kinds),
    operations,
    firstStop: firstStop(operations),
    sizes: sizesOf(ctx, head.id, needed),
    arrival: { notes: arrival.notes, items: arrival.items, cameWith: arrival.cameWith, marks: arrival.marks },
    photos: store.listPhotos(db, head.id),
    findings: store.listFindings(db, head.id).map((f) => ({
      id: f.id,
      words: [f.words, spotLabel(f, head) ?? f.place_words].filter(Boolean).join(', '),
      at: f.created_at,
      by: who(f.created_by, f.initials, f.name),
      question: f.number === null ? null : questionWords(f.number, f.asked_at, f.closed_at),
    })),
    holds: ownHolds.map((hold) => holdView(hold, ctx)),
    facts: factsOf(ctx, now, head.id),
    tables: tablesOf(tables, operations),
    paperWords: paperWords(store.findTraveller(db, head.id)),
    cardTagOffAt: head.card_tag_off_at,
    metalTagOnAt: head.metal_tag_on_at,
    place: store.findPlace(db, head.id),
    signOffWords: signOffWords(now, head.id, store.listNames(db)),
  };
}

const isOnTicket = (hold: Readonly<{ casting_id: number | null; operation_id: number | null }>): boolean =>
  hold.casting_id === null && hold.operation_id === null;

const isOnOperation = (operation: number | null, own: readonly OperationRow[]): boolean =>
  operation !== null && own.some((o) => o.id === operation);

function pairOf(now: TicketNow, head: store.BenchHead, kinds: ReadonlyMap<string, number>): Page['pair'] {
  if (head.pair_no === null) return [];
  return now.known.facts.castings
    .filter((c) => c.id !== head.id && c.pair === head.pair_no)
    .map((c) => ({
      castingId: c.id,
      tag: c.tag,
      placeWords: placeWords(head.kind, c.position as typeof head.position, c.positionInTicket, kinds.get(c.kind) ?? 1),
      metal: metalView(c.material, c.metalConfirmedAt),
    }));
}

/** Said while a head with its camshaft in the head may still be bent or cut. */
function bendAdvice({ known }: TicketNow, casting: CastingId, needed: readonly NeededReading[]): string[] {
  const layout = known.castings.get(casting)?.camLayout;
  const open = known.live.some(
    (o) => o.castingId === casting && o.finishedAt === null && ['straighten', 'surface-head'].includes(o.kind.code),
  );
  if (!open || (layout !== 'sohc' && layout !== 'dohc')) return [];
  const advice = bowAdvice(bowOf('deck-flatness', needed), bowOf('cam-line', needed));
  return advice === null ? [] : [advice];
}

/** While one of a pair waits for a crack or scrap decision, the other is a question too. */
function pairQuestions({ known }: TicketNow, casting: CastingId): string[] {
  const own = known.castings.get(casting);
  if (!own || own.pair === null) return [];
  return known.facts.castings
    .filter((c) => c.id !== casting && c.pair === own.pair)
    .filter((c) => c.scrapAt !== null || isHeldForScrap(known, c.id))
    .map((c) => `${c.tag} OF THE PAIR: ${HOLD_WORDS.crack_or_scrap.toUpperCase()} - ASK THE LEAD BEFORE GOING ON`);
}

const isHeldForScrap = ({ facts }: TicketNow['known'], casting: CastingId): boolean =>
  facts.holds.some((hold) => hold.castingId === casting && hold.reason === 'crack_or_scrap');

/** What stops the casting, when nothing of it may be begun. */
function firstStop(operations: readonly OperationRow[]): Page['firstStop'] {
  if (operations.some((o) => o.mayStart || o.running.length > 0)) return null;
  return operations.flatMap((o) => o.stops)[0] ?? null;
}

function questionWords(number: number, askedAt: string | null, closedAt: string | null): string {
  if (closedAt !== null) return `A${number}, answered`;
  return askedAt === null ? `A${number}, not asked yet` : `A${number}, asked`;
}

/** Facts that rules of this casting's operations look at, and the read-back after a wash. */
function factsOf({ db, local }: QueryCtx, now: TicketNow, id: CastingId): Page['facts'] {
  const casting = now.known.castings.get(id);
  if (!casting) return [];
  const { rules, groups } = now.known.facts;
  const own = now.known.live.filter((o) => o.castingId === id);
  const context = ruleInput(now.known, casting).casting;
  const asked = (fact: string) =>
    rules.some(
      (rule) =>
        rule.first === `fact:${fact}` &&
        applies(rule, context) &&
        (rule.next.startsWith('step:') || own.some((o) => holds(rule.next, o.kind, groups))),
    );
  const washed = own.some((o) => o.kind.groups.includes('clean'));
  const settings = settingsOf(getShop(db));
  const said = new Map(store.listFactsSaid(db, id).map((row) => [row.fact, row]));
  return TICKED_FACTS.filter((fact) => asked(fact) || (fact === 'read-back-after-wash' && washed)).map((fact) => {
    const row = said.get(fact);
    return {
      fact,
      words: FACT_WORDS[fact],
      holds: row?.holds === 1,
      said: row ? `${row.initials ?? ''} ${formatDayTime(local(row.created_at), settings)}`.trim() : null,
    };
  });
}

/** The place of a finding as the engine counts it; null when no spot was touched. */
const spotLabel = (
  { kind, label, cylinder }: Readonly<{ kind: string | null; label: string | null; cylinder: number | null }>,
  head: store.BenchHead,
): string | null =>
  kind === null || label === null ? null : engineLabel({ kind, label, cylinder }, head, head.numbering);

/** Tables of the operations on this casting, each once. */
function tablesOf(rows: ReturnType<typeof store.listTableRows>, operations: readonly OperationRow[]): Page['tables'] {
  const wanted = new Set(operations.flatMap((o) => [o.before.table, o.after.table]));
  const codes = new Set(operations.map((o) => o.kindCode));
  const shown = rows.filter((row) => wanted.has(row.code) || (row.operation !== null && codes.has(row.operation)));
  return [...new Map(shown.map((row) => [row.code, { code: row.code, words: row.words }])).values()];
}

function paperWords(printed: ReturnType<typeof store.findTraveller>): string | null {
  if (!printed || printed.changes === 0) return null;
  return `Paper is revision ${printed.revision}, now ${printed.revision + 1}.`;
}

function signOffWords(now: TicketNow, id: CastingId, people: ReturnType<typeof store.listNames>): string | null {
  const signed = signaturesOf(now.known, id).map((s) => people.get(s.staffId)?.initials ?? '');
  const needed = signaturesNeeded(now.known, id);
  if (signed.length >= needed) return `signed off by ${signed.join(' and ')}`;
  if (signed.length > 0) return `signed once by ${signed.join(' and ')}, a second person signs`;
  const own = now.known.live.filter((o) => o.castingId === id);
  const open = own.filter((o) => o.finishedAt === null).length;
  return own.length > 0 && open === 0 ? 'work done, to be signed off' : null;
}
