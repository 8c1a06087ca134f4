/**
 * A table of twelve rows across sixteen valves, typed with a keypad alone (digits, point and Enter) and with the number pad of
 * the screen alone, in the order of the bench.
 * Figures are invented and each is different, so that one in a wrong place is seen.
 */
import type { Page } from '@playwright/test';
import { afterAll, describe, expect, it } from 'vitest';
import { type BrowserApp, closeBrowser, startBrowserApp, TABLET } from '#tests/kit/browser-app.ts';
import { lacks } from '#tests/kit/programs.ts';

const TAG = 30_921;
const TABLE = 'seats';
const ROWS = 12;

type Row = Readonly<{
  key: string;
  quantity: string;
  point: string | null;
  stage: string;
  shown: boolean;
  derived: boolean;
  family: string;
  unit: string | null;
  unitMark: string;
  decimals: number;
  cells: readonly Readonly<{ text: string; reading: unknown }>[];
}>;
type Sheet = Readonly<{ columns: readonly Readonly<{ label: string }>[]; rows: readonly Row[] }>;

const HANDS = [
  {
    alone: 'a keypad',
    async take(page: Page, typed: string) {
      await page.keyboard.type(typed);
      await page.keyboard.press('Enter');
    },
  },
  {
    alone: 'the number pad',
    async take(page: Page, typed: string) {
      for (const key of [...typed, 'Next'])
        await page
          .getByRole('button', { name: key === '.' ? 'decimal point' : key, exact: true })
          .first()
          .tap();
    },
  },
];

afterAll(closeBrowser);

describe.skipIf(lacks('chromium'))('a long table', () => {
  it.each(HANDS)(
    'takes twelve rows of sixteen valves from $alone alone, each figure in its place',
    {
      timeout: 300_000,
    },
    async ({ take }) => {
      const shop = await startBrowserApp('2027-03-02 08:00');
      const casting = await checkInHead(shop);
      const sheet = () => shop.ask('readings/get-table', { casting, table: TABLE }, 'DK') as Promise<Sheet>;
      const rows = await showTwelve(shop, casting, await sheet());
      const page = await shop.anotherScreen(TABLET);
      page.setDefaultTimeout(25_000);
      await signIn(page);
      await page.goto(`${new URL(page.url()).origin}/#/bench/tag/${TAG}/table/${TABLE}`);
      await page.getByRole('textbox', { name: /^1I1,/ }).waitFor();

      for (const [n, row] of rows.entries()) {
        const current = page.locator('tr[data-current]');
        await expect.poll(() => current.isVisible()).toBe(true);
        expect(await inSight(page)).toBe(true);
        for (let valve = 0; valve < 16; valve += 1) {
          await take(page, figure(row, n, valve));
        }
      }
      const kept = async () =>
        (await sheet()).rows
          .filter((row) => rows.some((one) => one.key === row.key))
          .map((row) => row.cells.map((cell) => cell.text));
      await expect
        .poll(kept, { timeout: 60_000, interval: 500 })
        .toEqual(rows.map((row, n) => row.cells.map((_, valve) => figure(row, n, valve))));
      await shop.checkAccess(page);
      await shop.end();
    },
  );
});

/** A figure that no question is asked about: runout in hundredths, sizes past one; the digits tell row and valve. */
function figure(row: Row, n: number, valve: number): string {
  const place = String(valve + 1).padStart(2, '0');
  return `${row.quantity.endsWith('runout') ? 0 : 1}.${n % 9}${place}`;
}

async function checkInHead(shop: BrowserApp): Promise<number> {
  const made = (await shop.ask(
    'tickets/check-in-ticket',
    {
      customer: { add: { name: 'Beathan Okaforian' } },
      castings: [{ type: 'TW-4', tagNo: TAG, material: 'aluminium' }],
      signed: { how: 'on_paper', by: 'Beathan Okaforian' },
    },
    'TV',
  )) as { castings: { castingId: number }[] };
  return made.castings[0]?.castingId ?? 0;
}

/** Rows of figures that are typed: twelve are switched on for this casting, all others off. */
async function showTwelve(shop: BrowserApp, casting: number, sheet: Sheet): Promise<Row[]> {
  const typed = sheet.rows.filter((row) => !row.derived && row.family !== 'choice' && row.family !== 'text');
  // One stage of what is read twice: the screen shows one at a time.
  const once = typed.filter((row, n) => typed.findIndex((one) => one.quantity === row.quantity) === n);
  const wanted = once.slice(0, ROWS);
  expect(wanted).toHaveLength(ROWS);
  for (const row of sheet.rows) {
    const shown = wanted.includes(row) || row.derived;
    if (row.shown === shown) continue;
    const { quantity, point, stage } = row;
    await shop.ask('readings/show-row', { casting, table: TABLE, quantity, point, stage, shown }, 'DK');
  }
  return wanted;
}

async function signIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Dervla Kestane/ }).tap();
  await page.keyboard.type('740105');
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: /Bench/ }).first().waitFor();
}

/** The row at hand lies whole between the heads and the verdicts. */
const inSight = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const row = document.querySelector('tr[data-current]')?.getBoundingClientRect();
    const head = document.querySelector('thead')?.getBoundingClientRect();
    const foot = document.querySelector('tbody tr:last-child')?.getBoundingClientRect();
    return Boolean(row && head && foot && row.top >= head.bottom - 2 && row.bottom <= foot.top + 2);
  });
