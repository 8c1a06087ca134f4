import { describe, expect, it } from 'vitest';
import {
  addCasting,
  addPairOf,
  addWish,
  castingWords,
  changeCasting,
  countAsExpected,
  countedWords,
  dropCasting,
} from '#renderer/screens/counter/check-in/changes.ts';
import {
  EMPTY_CHECK_IN,
  emptyCasting,
  type ItemTyped,
  type WishTyped,
} from '#renderer/screens/counter/check-in/typed.ts';

const item = (words: string, expected: number, inside = false): ItemTyped => ({
  words,
  expected,
  counted: null,
  mixRule: 'none',
  removeBeforeWash: false,
  inside,
  own: false,
  numbersSeen: false,
  arrowsSeen: false,
  boltedInPlace: false,
  more: '',
  box: null,
});
const wish = (words: string, castings: string[] = []): Omit<WishTyped, 'key'> => ({
  kind: 'operation',
  id: 1,
  code: words,
  words,
  customerWords: words,
  said: '',
  quantity: '',
  note: '',
  castings,
});
const oneHead = changeCasting(addCasting(EMPTY_CHECK_IN), 'c1', {
  kind: 'head',
  type: 'BV-6',
  material: 'aluminium',
  position: 'left',
  castingNumber: '4B?71-L',
  tagNo: '41170',
  items: [{ ...item('valves', 12), counted: 12 }],
  marks: [
    { key: 'm1', condition: 'gouge', conditionWords: 'gouge', view: 'deck', x: 1, y: 1, words: '', photoWanted: false },
  ],
});

describe('addPairOf', () => {
  it('makes the other one: same type and metal, other side, nothing counted, no number, tag or mark of the first', () => {
    const both = addPairOf(oneHead, 'c1');

    const [first, second] = both.castings;
    expect(second).toMatchObject({
      key: 'c2',
      type: 'BV-6',
      material: 'aluminium',
      position: 'right',
      pair: first?.pair,
    });
    expect(second).toMatchObject({ castingNumber: '', tagNo: '', marks: [], photos: [] });
    expect(second?.items).toEqual([item('valves', 12)]);
    expect(first?.items[0]?.counted).toBe(12);
    expect(both.at).toBe('c2');
  });

  it('gives a third of the same set the same number', () => {
    const three = addPairOf(addPairOf(oneHead, 'c1'), 'c1');

    expect(three.castings.map((casting) => casting.pair)).toEqual([1, 1, 1]);
  });
});

describe('dropCasting', () => {
  it('takes along what was asked for that casting alone, and leaves what was asked for all', () => {
    const typed = [wish('a'), wish('b', ['c1']), wish('c', ['c1', 'c2'])].reduce(addWish, addPairOf(oneHead, 'c1'));

    const left = dropCasting(typed, 'c1');

    expect(left.castings.map((casting) => casting.key)).toEqual(['c2']);
    expect(left.wishes.map((one) => [one.words, one.castings])).toEqual([
      ['a', []],
      ['c', ['c2']],
    ]);
  });

  it('leads the hand to a casting that is still there', () => {
    expect(dropCasting(addPairOf(oneHead, 'c1'), 'c2').at).toBe('c1');
    expect(dropCasting(oneHead, 'c1').at).toBeNull();
  });
});

describe('countAsExpected', () => {
  it('counts the lines nobody counted, keeps a short count, and leaves the inside of what came assembled', () => {
    const casting = {
      ...emptyCasting('c1'),
      cameAssembled: true,
      items: [{ ...item('dowels', 2), counted: 1 }, item('springs', 12), item('guides', 12, true)],
    };

    const counted = countAsExpected(casting);

    expect(counted.items.map((one) => one.counted)).toEqual([1, 12, null]);
    expect(countedWords(counted)).toBe('2 of 2 lines counted');
  });
});

describe('addWish', () => {
  it('does not add the same work for the same castings twice', () => {
    const once = addWish(oneHead, wish('pressure-test'));

    expect(addWish(once, wish('pressure-test')).wishes).toHaveLength(1);
    expect(addWish(once, wish('pressure-test', ['c1'])).wishes).toHaveLength(2);
  });
});

describe('castingWords', () => {
  it('says which of how many, and the side', () => {
    const both = addPairOf(oneHead, 'c1');

    expect(both.castings.map((casting) => castingWords(both, casting))).toEqual([
      'Head 1 of 2, left',
      'Head 2 of 2, right',
    ]);
    expect(castingWords(oneHead, oneHead.castings[0] ?? emptyCasting('x'))).toBe('Head, left');
  });
});
