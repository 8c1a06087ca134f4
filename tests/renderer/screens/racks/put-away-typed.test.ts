import { describe, expect, it } from 'vitest';
import { racksContract } from '#core/racks/contract.ts';
import {
  addTyped,
  EMPTY_PUT_AWAY,
  putAwayInput,
  putAwayMissing,
  thingError,
} from '#renderer/screens/racks/put-away-typed.ts';

const typed = (text: string, things: readonly string[] = [], place = '') => ({
  ...EMPTY_PUT_AWAY,
  text,
  things,
  place,
});

describe('addTyped', () => {
  it('adds a tag once, and empties the field', () => {
    const once = addTyped(typed(' 41234 '));

    expect(once).toEqual({ text: '', things: ['41234'], place: '' });
    expect(addTyped({ ...once, text: '41234' }).things).toEqual(['41234']);
  });

  it('takes the code of a place for the place, not for a thing', () => {
    expect(addTyped(typed('BT PC-4-2', ['41234']))).toEqual({ text: '', things: ['41234'], place: 'C-4-2' });
  });

  it('leaves everything as it is when nothing is typed', () => {
    expect(addTyped(typed('  ', ['41234']))).toEqual(typed('  ', ['41234']));
  });
});

describe('putAwayInput', () => {
  it('sends what still stands in the field as well', () => {
    const parsed = racksContract['racks/put-away'].input.safeParse(putAwayInput(typed('41235', ['41234'], 'C-4-2')));

    expect(parsed.error).toBeUndefined();
    expect(parsed.data).toEqual({ things: [{ text: '41234' }, { text: '41235' }], place: 'C-4-2' });
  });
});

describe('putAwayMissing', () => {
  it('asks for the tag first, then for the place', () => {
    expect(putAwayMissing(typed(''))).toBe('Read or type a tag.');
    expect(putAwayMissing(typed('41234'))).toBe('Read or type the place.');
    expect(putAwayMissing(typed('', ['41234'], 'C-4-2'))).toBeUndefined();
  });
});

describe('thingError', () => {
  it('finds the sentence of a thing by its place in the request', () => {
    const fields = { 'things.1.text': 'Nothing carries 9.', 'things.2': 'Too heavy.' };

    expect([0, 1, 2].map((index) => thingError(fields, index))).toEqual([
      undefined,
      'Nothing carries 9.',
      'Too heavy.',
    ]);
  });
});
