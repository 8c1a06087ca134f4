/** What tags and ready labels say. */
import { ruleBroken } from '../../kernel/errors.ts';
import type { CastingId, ContainerId, TicketId } from '../../kernel/ids.ts';
import { placeOfCasting, placeOfContainer } from '../../racks/store.ts';
import { listPromises } from '../../tickets/store.ts';
import { list, sentence, tagDay } from '../compute/words.ts';
import type { ReadyLabelPaper, TagPaper, TagStock, TagsPaper } from '../contract/papers.ts';
import { METAL_BARS } from '../contract/papers.ts';
import {
  countWords,
  itemWords,
  liftWords,
  listContainers,
  listItems,
  listPrintedCastings,
  OWNER_BARS,
  type PrintedCasting,
  type PrintedContainer,
  shortWords,
  sideWords,
  tagOf,
} from './castings.ts';
import { readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';

type TagWish = Readonly<{ stock: TagStock; layout: 'single' | 'sheet'; spares: number }>;

const spare = (kind: TagPaper['kind'], stock: TagStock): TagPaper => ({
  stock,
  kind,
  number: null,
  title: '',
  lines: [{ words: 'write on it' }],
  corner: '',
  bar: '',
});

const spares = (kind: TagPaper['kind'], { stock, spares: count }: TagWish): TagPaper[] =>
  Array.from({ length: count }, () => spare(kind, stock));

/** @throws AppError `rule-broken` `sheets/nothing-to-print` when there would be no tag on it */
function sheetOf({ layout }: TagWish, tags: readonly TagPaper[]): Omit<TagsPaper, 'head'> {
  if (tags.length === 0) {
    throw ruleBroken(
      'sheets/nothing-to-print',
      'Nothing of this ticket takes a tag yet. Add a casting or a bag, or print spares.',
    );
  }
  return { layout, tags };
}

/** Tags of castings in the order of the ticket. @param only castings wanted; empty for all */
export function readCastingTags(
  scene: Scene,
  id: TicketId,
  wish: TagWish & Readonly<{ castings: readonly CastingId[] }>,
): Omit<TagsPaper, 'head'> {
  const people = readTicketPeople(scene.db, id);
  const whose = `${people.ticket.number} ${people.customer.short_name}`;
  const castings = listPrintedCastings(scene.db, id).filter(
    (one) => wish.castings.length === 0 || wish.castings.includes(one.id),
  );
  const tags = castings.map((casting) => castingTag(scene, casting, whose, wish.stock));
  return sheetOf(wish, [...tags, ...spares('casting', wish)]);
}

function castingTag(scene: Scene, casting: PrintedCasting, whose: string, stock: TagStock): TagPaper {
  const promise = listPromises(scene.db, casting.ticket_id).at(-1);
  const { number, metal } = tagOf(casting);
  const lift = { one: '', one_careful: 'LIFT WITH CARE', two: 'TWO PEOPLE', hoist: 'USE A HOIST' }[
    casting.weight_class
  ];
  return {
    stock,
    kind: 'casting',
    number,
    title: list([sideWords(casting), countWords(casting).toUpperCase().replace(' OF ', ' of ')]),
    lines: [
      { words: whose },
      ...(promise ? [{ words: 'Promise', strong: tagDay(promise.on_day) }] : []),
      ...(casting.shop_stamp === null ? [] : [{ words: `stamp ${casting.shop_stamp}` }]),
    ],
    corner: lift,
    bar: METAL_BARS[metal],
    back: backOf(scene, casting),
  };
}

/** The back: what must stay with it, counts, what was short. */
function backOf({ db }: Scene, casting: PrintedCasting): NonNullable<TagPaper['back']> {
  const items = listItems(db, casting.id);
  const caps = items.find(({ words, counted }) => /cap/.test(words) && (counted ?? 0) > 0);
  const lines = items
    .filter(({ counted, missing_at_arrival }) => (counted ?? 0) > 0 || missing_at_arrival === 1)
    .sort((a, b) => Number(b === caps) - Number(a === caps))
    .map((item) => ({
      strong: shortWords(item) ?? itemWords(item),
      words: shortWords(item) === undefined ? (item.label === null ? '' : `in ${item.label}`) : 'at arrival',
    }));
  const assembled = casting.came_assembled === 1 ? [{ words: 'Came assembled: count the inside at teardown.' }] : [];
  const stamp = casting.stamp_allowed === 'tag_only' ? [{ words: 'Do not stamp it.' }] : [];
  return {
    lines: [...stamp, ...assembled, ...lines],
    bar: caps ? `CAPS STAY WITH THIS ${casting.kind.toUpperCase()}` : '',
  };
}

/** Tags of bags, trays and boxes in the order of their labels. */
export function readBagTags(
  scene: Scene,
  id: TicketId,
  wish: TagWish & Readonly<{ containers: readonly ContainerId[] }>,
): Omit<TagsPaper, 'head'> {
  const { db } = scene;
  const { ticket, customer } = readTicketPeople(db, id);
  const whose = `${ticket.number} ${customer.short_name}`;
  const castings = listPrintedCastings(db, id);
  const all = listContainers(db, id);
  const wanted = all.filter((one) => wish.containers.length === 0 || wish.containers.includes(one.id));
  const tags = wanted.map((container): TagPaper => {
    const casting = castings.find((one) => one.id === container.casting_id);
    const alike = all.filter(({ casting_id }) => casting_id === container.casting_id);
    return {
      stock: wish.stock,
      kind: 'container',
      number: container.label,
      title: titleOf(container),
      lines: [
        ...(container.spot_words === null ? [] : [{ words: container.spot_words }]),
        ...(casting
          ? [
              {
                words: `of tag ${casting.tag_no}${sideWords(casting) === '' ? '' : `, ${sideWords(casting).toLowerCase()}`}`,
              },
            ]
          : []),
        { words: whose },
      ],
      corner: `${container.kind} ${alike.indexOf(container) + 1} of ${alike.length}`,
      bar: OWNER_BARS[container.owner_mark] || (keepsOrder(scene, container) ? 'KEEP IN ORDER' : ''),
    };
  });
  return sheetOf(wish, [...tags, ...spares('container', wish)]);
}

const titleOf = ({ contents, count }: PrintedContainer): string =>
  count === null ? sentence(contents) : `${sentence(contents)}: ${count}`;

const keepsOrder = ({ db }: Scene, container: PrintedContainer): boolean =>
  db
    .all(db.q.selectFrom('arrival_item').select('mix_rule').where('container_id', '=', container.id))
    .some(({ mix_rule }) => mix_rule !== 'none');

/** Labels of everything of the ticket that is still here, castings first. */
export function readReadyLabels(
  scene: Scene,
  id: TicketId,
  wish: Readonly<{ stock: ReadyLabelPaper['stock']; layout: 'single' | 'sheet' }>,
): Omit<ReadyLabelPaper, 'head'> {
  const { db } = scene;
  const { ticket, customer } = readTicketPeople(db, id);
  const common = { ticket: String(ticket.number), customer: customer.short_name };
  const castings = listPrintedCastings(db, id)
    .filter(({ out_at }) => out_at === null)
    .map((casting) => ({
      kind: 'casting' as const,
      number: String(casting.tag_no),
      metal: tagOf(casting).metal,
      ...common,
      place: placeOfCasting(db, casting.id)?.code ?? 'not put away',
      weight: liftWords(casting, scene.settings),
    }));
  const containers = listContainers(db, id)
    .filter(({ out_at }) => out_at === null)
    .map((container) => ({
      kind: 'container' as const,
      number: container.label,
      ...common,
      place: placeOfContainer(db, container.id)?.code ?? 'not put away',
      weight: '',
    }));
  const all = [...castings, ...containers];
  if (all.length === 0) {
    throw ruleBroken(
      'sheets/nothing-to-print',
      'Nothing of this ticket stands here any more. There is nothing to label.',
    );
  }
  return { ...wish, labels: all.map((label, index) => ({ ...label, piece: `${index + 1} of ${all.length}` })) };
}
