import { beforeEach, describe, expect, it } from 'vitest';
import { changeLine, mergeOrRefuse } from '#core/host/field-merge.ts';
import { AppError } from '#core/kernel/errors.ts';
import { customerNamed } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const NAMES = { notes: 'the notes', route: 'the route' };

describe('mergeOrRefuse', () => {
  it('names the last of several changes of a field, with who and when', async () => {
    const customerId = await customerNamed(t, 'mudlark');
    const { version, notes } = await t.send('customers/get-customer', { customerId }, { as: 'OB' });
    const change = (as: string, seen: unknown, to: string) =>
      t.send(
        'customers/change-customer',
        { customerId, seenVersion: version, changes: { notes: { seen, to } } },
        { as },
      );
    await change('OB', notes, 'one');
    await change('TV', 'one', 'two');
    const merge = mergeOrRefuse(t.db, {
      table: 'customer',
      id: customerId,
      seenVersion: version,
      now: { notes: 'two', route: null },
      changes: { route: { seen: null, to: 'Tuesday' } },
      names: NAMES,
    });
    expect(merge).toEqual({
      changed: { route: 'Tuesday' },
      takenOver: [
        { field: 'notes', words: 'the notes', value: 'two', by: 'Teodor Vaskelund', at: '2026-03-09T14:00:00.000Z' },
      ],
    });
  });

  it('refuses with both texts though activity no longer says who', () => {
    const clash = () =>
      mergeOrRefuse(t.db, {
        table: 'customer',
        id: 1,
        seenVersion: 99,
        now: { notes: 'theirs' },
        changes: { notes: { seen: 'old', to: 'mine' } },
        names: NAMES,
      });
    expect(clash).toThrow(AppError);
    expect(clash).toThrow('Somebody changed the notes while you had it open. Your text is kept; look and save again.');
  });
});

describe('changeLine', () => {
  it('keeps before and after of the changed fields only', () => {
    const line = changeLine({
      subject: ['customer', 1],
      words: 'Changed',
      before: { notes: 'a', route: 'b' },
      fields: { notes: 'c' },
      version: 4,
    });
    expect(line).toMatchObject({ before: { fields: { notes: 'a' } }, after: { version: 4, fields: { notes: 'c' } } });
  });
});
