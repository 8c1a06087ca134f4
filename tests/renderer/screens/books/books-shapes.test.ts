import { describe, expect, it } from 'vitest';
import { groupByCasting, type InvoiceLine } from '#renderer/screens/books/books-shapes.ts';

const line = (words: string, castingId: number | null) =>
  ({ words, castingId, tag: castingId === null ? null : 40_000 + castingId }) as InvoiceLine;

describe('groupByCasting', () => {
  it('keeps castings in the order of their first line and puts the ticket as a whole last', () => {
    const groups = groupByCasting([line('fee', null), line('wash', 2), line('wash', 1), line('test', 2)]);

    expect(groups.map((group) => [group.tag, group.lines.map((one) => one.words)])).toEqual([
      [40_002, ['wash', 'test']],
      [40_001, ['wash']],
      [null, ['fee']],
    ]);
  });

  it('has no group without lines', () => {
    expect(groupByCasting([])).toEqual([]);
  });
});
