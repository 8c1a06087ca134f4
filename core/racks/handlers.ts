/** What the requests about places do. */
import { KIND_WORDS, metalView, positionWords } from '../castings/compute.ts';
import { findTagged } from '../castings/store/find.ts';
import { getCasting } from '../castings/store.ts';
import { metalClassOf } from '../catalogue/compute/fit.ts';
import { type Ctx, implement, type QueryCtx } from '../host/implement.ts';
import { CONTAINER_WORDS } from '../intake/compute.ts';
import { getContainer } from '../intake/store.ts';
import { moment } from '../kernel/days.ts';
import { badField, notFound, ruleBroken } from '../kernel/errors.ts';
import { formatCount } from '../kernel/format.ts';
import type { TicketId } from '../kernel/ids.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { limitWords, PURPOSE_WORDS, placeStop } from './compute.ts';
import { racksContract } from './contract.ts';
import * as store from './store.ts';

type Place = ReturnType<typeof store.getPlace>;
type Settings = ReturnType<typeof settingsOf>;

export const racks = implement(racksContract, {
  'racks/put-away': {
    run({ things, place: code }, { db }) {
      const place = placeOf(db, code);
      const settings = settingsOf(getShop(db));
      const put = things.map((thing, index) =>
        putAway(db, place, idsOf(db, thing, index), settings, `things.${index}`),
      );
      const words = put.length === 1 ? `${put[0]?.label} in ${place.code}` : `${put.length} pieces in ${place.code}`;
      const lines = put.map((one) => ({
        subject: one.subject,
        ticket: one.ticket,
        words: `Put ${one.label} in ${place.code}`,
        after: { place: place.code },
      }));
      const [first, ...rest] = lines;
      if (!first) throw badField('racks/nothing', 'things', 'Say what is put away.');
      return {
        output: {
          place: place.code,
          words,
          things: put.map((one) => one.label),
          warnings: put.flatMap((one) => one.warnings),
        },
        activity: [first, ...rest],
        touched: put.map((one) => one.ticket),
      };
    },
  },
  'racks/list-places': {
    run({ purpose }, { db }) {
      const settings = settingsOf(getShop(db));
      const counts = store.countByPlace(db);
      return {
        places: store
          .listPlaces(db)
          .filter((row) => purpose === undefined || row.purpose === purpose)
          .map((row) => placeView(counts, row, settings)),
      };
    },
  },
  'racks/list-place': {
    run({ place: code }, { db }) {
      const place = placeOf(db, code);
      return {
        place: placeView(store.countByPlace(db), place, settingsOf(getShop(db))),
        things: store.thingsAt(db, place.id).map((row) => thingView(db, row)),
      };
    },
  },
  'racks/get-pick-list': {
    run({ ticketIds }, { db }) {
      const things = store.thingsOfTickets(db, ticketIds).map((row) => thingView(db, row));
      const placed = things.filter((one) => one.place !== null).sort((a, b) => compare(a.place ?? '', b.place ?? ''));
      const loose = things.filter((one) => one.place === null);
      const from = new Set(placed.map((one) => one.place)).size;
      return {
        things: [...placed, ...loose],
        words: `${formatCount(things.length, 'piece')} from ${formatCount(from, 'place')}`,
        nowhere: loose.length,
      };
    },
  },
  'racks/add-place': {
    run(input, { db }) {
      if (store.listPlaces(db).some((row) => row.code.toUpperCase() === input.code.toUpperCase())) {
        throw badField('racks/code-used', 'code', `Place ${input.code} is there already.`);
      }
      const placeId = db.add('rack_place', {
        code: input.code,
        words: input.words,
        purpose: input.purpose,
        max_weight_g: input.maxWeight,
        only_metal: input.onlyMetal,
      });
      return {
        output: { placeId },
        activity: [{ subject: ['rack_place', placeId], words: `Added place ${input.code}`, after: input }],
      };
    },
  },
  'racks/retire-place': {
    run({ placeId, seenVersion }, { db, today }) {
      const place = store.listPlaces(db).find((row) => row.id === placeId);
      if (!place) throw notFound('racks/no-such-place', 'This place');
      const things = store.thingsAt(db, placeId);
      if (things.length > 0)
        throw ruleBroken(
          'racks/not-empty',
          `${place.code} holds ${formatCount(things.length, 'piece')}. Move ${things.length === 1 ? 'it' : 'them'} somewhere else first.`,
        );
      db.step('rack_place', placeId, seenVersion, { retired_on: today });
      return { output: {}, activity: [{ subject: ['rack_place', placeId], words: `Retired place ${place.code}` }] };
    },
  },
});

function placeOf(db: QueryCtx['db'], code: string): Place {
  const read = /^BT P(.+)$/i.exec(code.trim());
  return store.getPlace(db, read?.[1] ?? code.trim());
}

type Typed =
  | Readonly<{ castingId: Parameters<typeof getCasting>[1] }>
  | Readonly<{ containerId: Parameters<typeof getContainer>[1] }>
  | Readonly<{ text: string }>;
type Ids = Exclude<Typed, { text: string }>;

function idsOf(db: QueryCtx['db'], thing: Typed, index: number): Ids {
  if (!('text' in thing)) return thing;
  const found = findTagged(db, thing.text);
  if (found?.containerId) return { containerId: found.containerId };
  if (found?.castingId) return { castingId: found.castingId };
  throw badField('racks/no-such-tag', `things.${index}.text`, `Nothing carries ${thing.text}. Check the number.`);
}

function putAway(db: Ctx['db'], place: Place, ids: Ids, settings: Settings, field: string) {
  const thing = 'castingId' in ids ? castingThing(db, ids.castingId) : containerThing(db, ids.containerId);
  if (thing.out) throw badField('racks/out', field, `${thing.label} is out of the house.`);
  const stop = placeStop(
    { code: place.code, maxWeight: place.max_weight_g, onlyMetal: place.only_metal },
    thing,
    settings,
  );
  if (stop !== null) throw badField('racks/does-not-fit', field, stop);
  store.insertPlacement(db, thing.ticket, ids, place.id);
  const doubt = place.purpose !== 'quarantine' && identityInDoubt(db, thing.ticket, thing.castingId);
  return {
    ...thing,
    warnings: doubt ? [`${thing.label}: which casting is this? Identity in doubt; put it in quarantine.`] : [],
  };
}

function castingThing(db: QueryCtx['db'], id: Parameters<typeof getCasting>[1]) {
  const row = getCasting(db, id);
  const usual = db.one(db.q.selectFrom('casting_type').select('usual_weight_g').where('id', '=', row.casting_type_id));
  return {
    label: String(row.tag_no),
    metal: metalClassOf(row.material),
    weight: row.weight_g ?? usual?.usual_weight_g ?? null,
    ticket: row.ticket_id,
    castingId: row.id as typeof row.id | null,
    out: row.out_at !== null,
    subject: ['casting', row.id] as [string, number],
  };
}

function containerThing(db: QueryCtx['db'], id: Parameters<typeof getContainer>[1]) {
  const row = getContainer(db, id);
  return {
    label: row.label,
    metal: null,
    weight: null,
    ticket: row.ticket_id,
    castingId: row.casting_id,
    out: row.out_at !== null,
    subject: ['container', row.id] as [string, number],
  };
}

const identityInDoubt = (db: QueryCtx['db'], ticket: TicketId, casting: number | null): boolean =>
  db.sql(
    "SELECT 1 FROM hold WHERE ticket_id = ? AND reason = 'identity' AND closed_at IS NULL AND (casting_id IS NULL OR casting_id = ?)",
    ticket,
    casting,
  ).length > 0;

function placeView(counts: ReturnType<typeof store.countByPlace>, row: Place, settings: Settings) {
  return {
    placeId: row.id,
    code: row.code,
    words: row.words,
    purpose: row.purpose,
    purposeWords: PURPOSE_WORDS[row.purpose],
    maxWeight: row.max_weight_g,
    onlyMetal: row.only_metal,
    limitWords: limitWords({ code: row.code, maxWeight: row.max_weight_g, onlyMetal: row.only_metal }, settings),
    castings: counts.get(row.id)?.castings ?? 0,
    containers: counts.get(row.id)?.containers ?? 0,
    version: row.version,
  };
}

function thingView(db: QueryCtx['db'], row: store.ThingRow) {
  const stand =
    row.castingId === null
      ? row.containerId === null
        ? undefined
        : store.placeOfContainer(db, row.containerId)
      : store.placeOfCasting(db, row.castingId);
  const isCasting = row.castingId !== null;
  const words = isCasting
    ? `${KIND_WORDS[row.kind as keyof typeof KIND_WORDS]}, ${positionWords(row.position as never)}`
    : `${CONTAINER_WORDS[row.kind as keyof typeof CONTAINER_WORDS]}: ${row.contents}`;
  return {
    castingId: row.castingId,
    containerId: row.containerId,
    label: row.label,
    words,
    metalWord: row.material === null ? null : metalView(row.material as never, null).word,
    ticketId: row.ticketId,
    ticketNumber: row.ticketNumber,
    customer: row.customer,
    place: stand?.code ?? null,
    since: stand ? moment(stand.since) : null,
    by: stand?.by ?? null,
  };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
