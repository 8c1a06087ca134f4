/**
 * The desk by keyboard, in a real browser on a real host: what is typed arrives, what is wrong is said beside its field, and
 * nothing typed is lost. The amount is the practice shop's own (demo-data/expected.json), a baseline.
 */
import type { Page } from '@playwright/test';
import { afterAll, describe, expect, it } from 'vitest';
import { expectedOf } from '#demo-data/stories/expected.ts';
import { type BrowserApp, closeBrowser, startBrowserApp } from '#tests/kit/browser-app.ts';

afterAll(closeBrowser);

/** Press Tab until the hand is at the field or choice of this name. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 160; presses += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const here = document.activeElement;
      if (!(here instanceof HTMLElement)) return '';
      const typed = here instanceof HTMLInputElement || here instanceof HTMLTextAreaElement;
      const labels = typed ? [...(here.labels ?? [])].map((label) => label.textContent) : [];
      const group = here.closest('fieldset')?.querySelector('legend')?.textContent ?? '';
      return [here.getAttribute('aria-label') ?? '', ...labels, group, here.textContent].join('|');
    });
    if (at.split('|').includes(name)) return;
  }
  throw new Error(`Tab does not reach ${name}`);
}

type TicketFacts = {
  ticketId: number;
  word: string;
  customer: { name: string };
  castings: {
    tagNo: number;
    castingNumber: string;
    position: string;
    cameAssembled: boolean;
    metal: { word: string };
  }[];
  lines: { words: string; wished: string | null }[];
  money: { estimate: { total: number } | null };
  promise: { day: string; minute: number } | null;
  signed: { how: string } | null;
};

const ticketOf = (shop: BrowserApp, number: number): Promise<TicketFacts> =>
  shop.ask('tickets/get-ticket', { number }) as Promise<TicketFacts>;

/** Types in the work field and takes the first that is found. */
async function askFor(page: Page, words: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Work asked for' }).focus();
  await page.keyboard.type(words);
  await page.getByRole('option').first().waitFor();
  await page.keyboard.press('Enter');
}

/** Story S02, way a before tax. */
const ADDED = '326.72';

describe('the desk', () => {
  it('checks in a head by keys alone, asks the price and writes down the yes', async () => {
    const shop = await startBrowserApp('2027-03-02 07:40');
    const { page } = shop;
    await shop.ask('shop/set-next-number', { series: 'ticket', next: 20_417 });
    await shop.signIn('Teodor Vaskelund', '740102');
    await page.getByRole('link', { name: /Check in castings/ }).waitFor();

    await page.keyboard.press('Alt+n');
    await page.getByRole('combobox', { name: /Customer/ }).waitFor();
    await page.keyboard.type('fisk');
    await page.getByRole('option', { name: /Annelore/ }).waitFor();
    await page.keyboard.press('Enter');
    await tabTo(page, 'Fuel');
    await page.keyboard.type('petrol');
    await tabTo(page, 'Gasket');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Alt+Shift+N');
    await page.getByRole('combobox', { name: 'Casting type' }).waitFor();
    await page.keyboard.type('LO-4');
    await page.getByRole('option', { name: /LO-4/ }).first().waitFor();
    await page.keyboard.press('Enter');
    await tabTo(page, 'Metal');
    await page.keyboard.press('Space');
    await tabTo(page, 'Side');
    for (let presses = 0; presses < 4; presses += 1) await page.keyboard.press('ArrowRight');
    await tabTo(page, 'Casting no., ? where unreadable');
    await page.keyboard.type('71K-0417');
    await tabTo(page, 'Tag, if stamped before');
    await page.keyboard.type('41170');
    await tabTo(page, 'came assembled');
    await page.keyboard.press('Space');
    await tabTo(page, 'Work asked for');
    await askFor(page, 'valve job');
    await askFor(page, 'magnetic');
    await askFor(page, 'seal-in');
    await page.getByText('Estimate before tax').waitFor();
    await tabTo(page, 'How many');
    await page.keyboard.type('8');
    await tabTo(page, 'Signed for what was left');
    await page.keyboard.press('ArrowRight');
    await shop.checkAccess();
    await page.keyboard.press('Control+p');
    await page.waitForURL(/ticket\/20417\/papers/);

    const made = await ticketOf(shop, 20_417);
    expect(made.customer.name).toBe('Annelore Fisk-Tarrow');
    expect(made.castings).toMatchObject([
      { tagNo: 41_170, castingNumber: '71K-0417', position: 'single', cameAssembled: true, metal: { word: 'IRON' } },
    ]);
    expect(made.signed?.how).toBe('on_paper');

    await page.getByRole('button', { name: 'Draw the whole pile' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Agreement' }).waitFor();
    await page.keyboard.press('Control+Enter');
    await page.getByRole('heading', { name: 'Send an estimate' }).waitFor();
    await page.keyboard.press('Control+Enter');
    await page.getByText('unanswered').first().waitFor();
    expect((await ticketOf(shop, 20_417)).money.estimate?.total).toBe(
      Number(expectedOf('S01').estimate?.total.replace('.', '')),
    );
    await page.keyboard.press('Control+Enter');
    await page.getByRole('heading', { name: /Answer to estimate/ }).waitFor();
    await tabTo(page, 'How they answered');
    for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowRight');
    await tabTo(page, 'In their words');
    await page.keyboard.type('Yes, go ahead.');
    await shop.checkAccess();
    await page.keyboard.press('Control+Enter');
    await page
      .getByText(/Yes, go ahead/)
      .first()
      .waitFor();
    expect((await ticketOf(shop, 20_417)).word).toBe('approved');

    await page.keyboard.press('Control+f');
    await page.keyboard.type('0110');
    await page.locator('[data-find-results]').getByText('20417').first().waitFor();
    await shop.checkAccess();
    await page.keyboard.press('Enter');
    await page.waitForURL(/ticket\/20417$/);
    await shop.end();
  }, 90_000);

  it('says beside the work that a hot tank is not for aluminium, and keeps their words with the wash that fits', async () => {
    const shop = await startBrowserApp('2027-03-16 08:00');
    const { page } = shop;
    await shop.signIn('Teodor Vaskelund', '740102');
    await page.goto(`${page.url().split('#')[0]}#/counter/check-in`);
    await page.getByRole('combobox', { name: /Customer/ }).fill('Nobody Known');
    await page.keyboard.press('Alt+Shift+N');
    await page.keyboard.type('BV-6');
    await page.getByRole('option', { name: /BV-6/ }).first().waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('radio', { name: 'Aluminium' }).check();
    await askFor(page, 'hot tank');

    await page.getByText('ALUMINIUM: no caustic. Use the aluminium-safe wash.').waitFor();
    await page
      .getByRole('button', { name: /wash instead/ })
      .first()
      .click();
    await page.getByText('they said "hot tank"').waitFor();
    await shop.checkAccess();
    await page.getByRole('radio', { name: 'left unsigned' }).check();
    await page.getByRole('button', { name: /Check in and print/ }).click();
    await page.waitForURL(/papers/);

    const number = Number(/ticket\/(\d+)/.exec(page.url())?.[1]);
    const { lines } = await ticketOf(shop, number);
    expect(lines).toMatchObject([{ wished: 'hot tank' }]);
    expect(lines[0]?.words).toMatch(/^alu/i);
    await shop.end();
  });

  it('keeps what is typed over setting aside and a reload, and says every fault beside its field', async () => {
    const shop = await startBrowserApp('2027-03-16 08:00');
    const { page } = shop;
    const long = `${'é'.repeat(9_990)} 😀 Ж`;
    await shop.signIn('Teodor Vaskelund', '740102');
    await page.goto(`${page.url().split('#')[0]}#/counter/check-in`);
    await page.getByRole('combobox', { name: /Customer/ }).fill('Zdzisława 😀');
    await page.getByLabel('What they said').fill(long);
    await page.getByLabel('Ceiling without a call').fill('about thirty');
    await page.getByRole('button', { name: /Set aside/ }).click();
    await page.getByRole('link', { name: /Zdzisława 😀/ }).click();
    await page.getByLabel('What they said').waitFor();
    expect(await page.getByLabel('What they said').inputValue()).toBe(long);
    await page.reload();
    await page.getByLabel('What they said').waitFor();
    expect(await page.getByLabel('What they said').inputValue()).toBe(long);

    await page.keyboard.press('Control+p');

    await page.getByText('Write an amount, for example 900.00.').first().waitFor();
    expect(await page.getByLabel('Ceiling without a call').inputValue()).toBe('about thirty');
    expect(await page.getByLabel('Ceiling without a call').getAttribute('aria-invalid')).toBe('true');
    await shop.end();
  });

  it('asks about a crack with its ways and prices, and writes down the yes of a telephone call', async () => {
    const shop = await startBrowserApp('2027-03-09 08:10');
    const { page } = shop;
    const { customers } = (await shop.ask('customers/find-customer', { text: 'Mudlark' })) as {
      customers: { customerId: number }[];
    };
    const customerId = customers[0]?.customerId;
    const { persons } = (await shop.ask('customers/get-customer', { customerId })) as {
      persons: { personId: number; name: string }[];
    };
    const head = (tagNo: number, position: string) => ({
      type: 'BV-6',
      tagNo,
      material: 'aluminium',
      position,
      pair: 1,
    });
    const made = (await shop.ask(
      'tickets/check-in-ticket',
      {
        customer: { customerId, personId: persons.find((one) => one.name === 'Ysolde Kerrow')?.personId },
        castings: [head(41_234, 'left'), head(41_235, 'right')],
        wishes: [
          { package: 'valve-job' },
          ...['penetrant-check', 'pressure-test', 'cam-bore-check', 'surface-head'].map((operation) => ({ operation })),
        ],
        ceiling: {
          amount: 150_000,
          taxIn: false,
          personId: persons.find((one) => one.name === 'Piet Vandrell')?.personId,
          saidBy: 'Piet Vandrell',
          means: 'email',
          words: 'Order ML-7731: up to 1500.00 before tax without a call.',
        },
        signed: { how: 'on_paper', by: 'Ysolde Kerrow' },
      },
      'TV',
    )) as { ticketId: number; number: number; castings: { castingId: number }[] };
    for (const { castingId } of made.castings) {
      const { items } = (await shop.ask('parts/list-stock', {})) as { items: { id: number; code: string }[] };
      const part = { stockItemId: items.find((item) => item.code === 'seal-mm')?.id, quantity: 12 };
      await shop.ask('parts/add-part', { ticketId: made.ticketId, castingId, part }, 'TV');
    }
    shop.at('2027-03-10 11:05');
    await shop.signIn('Teodor Vaskelund', '740102');
    await page.getByRole('link', { name: /Check in castings/ }).waitFor();

    await page.goto(`${page.url().split('#')[0]}#/counter/ticket/${made.number}`);
    await page.getByRole('button', { name: /41235/ }).first().click();
    await page.getByRole('link', { name: 'Ask them about 41235' }).click();
    await page
      .getByLabel('In words for the customer')
      .fill('A crack runs from the exhaust seat of cylinder 6 into the water.');
    await page.getByLabel('In plain words').fill('weld, new seat, dye and pressure re-test, cam line again');
    for (const code of [
      'weld-repair',
      'seat-insert',
      'penetrant-check',
      'pressure-retest',
      'cam-bore-check',
      'insert-ex',
    ]) {
      await askFor(page, code);
    }
    await page.getByLabel(/^Hours of/).fill('1.5');
    await page
      .getByLabel(/^How many .*seat/i)
      .first()
      .fill('1');
    await page.getByLabel('Days more').fill('3');
    await page.getByText(`${ADDED} more`, { exact: false }).waitFor();
    await shop.checkAccess();
    await page.keyboard.press('Control+Enter');
    await page.waitForURL(/added\/1$/);
    await page.getByLabel('In their words').waitFor();
    await shop.checkAccess();
    shop.at('2027-03-10 11:20');
    await page.getByLabel('In their words').fill('Yes to a. Weld it.');
    await page.keyboard.press('Control+Enter');
    await page.getByText('answered: yes').waitFor();

    const { money } = (await shop.ask('tickets/get-ticket', { number: made.number })) as {
      money: { authorised: number };
    };
    expect(money.authorised).toBe(150_000 + 32_672);
    await shop.end();
  }, 90_000);
});
