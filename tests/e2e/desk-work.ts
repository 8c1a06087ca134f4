/** What the desk does with a ticket, by keys alone, as several stories need it. */
import { expect } from 'vitest';
import { type BrowserApp, startBrowserApp } from '#tests/kit/browser-app.ts';
import { type DeskHand, deskHand } from './desk-steps.ts';

export type Desk = Readonly<{ shop: BrowserApp; hand: DeskHand }>;

/** A shop whose next ticket and invoice carry the story's numbers, and a keyboard at its counter. */
export async function openDesk(
  wall: string,
  story: Readonly<{ ticket: string; invoice: { number: string } }>,
): Promise<Desk> {
  const shop = await startBrowserApp(wall);
  shop.page.setDefaultTimeout(25_000);
  await shop.ask('shop/set-next-number', { series: 'ticket', next: Number(story.ticket) });
  await shop.ask('shop/set-next-number', { series: 'invoice', next: Number(story.invoice.number) });
  return { shop, hand: deskHand(shop.page) };
}

/** An amount as the shop shows it, with a comma before each three digits: `1,275.46`. */
export const shown = (amount: string): string => amount.replace(/\B(?=(\d{3})+\.)/g, ',');

/** Sign in with the keyboard. */
export async function signInAtDesk({ shop, hand }: Desk, name: string, pin: string): Promise<void> {
  await shop.page.getByRole('heading', { name: 'Who works here now?' }).waitFor();
  await shop.checkAccess();
  await hand.push(new RegExp(name));
  await hand.type(pin);
  await hand.press('Enter');
  await shop.page.getByRole('banner').getByText(name).waitFor();
}

/** On another day: the page is opened anew where it was, and the same person signs in. */
export async function morningAtDesk(desk: Desk, name: string, pin: string): Promise<void> {
  await desk.shop.page.reload();
  await signInAtDesk(desk, name, pin);
}

/** From anywhere to a ticket by the find box: its first result without a mouse, in at most ten keys. */
export async function findTicket({ shop, hand }: Desk, number: string): Promise<void> {
  hand.count();
  await hand.press('Control+f');
  await hand.type(number);
  await shop.page.locator('[data-find-results] a[data-row]').filter({ hasText: number }).first().waitFor();
  await hand.press('Enter');
  await shop.page.getByRole('heading', { name: `Ticket ${number}` }).waitFor();
  expect(hand.count()).toBeLessThanOrEqual(10);
}

/** Put a part of the stock on the ticket that is open. */
export async function addPart({ shop, hand }: Desk, part: string, count: number): Promise<void> {
  await hand.push('Add a part');
  await hand.pick('Part of the stock', part, part);
  await hand.write('How many', String(count));
  await hand.press('Control+Enter');
  await shop.page.getByRole('heading', { name: 'Add a part' }).waitFor({ state: 'detached' });
}

/** Send the estimate of the open ticket; `total` is read off the form first. */
export async function sendEstimate({ shop, hand }: Desk, total: string): Promise<void> {
  await shop.page.getByText('Work on the ticket now').waitFor();
  await hand.push('Estimate');
  await shop.page.getByRole('heading', { name: 'Send an estimate' }).waitFor();
  await shop.page.getByText(`$${shown(total)}`).waitFor();
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await shop.page.getByRole('heading', { name: 'Send an estimate' }).waitFor({ state: 'detached' });
}

/** Their yes to it at the counter. */
export async function takeYes({ shop, hand }: Desk, words: string): Promise<void> {
  await shop.page.getByRole('button', { name: /^Log the answer/ }).waitFor();
  await hand.press('Control+Enter');
  const form = shop.page.getByRole('heading', { name: /Answer to estimate/ });
  await form.waitFor();
  await hand.choose('They say', 'Yes');
  await hand.choose('How they answered', 'At the counter');
  await hand.write('In their words', words);
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await form.waitFor({ state: 'detached' });
  await shop.page.getByText(words).first().waitFor();
}

/** Read the labels, then the place. */
export async function putAway({ shop, hand }: Desk, labels: readonly string[], place: string): Promise<void> {
  await hand.press('Alt+3');
  await shop.page.getByRole('heading', { name: 'Put away' }).waitFor();
  await hand.to('Tag or label');
  for (const label of labels) {
    await hand.type(label);
    await hand.press('Enter');
  }
  await hand.pick('Place', place, place);
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await shop.page.getByText(new RegExp(`(pieces|\\d) in ${place}\\.`)).waitFor();
}

/** Ring them: the ticket that is open is ready. */
export async function tell({ shop, hand }: Desk, words: string): Promise<void> {
  await shop.page.getByRole('button', { name: /^Tell the customer/ }).waitFor();
  await hand.press('Control+Enter');
  const form = shop.page.getByRole('heading', { name: 'Tell them it is ready' });
  await form.waitFor();
  await hand.write('What was said', words);
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await form.waitFor({ state: 'detached' });
}

/** Write the invoice of the open ticket, after reading what it will say. */
export async function issueInvoice({ shop, hand }: Desk, figures: readonly string[], number: string): Promise<void> {
  const { page } = shop;
  await hand.push('Invoice');
  await page.getByRole('heading', { name: /Bill of ticket/ }).waitFor();
  for (const figure of figures) await page.getByText(figure, { exact: true }).first().waitFor();
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await page.getByText('Issue it?').waitFor();
  await hand.press('Control+Enter');
  await page.getByRole('heading', { name: `Invoice ${number}` }).waitFor();
}

/** Count everything out, say who takes it, and let it go. */
export async function release(
  { shop, hand }: Desk,
  { number, lines, takenBy, offered }: Readonly<{ number: string; lines: number; takenBy: string; offered?: string }>,
): Promise<void> {
  const { page } = shop;
  await hand.push(/release the pieces/);
  await page.getByRole('heading', { name: `Release ${number}` }).waitFor();
  await hand.to(/counted out, of/);
  for (let line = 0; line < lines; line += 1) await hand.press('Enter');
  if (offered) await hand.pick('Who takes it', takenBy, offered);
  else await hand.write('Who takes it', takenBy);
  await hand.choose('By which proof', 'claim ticket');
  await hand.tick('Signed on paper');
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await page.getByRole('heading', { name: 'Handed over' }).waitFor();
}
