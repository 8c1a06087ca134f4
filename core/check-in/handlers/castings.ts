/** Castings added to, changed on and moved between tickets that stand. */
import { weightClassOf } from '../../castings/compute.ts';
import { type CastingRow, castingHasWork, getCasting, nextPosition } from '../../castings/store.ts';
import { findIdByCode } from '../../catalogue/store/codes.ts';
import type { ReadDb } from '../../db/query.ts';
import { changeLine, mergeOrRefuse } from '../../host/field-merge.ts';
import type { Ctx, Handlers } from '../../host/implement.ts';
import { moveArrivals } from '../../intake/store.ts';
import { AppError, badField, ruleBroken } from '../../kernel/errors.ts';
import { insertPlacement, placeOfCasting } from '../../racks/store.ts';
import { getTicket, refuseClosed } from '../../tickets/store.ts';
import type { checkInContract } from '../contract.ts';
import { fitToMetal } from './metal.ts';
import { addCastings, holdSameStamp } from './new-castings.ts';

const COLUMNS = {
  material: 'material',
  closeTolerance: 'close_tolerance',
  position: 'position',
  customerPositionWords: 'customer_position_words',
  castingNumber: 'casting_number',
  dateCode: 'date_code',
  serial: 'serial',
  earlierStamps: 'earlier_stamps',
  shopStamp: 'shop_stamp',
  stampAllowed: 'stamp_allowed',
  pair: 'pair_no',
  bare: 'bare',
  cameAssembled: 'came_assembled',
  dressWords: 'dress_words',
  ownMarks: 'own_marks',
  weight: 'weight_g',
} as const;
const FLAGS = ['closeTolerance', 'bare', 'cameAssembled'];

const NAMES: Readonly<Record<string, string>> = {
  type: 'the casting type',
  material: 'the metal',
  closeTolerance: 'close tolerance',
  position: 'the side',
  customerPositionWords: "the customer's side",
  castingNumber: 'the casting number',
  dateCode: 'the date code',
  serial: 'the serial number',
  earlierStamps: 'the earlier stamps',
  shopStamp: 'our stamp',
  stampAllowed: 'whether to stamp',
  pair: 'the pair',
  bare: 'bare',
  cameAssembled: 'came assembled',
  dressWords: 'how it is dressed',
  ownMarks: 'their marks',
  weight: 'the weight',
};

type Castings = Pick<
  Handlers<typeof checkInContract>,
  'castings/add-casting' | 'castings/change-casting' | 'castings/move-casting'
>;

export const castingsOnTickets: Castings = {
  'castings/add-casting': {
    run({ ticketId, castings }, ctx) {
      const ticket = getTicket(ctx.db, ticketId);
      refuseClosed(ticket);
      const added = addCastings(ctx, ticketId, castings, 'castings');
      // Goods on the counter make an enquiry a ticket.
      if (ticket.arrived_at === null) {
        ctx.db.step('ticket', ticketId, ticket.version, {
          arrived_at: ctx.now,
          taken_in_by: ctx.session.staff,
          price_day: ctx.today,
        });
      }
      const lines = added.castings.map((one) => ({
        subject: ['casting', one.castingId] as const,
        ticket: ticketId,
        words: `Tagged ${one.tagNo}: ${one.title}, ${one.metal.word}`,
      }));
      const [first, ...rest] = lines;
      if (!first) throw badField('check-in/nothing-came', 'castings', 'Add at least one casting.');
      return {
        output: { castings: added.castings },
        activity: [first, ...rest],
        touched: [ticketId, ...added.alsoTouched],
      };
    },
  },
  'castings/change-casting': {
    run({ castingId, seenVersion, changes }, ctx) {
      const { db } = ctx;
      const row = getCasting(db, castingId);
      const now = fieldsNow(db, row);
      const { changed, takenOver } = mergeOrRefuse(db, {
        table: 'casting',
        id: row.id,
        seenVersion,
        now,
        changes,
        names: NAMES,
      });
      const material = changed.material as CastingRow['material'] | undefined;
      const warnings = material === undefined ? [] : fitToMetal(ctx, row, material);
      db.step('casting', row.id, row.version, columnsOf(db, row, changed));
      const doubt = typeof changed.shopStamp === 'string' ? holdSameStamp(ctx, getCasting(db, castingId)) : null;
      const version = getCasting(db, castingId).version;
      const words = [
        `Changed ${row.tag_no}: ${
          Object.keys(changed)
            .map((f) => NAMES[f] ?? f)
            .join(', ') || 'nothing'
        }`,
        ...warnings,
      ].join('. ');
      return {
        output: { version, takenOver, identityHold: doubt?.words ?? null },
        activity: [
          changeLine({
            subject: ['casting', row.id],
            words,
            ticket: row.ticket_id,
            before: now,
            fields: changed,
            version,
          }),
        ],
        touched: [row.ticket_id, ...(doubt?.tickets ?? [])],
      };
    },
  },
  'castings/move-casting': {
    run({ castingId, seenVersion, toTicketId, why }, ctx) {
      const { db } = ctx;
      const row = getCasting(db, castingId);
      const from = getTicket(db, row.ticket_id);
      const to = getTicket(db, toTicketId);
      refuseMove(db, row, from.number, to);
      const position = nextPosition(db, to.id);
      const version = db.step('casting', row.id, seenVersion, { ticket_id: to.id, position_in_ticket: position });
      moveArrivals(db, row.id, to.id);
      db.run(db.q.updateTable('hold').set({ ticket_id: to.id }).where('casting_id', '=', row.id));
      standAgain(ctx, row, to.id);
      const line = (ticket: typeof from, words: string) => ({
        subject: ['casting', row.id] as const,
        ticket: ticket.id,
        words,
        before: { ticket: from.number },
        after: { ticket: to.number, why },
      });
      return {
        output: { version, positionInTicket: position },
        activity: [
          line(from, `Moved ${row.tag_no} to ticket ${to.number}: ${why}`),
          line(to, `${row.tag_no} came from ticket ${from.number}: ${why}`),
        ],
        touched: [from.id, to.id],
      };
    },
  },
};

function refuseMove(db: ReadDb, row: CastingRow, from: number, to: ReturnType<typeof getTicket>): void {
  if (to.id === row.ticket_id)
    throw badField('castings/same-ticket', 'toTicketId', `${row.tag_no} is on ticket ${to.number} already.`);
  refuseClosed(to);
  if (row.out_at !== null) throw ruleBroken('castings/out', `${row.tag_no} is out of the house.`);
  if (castingHasWork(db, row.id)) {
    throw ruleBroken(
      'castings/work-begun',
      'Move is not possible: work has begun. Check it in on the right ticket and say why.',
    );
  }
  const lines = db.sql<{ words: string }>(
    `SELECT l.words FROM work_line l WHERE l.withdrawn_at IS NULL AND (l.casting_id = ?
      OR EXISTS (SELECT 1 FROM work_line_casting w WHERE w.work_line_id = l.id AND w.casting_id = ?)) LIMIT 3`,
    row.id,
    row.id,
  );
  if (lines.length > 0) {
    throw ruleBroken(
      'castings/has-lines',
      `${row.tag_no} has work on ticket ${from}: ${lines.map((line) => line.words).join(', ')}. Withdraw it there first, then move the casting.`,
    );
  }
}

/** Places are kept by ticket too: where it stands is written again under the new one. */
function standAgain(ctx: Ctx, row: CastingRow, ticket: CastingRow['ticket_id']): void {
  const stand = placeOfCasting(ctx.db, row.id);
  const place = stand && ctx.db.one(ctx.db.q.selectFrom('rack_place').select('id').where('code', '=', stand.code));
  if (place) insertPlacement(ctx.db, ticket, { castingId: row.id }, place.id);
}

function fieldsNow(db: ReadDb, row: CastingRow): Record<string, unknown> {
  const plain = Object.entries(COLUMNS).map(([field, column]) => [
    field,
    FLAGS.includes(field) ? row[column] === 1 : row[column],
  ]);
  const type = db.one(db.q.selectFrom('casting_type').select('code').where('id', '=', row.casting_type_id));
  return { ...Object.fromEntries(plain), type: type?.code, version: row.version };
}

function columnsOf(db: ReadDb, row: CastingRow, changed: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const columns: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(changed)) {
    if (field === 'type') columns.casting_type_id = typeFor(db, row, String(value));
    else columns[COLUMNS[field as keyof typeof COLUMNS]] = typeof value === 'boolean' ? Number(value) : value;
  }
  if (changed.weight !== undefined) columns.weight_class = weightClassOf(changed.weight as CastingRow['weight_g']);
  if (changed.material !== undefined) {
    columns.material_how = changed.material === 'not_known' ? 'not_known' : 'known';
    columns.metal_confirmed_at = null;
    columns.metal_confirmed_by = null;
  }
  return columns;
}

/** Another type of the same kind, while nothing was measured or begun on it. */
function typeFor(db: ReadDb, row: CastingRow, code: string): CastingRow['casting_type_id'] {
  const id = findIdByCode(db, 'casting_type', code);
  const type = id && db.one(db.q.selectFrom('casting_type').select(['id', 'kind']).where('id', '=', id));
  if (!type)
    throw badField(
      'castings/no-such-type',
      'changes.type',
      `The catalogue has no casting type "${code}". Choose one from the list.`,
    );
  if (type.kind !== row.kind)
    throw badField(
      'castings/other-kind',
      'changes.type',
      'That is another kind of casting. Tag it anew under its own kind.',
    );
  const measured = db.one(db.q.selectFrom('reading').select('id').where('casting_id', '=', row.id).limit(1));
  if (measured || castingHasWork(db, row.id)) {
    throw new AppError(
      'rule-broken',
      'castings/type-in-use',
      'It is measured or work has begun: the type stays, because readings name its places.',
    );
  }
  return type.id;
}
