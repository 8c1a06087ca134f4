import { beforeEach, describe, expect, it } from 'vitest';
import { ALUMINIUM_HEAD, checkIn, customerNamed, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const refuse = async (changes: object) => {
  const customerId = await customerNamed(t, 'ferry');
  return t.refuse(
    'tickets/check-in-ticket',
    { customer: { customerId }, castings: [ALUMINIUM_HEAD], ...changes } as never,
    { as: 'TV' },
  );
};
const operations = () =>
  t.db
    .sql<{ code: string }>(
      'SELECT k.code FROM operation o JOIN operation_kind k ON k.id = o.operation_kind_id ORDER BY o.casting_id, o.position',
    )
    .map((row) => row.code);

describe('addWish', () => {
  it('keeps "hot tank" of an aluminium head in the words of the customer and makes it the aluminium wash', async () => {
    const made = await checkIn(t, { castings: [ALUMINIUM_HEAD], wishes: [{ said: 'hot tank' }] });
    expect(operations()).toEqual(['aluminium-wash']);
    expect(t.db.sql('SELECT wished_words AS said FROM work_line')).toEqual([{ said: 'hot tank' }]);
    expect(made.notes).toEqual([
      expect.stringContaining('ALUMINIUM: no caustic. Use the aluminium-safe wash. It is now: alu wash.'),
    ]);
  });

  it('takes "hot tank" of an iron head as it was said', async () => {
    const made = await checkIn(t, { wishes: [{ said: 'Hot tank' }] });
    expect(operations()).toEqual(['hot-tank']);
    expect(made.notes).toEqual([]);
  });

  it('refuses caustic chosen for aluminium, with what does fit (I8)', async () => {
    const error = await refuse({ wishes: [{ operation: 'hot-tank' }] });
    expect(error.message).toContain('ALUMINIUM: no caustic. Use the aluminium-safe wash.');
    expect(Object.keys(error.fields ?? {})[0]).toMatch(/^wishes\.0/);
    expect(error.offers?.length).toBeGreaterThan(0);
    expect(operations()).toEqual([]);
  });

  it('refuses the magnet on aluminium (I9)', async () => {
    const error = await refuse({ wishes: [{ operation: 'mag-particle-check' }] });
    expect(error.message).toContain('The magnet shows nothing in aluminium.');
  });

  it('refuses a wash while the metal is not known, and keeps it as words when it was only said', async () => {
    const unknown = { ...IRON_HEAD, material: 'not_known' as const };
    const error = await refuse({ castings: [unknown], wishes: [{ operation: 'hot-tank' }] });
    expect(error.message).toContain('METAL NOT KNOWN');
    const made = await checkIn(t, { castings: [unknown], wishes: [{ said: 'hot tank' }] });
    expect(made.notes.join(' ')).toContain('METAL NOT KNOWN');
    expect(t.db.sql('SELECT wanted_words AS wanted FROM ticket')).toEqual([{ wanted: 'hot tank' }]);
  });

  it('keeps words nobody sells as what is wanted', async () => {
    const made = await checkIn(t, { ticket: { wantedWords: 'valve job' }, wishes: [{ said: 'make it purr' }] });
    expect(made.notes).toEqual(['“make it purr” is kept in their words.']);
    expect(t.db.sql('SELECT wanted_words AS wanted FROM ticket')).toEqual([{ wanted: 'valve job; make it purr' }]);
  });

  it('sells a package once over the castings of one type', async () => {
    await checkIn(t, {
      castings: [
        { ...ALUMINIUM_HEAD, pair: 1 },
        { ...ALUMINIUM_HEAD, position: 'right', pair: 1 },
      ],
      wishes: [{ package: 'valve-job' }, { operation: 'pressure-test', castings: [1] }],
    });
    expect(t.db.sql('SELECT kind, quantity FROM work_line ORDER BY id')).toEqual([
      { kind: 'package', quantity: 2 },
      { kind: 'operation', quantity: 1 },
    ]);
  });

  it.each([
    [{ operation: 'no-such' }, 'wishes.0.operation'],
    [{ package: 'no-such' }, 'wishes.0.package'],
    [{ operation: 'pressure-test', castings: [7] }, 'wishes.0.castings'],
    [{}, 'wishes.0'],
  ])('names the field of %j', async (wish, field) => {
    const error = await refuse({ wishes: [wish] });
    expect(Object.keys(error.fields ?? {})).toEqual([field]);
  });

  it('asks how many where only a person can count', async () => {
    const ask = t.db.sql<{ code: string }>(
      "SELECT k.code FROM op_use u JOIN operation_kind k ON k.id = u.operation_kind_id WHERE u.count_from = 'ask' AND u.casting_kind = 'head' AND u.charge_unit <> 'hour'",
    )[0]?.code;
    const error = await refuse({ castings: [IRON_HEAD], wishes: [{ operation: ask }] });
    expect(error.fields?.['wishes.0.quantity']).toContain('Say how many');
  });
});
