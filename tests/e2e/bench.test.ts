/**
 * The bench on a tablet, by touch and by keyboard, in a real browser on a real host. Figures of the springs are the baseline of
 * the practice shop's stories (demo-data/expected.json), checked against the trade's formulas elsewhere.
 */
import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import expected from '#demo-data/expected.json' with { type: 'json' };
import { launchBrowser } from '#tests/kit/browser.ts';
import { lacks } from '#tests/kit/programs.ts';
import { brokenRules, openBenchShop, openTablet, type Shop, type Tablet } from './bench-shop.ts';

const WIDE = [1280, 800] as const;
const SMALL = [1024, 768] as const;
/** 15 mm on a 10.1 in 1280 x 800 and a 9.7 in 1024 x 768 tablet, in CSS pixels (computed from their pixels an inch). */
const TARGET = { wide: 88, small: 78 } as const;
const IRON = 41_170;
const ALUMINIUM = 41_304;
const TWIN_CAM = 41_310;

type Cell = { text: string; word: string; earlier: { text: string }[]; reading: { typed: string } | null };
type Sheet = {
  rows: { quantity: string; cells: Cell[] }[];
  columns: { label: string; word: string }[];
  pickingText: string;
};

describe.skipIf(lacks('chromium'))('the bench', () => {
  let browser: Browser;
  let shop: Shop;
  const castings = new Map<number, number>();

  beforeAll(async () => {
    [browser, shop] = await Promise.all([launchBrowser(), openBenchShop()]);
    const [customer] = (
      await shop.ask<{ customers: { customerId: number }[] }>('customers/find-customer', { text: 'Fisk' }, 'TV')
    ).customers;
    const made = await shop.ask<{ castings: { castingId: number; tagNo: number }[] }>(
      'tickets/check-in-ticket',
      {
        customer: { customerId: customer?.customerId },
        castings: [
          { type: 'LO-4', tagNo: IRON, material: 'iron_grey' },
          { type: 'CF-4', tagNo: ALUMINIUM, material: 'aluminium' },
          { type: 'TW-4', tagNo: TWIN_CAM, material: 'aluminium' },
        ],
        wishes: [{ package: 'valve-job' }],
        ceiling: {
          amount: 900_000,
          taxIn: false,
          saidBy: 'Annelore Fisk-Tarrow',
          words: 'go ahead',
          overrideWhy: 'known',
        },
        signed: { how: 'on_paper', by: 'Annelore Fisk-Tarrow' },
      },
      'TV',
    );
    for (const one of made.castings) castings.set(one.tagNo, one.castingId);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  const heights = (tag: number) =>
    shop.ask<Sheet>('readings/get-table', { casting: castings.get(tag), table: 'heights' }, 'SO');
  const textOf = (sheet: Sheet, quantity: string): string[] =>
    sheet.rows.find((row) => row.quantity === quantity)?.cells.map((cell) => cell.text) ?? [];
  const kept = async (tag: number, count: number) => {
    await expect
      .poll(async () => textOf(await heights(tag), 'installed-height').filter((text) => text !== '').length)
      .toBe(count);
  };
  const padKey = (digit: string) => (digit === '.' ? 'decimal point' : digit);

  async function withTablet(initials: string, size: readonly [number, number], run: (tablet: Tablet) => Promise<void>) {
    const tablet = await openTablet(browser, shop, initials, size);
    try {
      await run(tablet);
    } finally {
      await tablet.close();
    }
    return tablet;
  }

  it('starts and ends an operation in two touches, after saying what is missing and the way on', async () => {
    await withTablet('SO', WIDE, async ({ page, tap, go, errors }) => {
      await go(`/bench/tag/${IRON}`);
      await tap(/^Strip head/i);
      await page.getByText('Put the tag on and take the arrival photos first.').waitFor();
      expect(await page.getByRole('button', { name: 'Start', exact: true }).count()).toBe(0);
      await tap('Tag it and take the photos');
      await tap('Start');
      await tap('Done');
      await page.getByRole('button', { name: /Strip head.*done SO/i }).waitFor();
      expect(await brokenRules(page)).toEqual([]);
      expect(errors).toEqual([]);
    });
  });

  it('takes all heights of a head by touch, with shims, loads and verdicts of the story', async () => {
    const story = expected.stories.S01.shims;
    await withTablet('SO', WIDE, async ({ page, tap, go, errors }) => {
      await go(`/bench/tag/${IRON}/table/heights`);
      for (const { valve, measured } of story.valves) {
        await page.getByRole('textbox', { name: `${valve}, height read` }).waitFor();
        for (const digit of measured) await tap(padKey(digit));
        await tap('Next');
      }
      await kept(IRON, story.valves.length);
      const sheet = await heights(IRON);
      expect(sheet.columns.map((column) => column.label)).toEqual(story.valves.map((one) => one.valve));
      expect(sheet.columns.map((column) => column.word)).toEqual(story.valves.map((one) => one.verdict));
      expect(textOf(sheet, 'height-with-shim')).toEqual(story.valves.map((one) => one.final));
      expect(textOf(sheet, 'coil-bind-clearance')).toEqual(story.valves.map((one) => one.bindClearance));
      await page.getByText(sheet.pickingText).waitFor();
      expect(await brokenRules(page)).toEqual([]);
      expect(errors).toEqual([]);
    });
  });

  it('takes a head by keyboard as a gauge types, asks about bare digits, corrects, undoes and takes back', async () => {
    const [first, second] = expected.stories.S04.shims.valves;
    if (!first || !second) throw new Error('the story has no valves');
    await withTablet('SO', WIDE, async ({ page, tap, go }) => {
      await go(`/bench/tag/${ALUMINIUM}/table/heights`);
      await page.getByRole('textbox', { name: '1E, height read' }).waitFor();
      await page.keyboard.type('30');
      await page.keyboard.press('Enter');
      await page.getByText('30 can be read more than one way').waitFor();
      await tap('Type again');
      await page.keyboard.type(first.measured);
      await page.keyboard.press('Enter');
      await page.keyboard.type(second.measured);
      await page.keyboard.press('Enter');
      await kept(ALUMINIUM, 2);
      await tap('1E');
      await page.keyboard.type('40.35');
      await page.keyboard.press('Enter');
      await expect.poll(async () => textOf(await heights(ALUMINIUM), 'installed-height')[0]).toBe('40.35');
      const earlier = (await heights(ALUMINIUM)).rows[0]?.cells[0]?.earlier.map((one) => one.text);
      expect(earlier).toEqual([first.measured]);
      await page.locator('s').getByText(first.measured).first().waitFor();
      await tap('Undo 40.35');
      await expect.poll(async () => textOf(await heights(ALUMINIUM), 'installed-height')[0]).toBe(first.measured);
      await tap('1I');
      await tap('Take back');
      await expect.poll(async () => textOf(await heights(ALUMINIUM), 'installed-height')[1]).toBe('');
    });
  });

  it('keeps what is typed while the host is away, over a reload, and sends each figure once', async () => {
    await withTablet('SO', WIDE, async ({ page, go }) => {
      await go(`/bench/tag/${TWIN_CAM}/table/heights`);
      await page.getByRole('textbox', { name: '1I1, height read' }).waitFor();
      await page.route('**/call', (route) => route.abort());
      for (const figure of ['35.62', '35.96']) {
        await page.keyboard.type(figure);
        await page.keyboard.press('Enter');
        await page.getByRole('cell', { name: figure }).first().waitFor();
      }
      await page.getByText('Working on this tablet alone since').waitFor();
      await page.getByText('2 readings kept here').waitFor();
      await page.unroute('**/call');
      await page.reload();
      await kept(TWIN_CAM, 2);
      const cells = (await heights(TWIN_CAM)).rows[0]?.cells ?? [];
      expect(cells.slice(0, 2).map((cell) => [cell.text, cell.earlier.length])).toEqual([
        ['35.62', 0],
        ['35.96', 0],
      ]);
    });
  });

  it('shows one side at a time on a small tablet and says what is wrong on the other', async () => {
    const casting = castings.get(TWIN_CAM);
    await withTablet('SO', SMALL, async ({ page, tap, go }) => {
      await go(`/bench/tag/${TWIN_CAM}/table/heights`);
      await tap('Exhaust side');
      await page.getByRole('textbox', { name: '1E1, height read' }).waitFor();
      expect(await page.getByRole('columnheader', { name: '1I1' }).count()).toBe(0);
      for (const digit of '38.90') await tap(padKey(digit));
      await tap('Next');
      await kept(TWIN_CAM, 3);
      await tap('Intake side');
      await page.getByRole('button', { name: 'Exhaust side 1 too tall' }).waitFor();
      expect(casting).toBeDefined();
      expect(await brokenRules(page)).toEqual([]);
    });
  });

  it('reports a finding with a photo and a hold in at most ten touches', async () => {
    let touches = 0;
    await withTablet('SO', WIDE, async ({ page, go, tap, errors }) => {
      const touch = async (name: string | RegExp) => {
        touches += 1;
        await tap(name);
      };
      await go(`/bench/tag/${TWIN_CAM}`);
      touches += 1;
      await page.getByRole('link', { name: 'Found something' }).tap();
      await touch('crack');
      await touch('valve 3E1');
      const chosen = page.waitForEvent('filechooser');
      touches += 1;
      await page.getByText('Photo', { exact: true }).tap();
      await (await chosen).setFiles({ name: 'crack.png', mimeType: 'image/png', buffer: Buffer.from(PIXEL, 'base64') });
      await page.getByRole('img', { name: 'Taken now, 1' }).waitFor();
      await touch('crack or scrap decision');
      await touch('Keep it and hold');
      await page.getByText(`Found on ${TWIN_CAM}: crack`).waitFor();
      expect(touches).toBeLessThanOrEqual(10);
      expect(await brokenRules(page)).toEqual([]);
      expect(errors).toEqual([]);
    });
    const bench = await shop.ask<{ holds: { reasonWords: string }[]; photos: unknown[] }>(
      'floor/get-bench',
      { tag: TWIN_CAM },
      'SO',
    );
    expect(bench.holds.map((hold) => hold.reasonWords)).toEqual(['crack or scrap decision']);
    expect(bench.photos).toHaveLength(1);
  });

  it.each([
    ['wide', WIDE],
    ['small', SMALL],
  ] as const)('gives every key of the pad 15 mm on a %s tablet', async (name, size) => {
    await withTablet('SO', size, async ({ page, go }) => {
      await go(`/bench/tag/${ALUMINIUM}/table/heights`);
      const pad = page.getByRole('group', { name: 'Number pad' });
      await pad.waitFor();
      for (const key of await pad.getByRole('button').all()) {
        const box = await key.boundingBox();
        // Width counts: the finger comes from below, and a key as tall as the row is never missed upward.
        expect(box?.width).toBeGreaterThanOrEqual(TARGET[name]);
        expect(box?.height).toBeGreaterThanOrEqual(70);
      }
    });
  });

  it('lists what stops a signature and stays shut until it is settled', async () => {
    await withTablet('MN', WIDE, async ({ page, go, errors }) => {
      await go(`/bench/tag/${IRON}/sign-off`);
      await page.getByText('Hot tank', { exact: false }).first().waitFor();
      const sign = page.getByRole('button', { name: `Sign ${IRON}` });
      expect(await sign.getAttribute('aria-disabled')).toBe('true');
      expect(await brokenRules(page)).toEqual([]);
      expect(errors).toEqual([]);
    });
  });
});

/** A picture of one pixel. */
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAoAAAAKCAYAAACNMs+9AAAAFUlEQVR42mNk+M9Qz0AEYBxVSF+FABJADveWkH6oAAAAAElFTkSuQmCC';
