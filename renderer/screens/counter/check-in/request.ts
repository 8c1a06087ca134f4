/** What is typed becomes the one command that checks everything in; refusals come back to the field they are about. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { isDay } from '#core/kernel/days.ts';
import { type FormatSettings, readMoney } from '#core/kernel/format.ts';
import { readCount } from '../../../kit/count.tsx';
import { quantityFault, readQuantity } from '../parts/quantity.ts';
import type { BoxTyped, CastingTyped, CheckInTyped, ItemTyped, WishTyped } from './typed.ts';

type Input = InputOf<App['tickets/check-in-ticket']>;
type CastingInput = NonNullable<Input['castings']>[number];

/** Sentence by place on the page: `customer`, `ceiling`, `deposit`, `promise`, `c1.material`. Empty when it can be sent. */
export type Troubles = Readonly<Record<string, string>>;

/** What stands in the way of sending, in reading order, each beside its own field. */
export function troublesOf(typed: CheckInTyped, settings: FormatSettings): Troubles {
  const amount = (text: string) => text.trim() === '' || readMoney(text, settings) !== null;
  const { customer, promise } = typed;
  const found: readonly (readonly [place: string, wrong: boolean, sentence: string])[] = [
    [
      'customer',
      customer.id === null && `${customer.name}${customer.phone}`.trim() === '',
      'Write a name or a telephone.',
    ],
    ['ceiling', !amount(typed.ceiling), 'Write an amount, for example 900.00.'],
    ['deposit', !amount(typed.deposit), 'Write an amount, for example 100.00.'],
    ['castings', typed.castings.length === 0, 'Add what came over the counter.'],
    ...typed.castings.flatMap(castingTroubles),
    ...typed.wishes.map((wish) => {
      const fault = quantityFault(wish.quantity, wish.hourly);
      return [`${wish.key}.quantity`, fault !== undefined, `${wish.words}: ${fault}`] as const;
    }),
    ['promise', promise.day !== '' && !isDay(promise.day), 'Write the day, for example 2027-05-14.'],
    ['promise', promise.time !== '' && readMinute(promise.time) === null, 'Write the time, for example 17:00.'],
  ];
  return Object.fromEntries(found.filter(([, wrong]) => wrong).map(([place, , sentence]) => [place, sentence]));
}

const castingTroubles = (casting: CastingTyped): [place: string, wrong: boolean, sentence: string][] => [
  [
    `${casting.key}.type`,
    casting.type === null && casting.described === null,
    'Choose the casting type, or describe it.',
  ],
  [`${casting.key}.material`, casting.material === null, 'Metal is not chosen. Magnet sticks: iron.'],
  [
    `${casting.key}.tagNo`,
    casting.tagNo.trim() !== '' && !/^\d{1,9}$/.test(casting.tagNo.trim()),
    'A tag number is digits only.',
  ],
];

/** `17:00`, `7:30` or `1730` as minutes after midnight, or null. */
export function readMinute(text: string): number | null {
  const found = /^(\d{1,2})[:.]?(\d{2})$/.exec(text.trim());
  if (!found) return null;
  const [hour, minute] = [Number(found[1]), Number(found[2])];
  return hour < 24 && minute < 60 ? hour * 60 + minute : null;
}

const orNull = (text: string): string | null => text.trim() || null;

/** The command. Call only when `troublesOf` is empty. `rush` is the shop's share for rush work, in basis points. */
export function checkInInput(typed: CheckInTyped, settings: FormatSettings, rush: number): Input {
  const ceiling = readMoney(typed.ceiling, settings);
  return {
    customer: customerInput(typed),
    ticket: {
      orderNumber: orNull(typed.orderNumber),
      broughtBy: orNull(typed.broughtBy),
      historyWords: orNull(typed.history),
      useWords: orNull(typed.use),
      fuelWords: orNull(typed.fuel),
      valveLift: orNull(typed.lift),
      gasket: typed.gasket,
      oldParts: typed.oldParts,
    },
    castings: typed.castings.map(castingInput),
    containers: typed.boxes.map((box) => ({ ...boxInput(box), ownerMark: box.owner })),
    wishes: typed.wishes.filter((wish) => wish.kind !== 'part').map((wish) => wishInput(wish, typed.castings)),
    ceiling:
      ceiling === null
        ? null
        : {
            amount: ceiling,
            taxIn: typed.ceilingTaxIn,
            personId: typed.customer.personId,
            saidBy: typed.customer.said.trim() || typed.customer.name.trim() || typed.customer.phone.trim(),
            means: 'counter',
            words: `Up to ${typed.ceiling.trim()} without a call.`,
          },
    rush: typed.rush ? rush : null,
    depositAsked: readMoney(typed.deposit, settings),
    promise: isDay(typed.promise.day)
      ? { day: typed.promise.day, minute: readMinute(typed.promise.time), dependsOn: orNull(typed.promise.dependsOn) }
      : null,
    signed:
      typed.signed === null ? null : { how: typed.signed, by: orNull(typed.customer.said || typed.customer.name) },
    signatureFile: typed.signed === 'drawn' && typed.signatureFile ? { sha256: typed.signatureFile } : null,
    draftId: typed.draft,
    enquiryId: typed.enquiry ?? null,
    like: typed.like ?? null,
  };
}

/** A known customer, or one made from what was typed; only a telephone is enough. */
export function customerInput({ customer }: Pick<CheckInTyped, 'customer'>): Input['customer'] {
  if (customer.id !== null) return { customerId: customer.id, personId: customer.personId };
  const name = customer.name.trim() || customer.phone.trim();
  const person = customer.said.trim() || name;
  const contacts = customer.phone.trim() === '' ? [] : [{ kind: 'phone' as const, value: customer.phone.trim() }];
  return {
    add: {
      kind: customer.kind,
      name,
      persons: [{ name: person.slice(0, 80), mayApprove: customer.mayApprove, mayCollect: true, contacts }],
    },
  };
}

/** A casting as the request takes it. */
export function castingInput(casting: CastingTyped): CastingInput {
  return {
    ...(casting.type !== null && { type: casting.type }),
    ...(casting.type === null && casting.described && { described: describedInput(casting) }),
    tagNo: casting.tagNo.trim() === '' ? null : Number.parseInt(casting.tagNo, 10),
    material: casting.material ?? 'not_known',
    ...(casting.magnet && { materialHow: 'magnet' as const }),
    closeTolerance: casting.closeTolerance,
    position: casting.position ?? 'not_known',
    castingNumber: orNull(casting.castingNumber),
    serial: orNull(casting.serial),
    shopStamp: orNull(casting.shopStamp),
    earlierStamps: orNull(casting.earlierStamps),
    stampAllowed: casting.tagOnly ? 'tag_only' : 'yes',
    pair: casting.pair,
    bare: casting.bare,
    cameAssembled: casting.cameAssembled,
    dressWords: orNull(casting.dress),
    ownMarks: orNull(casting.ownMarks),
    items: casting.bare ? [] : casting.items.map(itemInput),
    containers: casting.boxes.map((box) => ({ ...boxInput(box), ownerMark: box.owner })),
    marks: casting.marks.map(({ condition, view, x, y, words, photoWanted }) => ({
      condition,
      view,
      x,
      y,
      words: orNull(words),
      photoWanted,
    })),
  };
}

function describedInput(casting: CastingTyped): NonNullable<CastingInput['described']> | undefined {
  const typed = casting.described;
  if (!typed) return undefined;
  const count = (text: string) => readCount(text, 200) ?? 0;
  return {
    kind: typed.kind,
    name: casting.typeText.trim() || typed.kind,
    camLayout: typed.camLayout,
    fuel: typed.fuel,
    counts: {
      cylinders: count(typed.cylinders),
      intakeValves: count(typed.intakeValves),
      exhaustValves: count(typed.exhaustValves),
      mains: count(typed.mains),
      decks: typed.kind === 'head' || typed.kind === 'block' ? 1 : 0,
    },
  };
}

const itemInput = (item: ItemTyped): NonNullable<CastingInput['items']>[number] => ({
  words: item.words,
  expected: item.expected,
  counted: item.counted,
  mixRule: item.mixRule,
  removeBeforeWash: item.removeBeforeWash,
  inside: item.inside,
  customersOwn: item.own,
  numbersSeen: item.numbersSeen,
  arrowsSeen: item.arrowsSeen,
  boltedInPlace: item.boltedInPlace,
  more: orNull(item.more),
  container: item.box,
});

const boxInput = (box: BoxTyped) => ({
  kind: box.kind,
  contents: box.contents.trim() || box.kind,
  count: readCount(box.count, 10_000),
});

function wishInput(wish: WishTyped, castings: readonly CastingTyped[]): NonNullable<Input['wishes']>[number] {
  const quantity = readQuantity(wish.quantity, wish.hourly);
  return {
    castings: wish.castings.map((key) => castings.findIndex((casting) => casting.key === key)).filter((at) => at >= 0),
    ...(wish.kind === 'operation' && wish.code !== null && { operation: wish.code }),
    ...(wish.kind === 'package' && wish.code !== null && { package: wish.code }),
    said: orNull(wish.said),
    ...(quantity !== null && { quantity }),
    note: orNull(wish.note),
  };
}

/**
 * Our refused paths lead back to places on the page: `castings.0.material` to `c1.material`, `wishes.0.operation` to `w1`,
 * `customer.add.name` to `customer`.
 */
export function placesOf(
  fields: Readonly<Record<string, string>>,
  { castings, wishes }: Pick<CheckInTyped, 'castings' | 'wishes'>,
): Troubles {
  const sent = wishes.filter((wish) => wish.kind !== 'part');
  return Object.fromEntries(
    Object.entries(fields).map(([path, sentence]) => {
      const [root = '', index = '', ...rest] = path.split('.');
      if (root === 'wishes') return [sent[Number(index)]?.key ?? root, sentence];
      if (root !== 'castings') return [root === 'ticket' ? index : root, sentence];
      const key = castings[Number(index)]?.key ?? 'castings';
      return [[key, ...rest].join('.'), sentence];
    }),
  );
}

type PartInput = InputOf<App['parts/add-part']>['part'];

/** Parts asked for, each with the place of its casting in the list: they are added when the castings have their tags. */
export const partsAsked = (typed: CheckInTyped): readonly Readonly<{ at: number; part: PartInput }>[] =>
  typed.castings.flatMap((casting, at) =>
    typed.wishes
      .filter((wish) => wish.kind === 'part' && (wish.castings.length === 0 || wish.castings.includes(casting.key)))
      .map((wish) => ({
        at,
        part: { stockItemId: wish.id, quantity: readQuantity(wish.quantity, false) ?? 1 },
      })),
  );
