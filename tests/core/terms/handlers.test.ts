import { beforeEach, describe, expect, it } from 'vitest';
import { customerNamed } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const page = async (words: string) =>
  t.send('customers/get-customer', { customerId: await customerNamed(t, words) }, { as: 'OB' });

describe('customers/put-on-stop', () => {
  it('stops an account with its reason, once, and lifts it again', async () => {
    const { customerId, version } = await page('mudlark');
    const stopped = await t.send(
      'customers/put-on-stop',
      { customerId, seenVersion: version, why: 'cheque came back' },
      { as: 'OB' },
    );
    expect((await page('mudlark')).stopWords).toBe(
      'Account on stop since Mon 9 Mar: cheque came back. Ask the owner before unloading.',
    );
    expect(
      (await t.refuse('customers/put-on-stop', { customerId, seenVersion: stopped.version, why: 'x' }, { as: 'OB' }))
        .code,
    ).toBe('terms/on-stop');
    const lifted = await t.send(
      'customers/lift-stop',
      { customerId, seenVersion: stopped.version, why: 'paid in cash' },
      { as: 'OB' },
    );
    expect((await page('mudlark')).stopWords).toBeNull();
    expect(
      (await t.refuse('customers/lift-stop', { customerId, seenVersion: lifted.version, why: 'x' }, { as: 'OB' })).code,
    ).toBe('terms/not-on-stop');
  });
  it('is for books and the owner', async () => {
    const { customerId, version } = await page('mudlark');
    expect(
      (await t.refuse('customers/put-on-stop', { customerId, seenVersion: version, why: 'x' }, { as: 'TV' })).kind,
    ).toBe('not-allowed');
  });
});

describe('customers/set-terms', () => {
  it('sets terms, limit and discounts', async () => {
    const { customerId, version } = await page('mudlark');
    await t.send(
      'customers/set-terms',
      { customerId, seenVersion: version, terms: 'eom30', creditLimit: null, labourDiscount: 1250 },
      { as: 'OB' },
    );
    expect(await page('mudlark')).toMatchObject({
      terms: { words: 'end of month plus 30 days' },
      creditLimit: null,
      labourDiscount: 1250,
    });
  });
  it.each([
    [{ terms: 'no-such' }, 'terms'],
    [{ overrun: 1000 }, 'overrun'],
    [{ labourDiscount: 10_001 }, 'labourDiscount'],
    [{ creditLimit: -1 }, 'creditLimit'],
  ])('refuses %j at its field', async (changes, field) => {
    const { customerId, version } = await page('mudlark');
    const error = await t.refuse('customers/set-terms', { customerId, seenVersion: version, ...changes }, { as: 'OB' });
    expect(Object.keys(error.fields ?? {})).toEqual([field]);
  });
});

describe('customers/add-terms', () => {
  it('adds terms once', async () => {
    const input = { code: 'net45', words: 'net 45 days', kind: 'net' as const, days: 45 };
    await t.send('customers/add-terms', input, { as: 'OB' });
    expect((await t.refuse('customers/add-terms', input, { as: 'OB' })).code).toBe('terms/code-used');
    expect((await t.send('customers/list-terms', {}, { as: 'TV' })).terms.map((one) => one.code)).toContain('net45');
  });
});

describe('customers/add-exemption', () => {
  it('shows a certificate in force, one that lapsed, and ends one', async () => {
    const { customerId } = await page('mudlark');
    const input = { customerId, taxCode: 'sales', certificateNo: 'X-1', from: '2026-01-01' };
    const kept = await t.send('customers/add-exemption', { ...input, until: '2026-12-31' }, { as: 'OB' });
    await t.send(
      'customers/add-exemption',
      { ...input, certificateNo: 'X-0', from: '2025-01-01', until: '2025-12-31' },
      { as: 'OB' },
    );
    expect((await page('mudlark')).exemptions.map((one) => [one.inForce, one.sentence])).toEqual([
      [true, 'Certificate X-1 in force.'],
      [false, 'Certificate X-0 lapsed on 2025-12-31: tax is charged.'],
    ]);
    await t.send(
      'customers/end-exemption',
      { exemptionId: kept.exemptionId, on: '2026-03-01', why: 'moved away' },
      { as: 'OB' },
    );
    expect((await page('mudlark')).exemptions[0]?.inForce).toBe(false);
  });
  it('does not take days that are crossed', async () => {
    const { customerId } = await page('mudlark');
    const error = await t.refuse(
      'customers/add-exemption',
      { customerId, taxCode: 'sales', certificateNo: 'X', from: '2026-02-01', until: '2026-01-01' },
      { as: 'OB' },
    );
    expect(error.fields?.until).toContain('ends before it begins');
  });
});
