import { beforeEach, describe, expect, it } from 'vitest';
import { customerNamed } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const page = async (words: string) =>
  t.send('customers/get-customer', { customerId: await customerNamed(t, words) }, { as: 'TV' });

describe('customers/add-customer', () => {
  it('makes a person of the same name who may approve and collect', async () => {
    const made = await t.send('customers/add-customer', { name: ' Łucja  Świerk ' }, { as: 'TV' });
    const customer = await t.send('customers/get-customer', { customerId: made.customerId }, { as: 'TV' });
    expect(customer).toMatchObject({
      name: 'Łucja  Świerk',
      printName: 'Łucja  Świerk',
      terms: { words: 'due on receipt' },
      persons: [{ mayApprove: true, mayCollect: true, approveWords: 'may approve, any amount' }],
    });
  });

  it.each(['🦊🔧 Repairs', "Robert'); DROP TABLE customer;--", 'مرآب النورس', '\u202eevil', 'A'.repeat(80)])(
    'keeps the name %j as it is',
    async (name) => {
      const made = await t.send('customers/add-customer', { name }, { as: 'TV' });
      expect((await t.send('customers/get-customer', { customerId: made.customerId }, { as: 'TV' })).name).toBe(
        name.normalize('NFC'),
      );
    },
  );

  it.each([
    ['', 'Write a name.'],
    ['   ', 'Write a name.'],
    ['x'.repeat(10_000), 'Keep a name to 80 characters.'],
    ['a\u0007b', 'Remove the control characters.'],
  ])('says what is the matter with the name %j', async (name, words) => {
    const error = await t.refuse('customers/add-customer', { name: name as string }, { as: 'TV' });
    expect(error.fields).toEqual({ name: words });
  });

  it('keeps a long legal name for paper', async () => {
    expect((await page('drainage')).printName.length).toBeGreaterThan(150);
  });
});

describe('customers/change-customer', () => {
  it('takes over what others changed and shows both texts where both changed the same (I42)', async () => {
    const { customerId, version } = await page('mudlark');
    const change = (as: string, changes: object) =>
      t.ask('customers/change-customer', { customerId, seenVersion: version, changes }, { as });
    expect(
      await change('OB', { notes: { seen: 'tight on paper', to: 'pays late' }, route: { seen: null, to: 'Tuesday' } }),
    ).toMatchObject({ ok: true });
    expect(await change('TV', { trade: { seen: 'garage', to: 'body shop' } })).toMatchObject({
      ok: true,
      output: {
        version: version + 2,
        takenOver: [
          { field: 'route', value: 'Tuesday' },
          { field: 'notes', words: 'the notes', value: 'pays late', by: 'Odile Brackwen' },
        ],
      },
    });
    const clash = await change('TV', { notes: { seen: 'tight on paper', to: 'wants it tidy' } });
    expect(clash).toMatchObject({
      ok: false,
      error: {
        kind: 'conflict',
        message: 'Odile Brackwen changed the notes while you had it open. Your text is kept; look and save again.',
        fields: { 'changes.notes': 'Odile Brackwen wrote: pays late. Yours: wants it tidy.' },
        facts: { conflicts: [{ field: 'notes', seen: 'tight on paper', now: 'pays late', yours: 'wants it tidy' }] },
      },
    });
    expect((await page('mudlark')).notes).toBe('pays late');
  });
});

describe('customers/change-person', () => {
  it('changes limits and numbers, and keeps somebody who speaks', async () => {
    const { persons } = await page('mudlark');
    const kerrow = persons[0];
    await t.send(
      'customers/change-person',
      {
        personId: kerrow?.personId ?? 0,
        seenVersion: 1,
        changes: { approveLimit: { seen: 60_000, to: null } },
        addContacts: [{ kind: 'phone', value: '(555) 0199' }],
        dropContacts: [kerrow?.contacts[0]?.contactId ?? 0],
      },
      { as: 'TV' },
    );
    const now = (await page('mudlark')).persons[0];
    expect(now).toMatchObject({ approveWords: 'may approve, any amount' });
    expect(now?.contacts.map((one) => one.value)).toEqual(['desk@mudlark.example.com', '(555) 0199']);
    expect((await t.send('search/find-anything', { text: '5550199' }, { as: 'TV' })).customers[0]?.name).toBe(
      'Mudlark Lane Garage Ltd',
    );
    expect((await t.send('search/find-anything', { text: '5550115' }, { as: 'TV' })).customers).toEqual([]);
  });

  it('does not retire the last person', async () => {
    const made = await t.send('customers/add-customer', { name: 'Ossian' }, { as: 'TV' });
    const error = await t.refuse(
      'customers/change-person',
      { personId: made.persons[0]?.personId ?? 0, seenVersion: 1, changes: {}, retire: true },
      { as: 'TV' },
    );
    expect(error.code).toBe('customers/last-person');
  });
});

describe('customers/add-person', () => {
  it('adds a driver who may collect and not approve', async () => {
    const { customerId } = await page('mudlark');
    await t.send('customers/add-person', { customerId, person: { name: 'Finn', mayCollect: true } }, { as: 'TV' });
    expect((await page('mudlark')).persons.at(-1)).toMatchObject({
      name: 'Finn',
      approveWords: 'may not approve',
      mayCollect: true,
    });
  });
});

describe('customers/find-customer', () => {
  it('finds by name, person and number; newest first without text', async () => {
    const names = async (text: string) =>
      (await t.send('customers/find-customer', { text }, { as: 'TV' })).customers.map((one) => one.name);
    expect(await names('piet')).toEqual(['Mudlark Lane Garage Ltd']);
    expect(await names('555 0115')).toEqual(['Mudlark Lane Garage Ltd']);
    expect((await names('')).length).toBe(12);
    expect(await names('%')).toHaveLength(12);
    expect(await names('no such name')).toEqual([]);
  });
  it('shows the stop at once', async () => {
    const { customers } = await t.send('customers/find-customer', { text: 'back basin' }, { as: 'TV' });
    expect(customers[0]).toMatchObject({
      onStop: true,
      stopWords: expect.stringMatching(/^Account on stop since .*Ask the owner before unloading\.$/),
    });
  });
});

describe('customers/set-standing-instruction', () => {
  it('is kept, shown on the ticket and ended with empty words', async () => {
    const { customerId, version } = await page('mudlark');
    const set = await t.send(
      'customers/set-standing-instruction',
      { customerId, seenVersion: version, words: 'no crack check on mower heads' },
      { as: 'TV' },
    );
    expect((await page('mudlark')).standingInstruction).toBe('no crack check on mower heads');
    await t.send(
      'customers/set-standing-instruction',
      { customerId, seenVersion: set.version, words: '' },
      { as: 'TV' },
    );
    expect((await page('mudlark')).standingInstruction).toBeNull();
  });
  it('is not written over one somebody else just set', async () => {
    const { customerId, version } = await page('mudlark');
    await t.send('customers/set-standing-instruction', { customerId, seenVersion: version, words: 'a' }, { as: 'OB' });
    expect(
      (
        await t.refuse(
          'customers/set-standing-instruction',
          { customerId, seenVersion: version, words: 'b' },
          { as: 'TV' },
        )
      ).kind,
    ).toBe('conflict');
  });
});
