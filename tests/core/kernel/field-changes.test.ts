import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeFields } from '#core/kernel/field-changes.ts';

describe('mergeFields', () => {
  it('writes what only one person changed', () => {
    expect(mergeFields({ a: 1, b: 2 }, { a: { seen: 1, to: 3 } })).toEqual({ changed: { a: 3 }, conflicts: [] });
  });
  it('is a conflict when somebody else changed it meanwhile', () => {
    expect(mergeFields({ a: 9 }, { a: { seen: 1, to: 3 } })).toEqual({
      changed: {},
      conflicts: [{ field: 'a', seen: 1, now: 9, yours: 3 }],
    });
  });
  it('takes empty text, null and nothing as one', () => {
    expect(mergeFields({ a: null }, { a: { seen: '', to: 'x' } })).toEqual({ changed: { a: 'x' }, conflicts: [] });
    expect(mergeFields({}, { a: { to: 'x' } })).toEqual({ changed: { a: 'x' }, conflicts: [] });
  });
  it('takes a letter typed in two ways as one', () => {
    expect(mergeFields({ a: 'Z\u0307olw' }, { a: { seen: '\u017bolw', to: 'x' } }).conflicts).toEqual([]);
  });
  it('never loses a field: it is written, stands already, or is a conflict', () => {
    const value = fc.constantFrom('a', 'b', null, 1);
    const change = fc.record({ seen: value, to: value });
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom('x', 'y', 'z'), value),
        fc.dictionary(fc.constantFrom('x', 'y', 'z'), change),
        (now, changes) => {
          const { changed, conflicts } = mergeFields(now, changes);
          return Object.entries(changes).every(
            ([field, { to }]) =>
              field in changed || conflicts.some((one) => one.field === field) || (now[field] ?? null) === to,
          );
        },
      ),
    );
  });
});
