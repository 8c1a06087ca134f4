import { describe, expect, it } from 'vitest';
import { everything, nobody } from '#core/host/session.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

const typed = {
  name: 'Lantern Heads',
  currencyCode: 'EUR',
  currencySign: '€',
  units: 'metric',
  paper: 'a4',
  timeZone: 'Europe/Warsaw',
  personName: 'Ada Ferrow',
  personInitials: 'AF',
  pin: '482915',
} as const;

describe('shop/first-run', () => {
  it('needs name, currency, units, paper and a first person, who becomes owner', async () => {
    const { send } = await startTestHost({ empty: true });

    const { staff } = await send('shop/first-run', typed, { as: nobody(null, 'test') });

    expect(await send('staff/list-staff', {}, { as: 'AF' })).toMatchObject({
      people: [{ id: staff, roles: ['owner'], hasPin: true }],
    });
    expect(await send('shop/get-face', {}, { as: nobody(null, 'test') })).toMatchObject({
      set: true,
      name: 'Lantern Heads',
      shortName: 'Lantern Heads',
      units: 'metric',
      paper: 'a4',
      practice: false,
    });
  });

  it('happens once', async () => {
    const { refuse } = await startTestHost();

    expect(await refuse('shop/first-run', typed, { as: everything('test') })).toMatchObject({
      code: 'shop/already-set',
    });
  });

  it.each([
    [{ pin: '123456' }, 'pin', /run/],
    [{ pin: '740101' }, 'pin', /practice/],
    [{ timeZone: 'Mars/Olympus' }, 'timeZone', /not known/],
    [{ name: '   ' }, 'name', /Write the shop name/],
    [{ currencyCode: 'dollars' }, 'currencyCode', /three letters/],
  ])('says beside the field what is wrong: %o', async (change, field, sentence) => {
    const { refuse } = await startTestHost({ empty: true });

    const error = await refuse('shop/first-run', { ...typed, ...change } as never, { as: nobody(null, 'test') });

    expect(error).toMatchObject({ kind: 'invalid-input', fields: { [field]: expect.stringMatching(sentence) } });
  });
});
