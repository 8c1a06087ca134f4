/** What is being put away, as read or typed. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';

export type PutAwayTyped = Readonly<{
  /** Not yet added. */
  text: string;
  /** Tags and labels in the order they were read. */
  things: readonly string[];
  place: string;
}>;

export const EMPTY_PUT_AWAY: PutAwayTyped = { text: '', things: [], place: '' };

export const isPutAway = (value: unknown): value is PutAwayTyped =>
  typeof value === 'object' &&
  value !== null &&
  'text' in value &&
  'place' in value &&
  'things' in value &&
  Array.isArray(value.things);

/** The code of a place as a reader sends it: `BT PC-4-2`. */
const PLACE_CODE = /^BT P(.+)$/i;

/** What Enter does with the text: a place's code fills the place, anything else is one more thing, once. */
export function addTyped(typed: PutAwayTyped): PutAwayTyped {
  const text = typed.text.trim();
  if (text === '') return typed;
  const place = PLACE_CODE.exec(text)?.[1];
  if (place !== undefined) return { ...typed, text: '', place };
  return { ...typed, text: '', things: typed.things.includes(text) ? typed.things : [...typed.things, text] };
}

/** Why nothing can be put away yet, or undefined. */
export function putAwayMissing(typed: PutAwayTyped): string | undefined {
  if (typed.things.length === 0 && typed.text.trim() === '') return 'Read or type a tag.';
  return typed.place.trim() === '' ? 'Read or type the place.' : undefined;
}

/** The request: what still stands in the field counts too. */
export const putAwayInput = (typed: PutAwayTyped): InputOf<App['racks/put-away']> => ({
  things: addTyped(typed).things.map((text) => ({ text })),
  place: typed.place,
});

/** The sentence that belongs to a thing, by its place in the request. */
export const thingError = (fields: Readonly<Record<string, string>>, index: number): string | undefined =>
  fields[`things.${index}.text`] ?? fields[`things.${index}`];
