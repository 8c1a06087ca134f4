/**
 * A hand at a bench tablet that only touches: it signs in, opens castings, starts and finishes, reads on the number pad, and
 * counts its touches.
 */
import type { Locator, Page } from '@playwright/test';
import { expect } from 'vitest';
import staff from '#demo-data/staff.json' with { type: 'json' };
import { type BrowserApp, TABLET } from '#tests/kit/browser-app.ts';

export type BenchHand = Readonly<{
  page: Page;
  /** Touches since the last `count`. */
  count(): number;
  touch(what: Locator): Promise<void>;
  /** Touch the button that is called so. */
  tap(name: string | RegExp): Promise<void>;
  /** Change to somebody: one touch where they signed in here today, else name and PIN. */
  as(initials: string): Promise<void>;
  /** On another day: the tablet is opened anew and somebody signs in. */
  morning(initials: string): Promise<void>;
  /** Read a tag into the find box and touch the casting. */
  open(tag: number): Promise<void>;
  /** Touch an operation of the list, unless it lies under the hand already. */
  lay(operation: string): Promise<void>;
  /** Type a figure on the pad, key by key, at this place, and go to the next. */
  reading(text: string, place: string | RegExp): Promise<void>;
  /** Touch a cell of the table. */
  cell(row: string, column: string): Promise<void>;
  /** What stands in a row of the table, from the first to the last place. */
  rowReads(row: string, texts: readonly string[]): Promise<void>;
  /** Choose the gauge in the hand. */
  gauge(name: string): Promise<void>;
  /** Open a table from the operation under the hand, and come back from it. */
  inTable(table: string, what: () => Promise<void>): Promise<void>;
  /** Start an operation and finish it at another time: two touches, counted where nothing is done between. */
  work(operation: string, times: readonly [from: string, until: string], between?: () => Promise<void>): Promise<void>;
  /** Say of everything that must come off before this wash that it is off. */
  offBeforeWash(wash: string): Promise<void>;
  /** Sign the casting off by somebody's name and PIN. */
  signOff(tag: number, initials: string): Promise<void>;
}>;

const personOf = (initials: string) => {
  const person = staff.staff.find((one) => one.initials === initials && one.demoPin !== null);
  if (!person?.demoPin) throw new Error(`nobody is ${initials}`);
  return { name: person.name, pin: person.demoPin };
};

/** Another screen of the same shop: a tablet 1280 by 800 that is touched. */
export async function benchHand(shop: BrowserApp): Promise<BenchHand> {
  const page = await shop.anotherScreen(TABLET);
  page.setDefaultTimeout(25_000);
  let touches = 0;
  const touch = async (what: Locator): Promise<void> => {
    touches += 1;
    await what.tap();
  };
  const button = (name: string | RegExp): Locator =>
    page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).first();
  const tap = (name: string | RegExp): Promise<void> => touch(button(name));
  const lay = async (operation: string): Promise<void> => {
    const row = button(new RegExp(`^${operation}`, 'i'));
    await row.waitFor();
    if ((await row.getAttribute('aria-expanded')) !== 'true') await touch(row);
  };
  const who = page.getByRole('banner').locator('button[aria-expanded]');
  const asked = page.getByRole('heading', { name: 'Who works here now?' });
  /** From whoever works here: one touch to somebody signed in today, else to the names. */
  const leaveTo = async (name: string): Promise<void> => {
    await touch(who);
    const here = page.getByRole('region', { name: 'Who works here' }).getByRole('button', { name });
    await tap((await here.isVisible()) ? name : 'Somebody else');
    await asked.or(who.getByText(name)).first().waitFor();
  };
  const changeTo = async ({ name, pin }: ReturnType<typeof personOf>): Promise<void> => {
    await asked.or(who).first().waitFor();
    if (await who.isVisible()) {
      if (((await who.textContent()) ?? '').includes(name)) return;
      await leaveTo(name);
    }
    if (await asked.isVisible()) {
      await tap(new RegExp(name));
      const signIn = button('Sign in');
      await signIn.or(who.getByText(name)).first().waitFor();
      if (await signIn.isVisible()) {
        for (const digit of pin) await tap(digit);
        await tap('Sign in');
      }
    }
    await who.getByText(name).waitFor();
  };
  return {
    page,
    count: () => {
      const touched = touches;
      touches = 0;
      return touched;
    },
    touch,
    tap,
    as: (initials) => changeTo(personOf(initials)),
    async morning(initials) {
      await page.reload();
      await changeTo(personOf(initials));
    },
    async open(tag) {
      await touch(page.getByRole('textbox', { name: /^Find/ }));
      await page.keyboard.type(String(tag));
      await touch(
        page
          .locator('[data-find-results] [data-row]')
          .filter({ hasText: String(tag) })
          .first(),
      );
      await page.getByRole('heading', { name: 'Operations' }).waitFor();
    },
    lay,
    async reading(text, place) {
      await page
        .getByRole('textbox', typeof place === 'string' ? { name: place, exact: true } : { name: place })
        .waitFor();
      for (const key of text) await tap(key === '.' ? 'decimal point' : key === '-' ? 'minus' : key);
      await tap('Next');
    },
    async cell(row, column) {
      const heads = await page.getByRole('columnheader').allTextContents();
      const cells = page
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name: row }) })
        .first();
      const at = heads.filter((head) => /\d/.test(head)).indexOf(column);
      // A table of one place has no names across.
      await touch(cells.getByRole('cell').nth(Math.max(0, at)));
    },
    async rowReads(row, texts) {
      const cells = page
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name: row }) })
        .first()
        .getByRole('cell');
      await expect
        .poll(async () => (await cells.allInnerTexts()).slice(0, texts.length).map(figureOf), {
          timeout: 20_000,
        })
        .toEqual(texts);
    },
    async gauge(name) {
      await tap('Gauge, paper');
      await tap(new RegExp(`^${name}`));
      await tap('Back to readings');
    },
    async inTable(table, what) {
      await touch(page.getByRole('link', { name: table, exact: true }));
      await page.getByRole('link', { name: 'Back to casting' }).waitFor();
      await what();
      await touch(page.getByRole('link', { name: 'Back to casting' }));
    },
    async work(operation, [from, until], between) {
      shop.at(from);
      await lay(operation);
      await button('Start').waitFor();
      const before = touches;
      await tap('Start');
      await button('Stop').waitFor();
      await between?.();
      shop.at(until);
      await tap('Done');
      if (!between) expect(touches - before).toBe(2);
      await button(new RegExp(`^${operation}.*done`, 'i')).waitFor();
    },
    async offBeforeWash(wash) {
      await lay(wash);
      await page
        .getByRole('button', { name: /(Stop|Start|Not needed)$/ })
        .first()
        .waitFor();
      const offs = page.getByRole('button', { name: / is off$/ });
      for (let left = await offs.count(); left > 0; left -= 1) {
        await touch(offs.first());
        await expect.poll(() => offs.count()).toBe(left - 1);
      }
    },
    async signOff(tag, initials) {
      const { name, pin } = personOf(initials);
      await touch(page.getByRole('link', { name: 'Sign off' }));
      await page.getByText('Nothing stops the signature.').waitFor();
      await shop.checkAccess(page);
      await tap(name);
      await touch(page.getByRole('textbox', { name: 'PIN' }));
      await page.keyboard.type(pin);
      await tap(`Sign ${tag}`);
      await page.getByText(`${name} signed`).waitFor();
    },
  };
}

/** What stands in a cell, in one line, without the word of its mark that is spoken beside a figure. */
const figureOf = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^([\d.]+) (pass|too .+|not enough)$/, '$1');
