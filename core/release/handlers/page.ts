/** What the hand-over page and the ready label show. */
import { personViews } from '../../customers/store/read.ts';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import { addDays } from '../../kernel/days.ts';
import { formatCount, formatWeight } from '../../kernel/format.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { cents, grams } from '../../kernel/units.ts';
import type { Identity } from '../../racks/store/goods.ts';
import { getShop } from '../../shop/store.ts';
import { containerStop } from '../compute.ts';
import type { releaseContract } from '../contract.ts';
import { type Door, inDoubt, moneyOf, readDoor, stopsOf } from './door.ts';

type Container = Identity['containers'][number];
const PROOFS = { claim_ticket: 'claim ticket', identity: 'identity paper', known: 'known to us' } as const;

export const pages: Pick<Handlers<typeof releaseContract>, 'racks/get-release' | 'racks/get-ready-label'> = {
  'racks/get-release': {
    run({ ticketId }, ctx) {
      const door = readDoor(ctx, ticketId);
      const { facts, goods, customer, now } = door;
      const people = personViews({ db: ctx.db, settings: door.settings }, customer.id);
      const bags = [...goods.castings.flatMap((one) => one.containers), ...goods.containers];
      const here = goods.castings.filter((one) => one.outAt === null).map((one) => one.castingId);
      const rows = [
        ...goods.castings.flatMap((one) => [castingRow(ctx, door, one), ...one.containers.map(containerRow)]),
        ...goods.containers.map(containerRow),
      ];
      return {
        ticketId,
        number: facts.ticket.number,
        ticketWord: now.word,
        customer: customer.name,
        customerId: customer.id,
        phone: people.flatMap((one) => one.contacts).find((one) => one.kind === 'phone')?.value ?? null,
        persons: people.map(({ personId, name, mayCollect }) => ({ personId, name, mayCollect })),
        rows,
        piecesIn: goods.castings.length + bags.length,
        money: { ...moneyOf(ctx, door, here, true), open: facts.money.balance, unbilled: facts.money.unbilled },
        oldParts: oldPartsOf(ctx, ticketId),
        identityInDoubt: goods.castings.some((one) => inDoubt(facts, one.castingId)),
        stops: [...now.missing],
        releases: releasesOf(ctx, ticketId),
      };
    },
  },
  'racks/get-ready-label': {
    run({ ticketId }, ctx) {
      const door = readDoor(ctx, ticketId);
      const { facts, goods, customer } = door;
      const castings = goods.castings.filter((one) => one.outAt === null);
      const bags = [...castings.flatMap((one) => one.containers), ...goods.containers].filter(
        (one) => one.outAt === null,
      );
      const weights = castings.map((one) => one.weight);
      const weight = weights.some((one) => one === null)
        ? null
        : grams(weights.reduce<number>((sum, one) => sum + (one ?? 0), 0));
      const heaviest =
        castings.find((one) => one.weightClass === 'hoist') ??
        castings.find((one) => one.weightClass === 'two') ??
        castings[0];
      const pieces = castings.length + bags.length;
      const weightWords =
        weight === null || castings.length === 1
          ? (heaviest?.weightWords ?? '')
          : `${formatWeight(weight, door.settings)} in all, ${heaviest?.weightWords ?? ''}`;
      const told =
        ctx.db.one(ctx.db.q.selectFrom('ticket_now').select('told_at').where('ticket_id', '=', ticketId))?.told_at ??
        null;
      const labels = [
        ...castings.map((one) => ({
          kind: 'casting' as const,
          label: String(one.tagNo),
          metal: one.metal,
          words: one.title,
          place: one.place,
          weightWords: one.weightWords,
        })),
        ...bags.map((one) => ({
          kind: 'container' as const,
          label: one.label,
          metal: null,
          words: `${one.kindWords}: ${one.contents}`,
          place: one.place,
          weightWords: '',
        })),
      ];
      return {
        number: facts.ticket.number,
        customer: customer.short_name,
        words: [formatCount(pieces, 'piece'), weightWords].filter((one) => one !== '').join(', '),
        pieces,
        weight,
        weightWords,
        storageFrom: told === null ? null : addDays(ctx.local(told).day, getShop(ctx.db).storage_after_days),
        toPay: cents(facts.money.balance + facts.money.unbilled - facts.money.held),
        mayCollect: personViews({ db: ctx.db, settings: door.settings }, customer.id)
          .filter((one) => one.mayCollect)
          .map((one) => one.name),
        labels: labels.map((one, index) => ({ ...one, piece: `${index + 1} of ${labels.length}` })),
      };
    },
  },
};

function castingRow(ctx: QueryCtx, door: Door, casting: Identity) {
  const state = door.now.castings.find((one) => one.id === casting.castingId);
  const bags = new Set<number>(casting.containers.map((one) => one.containerId));
  const leadSays = ctx.session.may.has('leads:decide');
  return {
    castingId: casting.castingId,
    containerId: null,
    label: String(casting.tagNo),
    metal: casting.metal,
    title: casting.title,
    contents: casting.typeName,
    place: casting.place,
    piecesIn: 1,
    sealed: false,
    castingWord: state?.word ?? null,
    stops: casting.outAt === null ? stopsOf(door, casting, { said: new Map(), bags, unworkedWhy: null, leadSays }) : [],
    out: casting.outAt !== null,
    outAt: casting.outAt,
    items: casting.items,
  };
}

function containerRow(container: Container) {
  const stop = containerStop({
    label: container.label,
    out: false,
    count: container.count,
    counted: null,
    explained: null,
  });
  return {
    castingId: container.castingId,
    containerId: container.containerId,
    label: container.label,
    metal: null,
    title: `${container.kindWords}, ${container.ownerWords}`,
    contents: container.contents,
    place: container.place,
    piecesIn: container.count ?? 1,
    sealed: container.sealedAt !== null,
    castingWord: null,
    stops: container.outAt === null && stop !== null ? [stop] : [],
    out: container.outAt !== null,
    outAt: container.outAt,
    items: [],
  };
}

const oldPartsOf = ({ db }: QueryCtx, ticket: TicketId) =>
  db.one(db.q.selectFrom('ticket').select('old_parts').where('id', '=', ticket))?.old_parts ?? 'not_asked';

function releasesOf({ db }: QueryCtx, ticket: TicketId) {
  const items = db.all(
    db.q
      .selectFrom('release_item as i')
      .leftJoin('casting as c', 'c.id', 'i.casting_id')
      .leftJoin('container as b', 'b.id', 'i.container_id')
      .select(['i.release_id as release', 'c.tag_no as tag', 'b.label'])
      .where('i.ticket_id', '=', ticket)
      .orderBy('i.id'),
  );
  return db
    .all(
      db.q
        .selectFrom('release as r')
        .leftJoin('staff as s', 's.id', 'r.created_by')
        .selectAll('r')
        .select('s.name as by')
        .where('r.ticket_id', '=', ticket)
        .orderBy('r.id', 'desc'),
    )
    .map((row) => {
      const labels = items.filter((one) => one.release === row.id).map((one) => one.label ?? String(one.tag));
      return {
        releaseId: row.id,
        at: row.created_at,
        takenBy: row.taken_by,
        proofWords: row.proof_words === null ? PROOFS[row.proof] : `${PROOFS[row.proof]}: ${row.proof_words}`,
        by: row.by ?? '',
        pieces: labels.length,
        unpaidWhy: row.unpaid_why,
        labels,
      };
    });
}
