/** What the requests about pieces, bags and boxes do. */
import { conditionLock, KIND_WORDS, weightClassOf, weightWords } from '../castings/compute.ts';
import { getCastingType, listArrival } from '../catalogue/store/castings.ts';
import { getIdByCode } from '../catalogue/store/codes.ts';
import { listConditions } from '../catalogue/store/operations.ts';
import type { ReadDb } from '../db/query.ts';
import { type Ctx, implement } from '../host/implement.ts';
import { badField, notFound, ruleBroken } from '../kernel/errors.ts';
import type { CastingId } from '../kernel/ids.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { countWords, FATE_WORDS, isShort, MIX_WORDS } from './compute.ts';
import { intakeContract } from './contract.ts';
import * as store from './store.ts';

export const intake = implement(intakeContract, {
  'intake/get-arrival-list': {
    run({ type: code }, { db }) {
      const type = getCastingType(db, getIdByCode(db, 'casting_type', code));
      const settings = settingsOf(getShop(db));
      const conditions = listConditions(db).filter(
        (c) => /\bany\b/.test(c.foundOn) || c.foundOn.split(' ').includes(type.kind),
      );
      return {
        typeCode: type.code,
        typeName: type.name,
        kind: type.kind,
        kindWords: KIND_WORDS[type.kind],
        material: type.material,
        usualWeight: type.usualWeight,
        weightWords: weightWords(type.usualWeight, weightClassOf(type.usualWeight), settings),
        items: listArrival(db, type.id).map(({ id: _, ...item }) => ({ ...item, mixWords: MIX_WORDS[item.mixRule] })),
        conditions: conditions.map((c) => ({
          condition: c.code,
          shopWords: c.shopWords,
          customerWords: c.customerWords,
          askCustomer: c.askCustomer,
        })),
      };
    },
  },
  'intake/add-item': {
    run({ castingId, item, containerId }, { db }) {
      const casting = ownerOf(db, castingId);
      if (containerId !== null) store.refuseOtherTicket(store.getContainer(db, containerId), casting.ticket_id);
      const itemId = store.insertItem(db, casting, item, containerId);
      return {
        output: { itemId },
        activity: [
          {
            subject: ['arrival_item', itemId],
            ticket: casting.ticket_id,
            words: `Came with ${casting.tag_no}: ${item.words}, ${countWords(item)}`,
            after: item,
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'intake/add-container': {
    run({ ticketId, castingId, container, items }, { db }) {
      const casting = castingId === null ? null : ownerOf(db, castingId);
      if (!db.one(db.q.selectFrom('ticket').select('id').where('id', '=', ticketId)))
        throw notFound('tickets/no-such-ticket', 'This ticket');
      const made = store.insertContainer(db, ticketId, casting, container);
      for (const itemId of items) {
        const item = store.getItem(db, itemId);
        if (item.ticket_id !== ticketId)
          throw ruleBroken('intake/other-ticket', `${item.words} came with another ticket. Take a bag of that ticket.`);
        db.set('arrival_item', itemId, { container_id: made.id });
      }
      return {
        output: { containerId: made.id, label: made.label },
        activity: [
          {
            subject: ['container', made.id],
            ticket: ticketId,
            words: `Made ${made.label}: ${container.contents}`,
            after: container,
          },
        ],
        touched: [ticketId],
      };
    },
  },
  'intake/seal-container': {
    run({ containerId, count }, { db, now }) {
      const container = store.getContainer(db, containerId);
      if (container.out_at !== null)
        throw ruleBroken('intake/container-out', `${container.label} is out of the house.`);
      db.set('container', containerId, { sealed_at: now, ...(count !== null && { count }) });
      return {
        output: {},
        activity: [
          {
            subject: ['container', containerId],
            ticket: container.ticket_id,
            words: `Sealed ${container.label}`,
            after: { count },
          },
        ],
        touched: [container.ticket_id],
      };
    },
  },
  'intake/count-pieces': {
    run(input, { db }) {
      const item = store.getItem(db, input.itemId);
      const atArrival = input.stage === 'arrival';
      if (atArrival) {
        const lock = lockOf(db, item.casting_id);
        // Inside a casting that came assembled nothing could be counted at the counter; teardown counts it first.
        if (lock !== null && item.counted !== null) throw ruleBroken('intake/conditions-locked', lock);
      }
      const firstInside = input.stage === 'teardown' && item.counted === null;
      const counted = atArrival || firstInside ? input.count : item.counted;
      db.set('arrival_item', item.id, {
        counted,
        ...flags(input),
        ...(counted === item.counted ? {} : { missing_at_arrival: 0 as const }),
      });
      if (input.stage !== 'arrival') store.insertCount(db, item, input.stage, input.count, input.explained);
      const came = counted ?? input.count;
      const now = { expected: atArrival || firstInside ? item.expected : came, counted: input.count, missing: false };
      return {
        output: { countWords: countWords(now), short: isShort(now) },
        activity: [
          {
            subject: ['arrival_item', item.id],
            ticket: item.ticket_id,
            words: `Counted ${item.words}: ${countWords(now)}`,
            before: { counted: item.counted },
            after: { stage: input.stage, count: input.count, explained: input.explained },
          },
        ],
        touched: [item.ticket_id],
      };
    },
  },
  'intake/set-fate': {
    run({ fates }, { db }) {
      const lines = fates.map((fate, index) => setFate(db, fate, index));
      const [first, ...rest] = lines;
      if (!first) throw badField('intake/no-fate', 'fates', 'Say where the pieces ended.');
      return { output: {}, activity: [first, ...rest], touched: lines.map((line) => line.ticket) };
    },
  },
});

type Fate = Readonly<{
  itemId: Parameters<typeof store.getItem>[1];
  fate: keyof typeof FATE_WORDS;
  count: number | null;
  containerId: Parameters<typeof store.getContainer>[1] | null;
  words: string | null;
}>;

function setFate(db: Ctx['db'], fate: Fate, index: number) {
  const item = store.getItem(db, fate.itemId);
  if (fate.fate === 'in_bag' && fate.containerId === null && item.container_id === null) {
    throw badField('intake/no-bag', `fates.${index}.containerId`, `Which bag holds ${item.words}? Choose it.`);
  }
  const container = fate.containerId ?? (fate.fate === 'in_bag' ? item.container_id : null);
  if (container !== null) store.refuseOtherTicket(store.getContainer(db, container), item.ticket_id);
  store.insertFate(db, item, fate.fate, { count: fate.count, container, words: fate.words });
  return {
    subject: ['arrival_item', item.id] as const,
    ticket: item.ticket_id,
    words: `${item.words}: ${FATE_WORDS[fate.fate]}`,
    after: { fate: fate.fate, count: fate.count, words: fate.words },
  };
}

const flags = (
  input: Readonly<{
    numbersSeen?: boolean | undefined;
    arrowsSeen?: boolean | undefined;
    boltedInPlace?: boolean | undefined;
  }>,
) => ({
  ...(input.numbersSeen !== undefined && { numbers_seen: (input.numbersSeen ? 1 : 0) as 0 | 1 }),
  ...(input.arrowsSeen !== undefined && { arrows_seen: (input.arrowsSeen ? 1 : 0) as 0 | 1 }),
  ...(input.boltedInPlace !== undefined && { bolted_in_place: (input.boltedInPlace ? 1 : 0) as 0 | 1 }),
});

function ownerOf(db: ReadDb, id: CastingId): store.Owner {
  const row = db.one(
    db.q.selectFrom('casting').select(['id', 'ticket_id', 'tag_no', 'casting_type_id', 'out_at']).where('id', '=', id),
  );
  if (!row) throw notFound('castings/no-such-casting', 'This casting');
  if (row.out_at !== null) throw ruleBroken('castings/out', `${row.tag_no} is out of the house.`);
  return row;
}

/** Why arrival counts of the casting are locked; null while they can change. */
function lockOf(db: ReadDb, castingId: CastingId): string | null {
  const row = db.one(
    db.q
      .selectFrom('casting as c')
      .innerJoin('ticket as t', 't.id', 'c.ticket_id')
      .select('t.signed_how')
      .where('c.id', '=', castingId),
  );
  const begun = db.sql(
    `SELECT 1 FROM operation o WHERE o.casting_id = ? AND (o.finished_at IS NOT NULL
     OR EXISTS (SELECT 1 FROM operation_run r WHERE r.operation_id = o.id)) LIMIT 1`,
    castingId,
  );
  return conditionLock({ signedHow: row?.signed_how ?? null, workBegun: begun.length > 0 });
}
