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
});
