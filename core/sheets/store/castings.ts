/** Castings with what came with them, as papers say it. */
import { KIND_WORDS, positionWords, severityWords, weightWords } from '../../castings/compute.ts';
import { metalClassOf } from '../../catalogue/compute/fit.ts';
import type { ReadDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { FormatSettings } from '../../kernel/format.ts';
import type { CastingId, TicketId } from '../../kernel/ids.ts';
import type { Marked, TagWords } from '../contract/papers.ts';

/** Castings of a ticket in their order, with the words of their types. */
export const listPrintedCastings = (db: ReadDb, ticket: TicketId) => {
  const rows = db.all(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
      .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .leftJoin('casting as p', 'p.id', 'c.previous_casting_id')
      .selectAll('c')
      .select([
        't.name as type_name',
        't.code as type_code',
        't.private as type_private',
        't.usual_weight_g',
        'e.words as engine_words',
        'e.layout as engine_layout',
        'e.bank_lean_udeg',
        'e.face_lean_udeg',
        'p.tag_no as previous_tag',
      ])
      .where('c.ticket_id', '=', ticket)
      .orderBy('c.position_in_ticket')
      .orderBy('c.id'),
  );
  return rows.map((row) => {
    const alike = rows.filter(({ kind }) => kind === row.kind);
    return { ...row, piece: alike.indexOf(row) + 1, of: alike.length };
  });
};
export type PrintedCasting = ReturnType<typeof listPrintedCastings>[number];

/** @throws AppError `not-found` */
export function getPrintedCasting(db: ReadDb, id: CastingId): PrintedCasting {
  const row = db.one(db.q.selectFrom('casting').select('ticket_id').where('id', '=', id));
  const found = row && listPrintedCastings(db, row.ticket_id).find((casting) => casting.id === id);
  if (!found) throw notFound('castings/no-such-casting', 'This casting');
  return found;
}

/** Number and metal as the tag shows them. */
export function tagOf(casting: Pick<PrintedCasting, 'tag_no' | 'material'>): TagWords {
  return { number: String(casting.tag_no), metal: metalClassOf(casting.material) };
}

/** "aluminium", "iron", "metal not known". */
export const metalWords = (material: PrintedCasting['material']): string => {
  const metal = metalClassOf(material);
  if (metal === 'other') return 'other metal';
  return metal === 'not_known' ? 'metal not known' : metal;
};

/** "Cylinder head, left". Customers read this. */
export function pieceWords(casting: PrintedCasting): string {
  const kind = casting.kind === 'head' ? 'Cylinder head' : KIND_WORDS[casting.kind];
  return sided(casting) ? `${kind}, ${positionWords(casting.position)}` : kind;
}

const sided = ({ position, of }: PrintedCasting): boolean =>
  position !== 'single' && !(position === 'not_known' && of <= 1);

/** "LEFT" on tags and travellers; empty for a single casting. */
export const sideWords = (casting: PrintedCasting): string =>
  sided(casting) ? positionWords(casting.position).toUpperCase() : '';

/** "head 2 of 2"; "head" for the only one. */
export const countWords = ({ kind, piece, of }: PrintedCasting): string =>
  of <= 1 ? KIND_WORDS[kind].toLowerCase() : `${KIND_WORDS[kind].toLowerCase()} ${piece} of ${of}`;

/** What it is: engine or type, casting number, our stamp of an earlier visit. One line each. */
export function identityLines(casting: PrintedCasting): string[] {
  return [
    casting.engine_words && !casting.type_name.includes(casting.engine_words)
      ? `${casting.type_name} (${casting.engine_words})`
      : casting.type_name,
    casting.casting_number === null ? '' : `casting\u00a0no.\u00a0${casting.casting_number}`,
    casting.shop_stamp === null
      ? ''
      : `stamp ${casting.shop_stamp}${casting.previous_tag === null ? '' : `, here before as tag ${casting.previous_tag}`}`,
    casting.customer_position_words === null ? '' : `you said: ${casting.customer_position_words}`,
  ].filter(Boolean);
}

export const liftWords = (casting: PrintedCasting, settings: FormatSettings): string =>
  weightWords(casting.weight_g ?? casting.usual_weight_g, casting.weight_class, settings);

/** Everything counted in for a casting, in counting order. */
export const listItems = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('arrival_item as i')
      .leftJoin('container as b', 'b.id', 'i.container_id')
      .selectAll('i')
      .select('b.label')
      .where('i.casting_id', '=', casting)
      .orderBy('i.position')
      .orderBy('i.id'),
  );
export type PrintedItem = ReturnType<typeof listItems>[number];

/** "8 cam caps (bolted in place, numbered)". */
export function itemWords(item: PrintedItem): string {
  const marks = [
    item.bolted_in_place === 1 ? 'bolted in place' : '',
    item.numbers_seen === 1 ? 'numbered' : '',
    item.customers_own === 1 ? "customer's own" : '',
    item.words_more ?? '',
  ].filter(Boolean);
  const counted = `${item.counted ?? ''} ${item.words}`.trim();
  return marks.length === 0 ? counted : `${counted} (${marks.join(', ')})`;
}

/** "1 of 2 dowels" for what is short; undefined for what is whole. */
export function shortWords(item: PrintedItem): string | undefined {
  if (item.missing_at_arrival === 1) return `no ${item.words}`;
  if (item.expected === null || item.counted === null || item.counted >= item.expected) return undefined;
  return `${item.counted} of ${item.expected} ${item.words}`;
}

/** Conditions seen at arrival: those on the drawing numbered as their balloons. */
export function listMarks(db: ReadDb, casting: CastingId) {
  const rows = db.all(
    db.q
      .selectFrom('condition_mark as m')
      .innerJoin('condition_kind as k', 'k.id', 'm.condition_kind_id')
      .select([
        'm.id',
        'm.seen',
        'm.view',
        'm.x_bp',
        'm.y_bp',
        'm.severity',
        'm.words',
        'm.at_stage',
        'k.customer_words',
        'k.shop_words',
      ])
      .where('m.casting_id', '=', casting)
      .where('m.removed_at', 'is', null)
      .where('m.at_stage', '=', 'arrival')
      .where('m.seen', '<>', 'not_seen')
      .orderBy('m.id'),
  );
  const photos = new Map(
    db
      .all(
        db.q
          .selectFrom('photo')
          .select(['condition_mark_id', db.q.fn.countAll<number>().as('count')])
          .where('casting_id', '=', casting)
          .where('condition_mark_id', 'is not', null)
          .groupBy('condition_mark_id'),
      )
      .map((row) => [row.condition_mark_id as number, row.count]),
  );
  let number = 0;
  return rows.map((row) => {
    const placed = row.x_bp !== null && row.y_bp !== null;
    if (placed) number += 1;
    return { ...row, no: placed ? String(number) : '', photos: photos.get(row.id) ?? 0 };
  });
}
export type PrintedMark = ReturnType<typeof listMarks>[number];

/** A condition as the customer reads it. */
export function markWords(mark: PrintedMark): Marked {
  const severity = severityWords(mark.severity);
  const more = [mark.seen === 'cannot_tell' ? 'cannot tell' : severity, mark.words].filter(Boolean).join(', ');
  const photos = mark.photos === 0 ? '' : ` (${mark.photos === 1 ? 'photo' : `${mark.photos} photos`})`;
  const words = `${mark.customer_words.charAt(0).toUpperCase()}${mark.customer_words.slice(1)}${more === '' ? '' : `, ${more}`}`;
  return { no: mark.no, words: `${words}${photos}.` };
}

/** Bags, trays and boxes of a ticket, or of one casting. */
export const listContainers = (db: ReadDb, ticket: TicketId) =>
  db.all(db.q.selectFrom('container').selectAll().where('ticket_id', '=', ticket).orderBy('casting_id').orderBy('id'));
export type PrintedContainer = ReturnType<typeof listContainers>[number];

/** "TRAY, customer's own": what the mark of a container says to anybody who picks it up. */
export const OWNER_BARS: Readonly<Record<PrintedContainer['owner_mark'], string>> = {
  ours_with_casting: '',
  customers_own: "CUSTOMER'S OWN",
  new: 'NEW',
  old_return: 'OLD - RETURN',
};
