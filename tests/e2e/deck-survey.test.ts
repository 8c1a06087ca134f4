/**
 * A deck surveyed on a tablet, by touch and by keyboard, in a real browser on a real host: the figures on the screen are those
 * of the readings by exact mathematics (least distance of two parallel planes, heights over chords and corners).
 */
import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { launchBrowser } from '#tests/kit/browser.ts';
import { lacks } from '#tests/kit/programs.ts';
import { brokenRules, openBenchShop, openTablet, type Shop, type Tablet } from './bench-shop.ts';

const WIDE = [1280, 800] as const;
const SMALL = [1024, 768] as const;
const HEAD = 41_170;
const OTHER = 41_171;
const BLOCK = 41_172;

/** Tenths of a thou over 18 by 6 inches, from the front, intake side first. */
const BOWED = [
  [0, -28, -40, -26, 6],
  [-6, -36, -52, -34, -2],
  [-8, -38, -50, -30, 8],
] as const;
/** As the hand goes: there and back. */
const TYPED = BOWED.flatMap((row, n) => (n % 2 === 0 ? [...row] : row.toReversed()));
const POINTS = TYPED.length;

describe.skipIf(lacks('chromium'))('a deck survey', () => {
  let browser: Browser;
  let shop: Shop;
  const castings = new Map<number, number>();

  beforeAll(async () => {
    [browser, shop] = await Promise.all([launchBrowser(), openBenchShop()]);
    const made = await shop.ask<{ castings: { castingId: number; tagNo: number }[] }>(
      'tickets/check-in-ticket',
      {
        customer: { add: { name: 'Annelore Fisk-Tarrow' } },
        castings: [
          { type: 'NV-8', tagNo: HEAD, material: 'iron_grey', position: 'left' },
          { type: 'NV-8', tagNo: OTHER, material: 'iron_grey', position: 'right' },
          { type: 'NV-8B', tagNo: BLOCK, material: 'iron_grey' },
        ],
        wishes: [],
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

  const surveyOf = (tag: number, face: string | null = null) =>
    shop.ask<DeckSurvey>('readings/get-deck-survey', { casting: castings.get(tag), face }, 'SO');
  const stepsOf = async (tag: number, stage: 'before' | 'after' = 'before') =>
    (await surveyOf(tag))[stage].points.map((point) => point.steps);
  const readOf = async (tag: number, stage: 'before' | 'after' = 'before') =>
    (await stepsOf(tag, stage)).filter((steps) => steps !== '').length;
  const keyOf = (sign: string) => ({ '.': 'decimal point', '-': 'minus' })[sign] ?? sign;

  async function withTablet(size: readonly [number, number], run: (tablet: Tablet) => Promise<void>) {
    const tablet = await openTablet(browser, shop, 'SO', size);
    tablet.page.setDefaultTimeout(10_000);
    try {
      await run(tablet);
      expect(tablet.errors).toEqual([]);
    } finally {
      await tablet.close();
    }
  }
  async function figure({ tap }: Tablet, text: string) {
    for (const sign of text) await tap(keyOf(sign));
    await tap('Next');
  }

  it('typed by touch alone gives the closest planes, three corners, lines, spans and cut (exact mathematics)', async () => {
    await withTablet(WIDE, async (tablet) => {
      const { page, tap, go } = tablet;
      await go(`/bench/tag/${HEAD}/readings`);
      await page.getByRole('link', { name: /^Survey of flatness/ }).tap();
      await page.getByRole('textbox', { name: 'column 1, row 1' }).waitFor();
      await tap('Sizes');
      for (const [name, text] of [
        ['Length', '18.0'],
        ['Width', '6.0'],
        ['Span judged', '9.0'],
      ] as const) {
        await tap(new RegExp(`^${name} `));
        await page.getByRole('textbox', { name, exact: true }).waitFor();
        await figure(tablet, text);
      }
      await tap('Dial grid');
      for (const steps of TYPED) await figure(tablet, String(steps));
      const out = page.getByRole('region', { name: 'Out of flat' });
      await out.getByText('0.0056 in', { exact: true }).waitFor();
      await out.getByText('HOLLOW').waitFor();
      await out.getByText('too much').waitFor();
      // 17 tenths in the worst nine inches, under the three thou of the shop.
      await out.getByText('0.0017').waitFor();
      const lines: Readonly<Record<string, string>> = {
        'Along, intake side': '0.0043',
        'Along, middle': '0.0048',
        'Along, exhaust side': '0.0050',
        'Corner to corner': '0.0056',
        'The other corners': '0.0051',
      };
      for (const [line, gap] of Object.entries(lines)) {
        await page.getByRole('button', { name: `${line} ${gap}` }).waitFor();
      }
      // The other planes stand beside the closest two: 61 tenths on three corners, 58.733 by least squares, said in whole tenths.
      await page.getByRole('listitem').filter({ hasText: 'On three corners 0.0061' }).waitFor();
      await page.getByRole('listitem').filter({ hasText: 'Least squares 0.0059' }).waitFor();
      for (const [place, plane] of [
        ['column 3, row 2', 'lower'],
        ['column 1, row 1', 'upper'],
        ['column 1, row 3', 'upper'],
        ['column 5, row 3', 'upper'],
      ]) {
        await page.getByRole('button', { name: new RegExp(`^${place}, .*touches the ${plane} plane$`) }).waitFor();
      }
      expect(await page.getByRole('button', { name: /touches the/ }).count()).toBe(4);
      const cut = page.getByRole('region', { name: 'How much to cut' });
      await cut.getByRole('row', { name: 'Levelled best 0.0066' }).waitFor();
      await cut.getByText('0.0056').waitFor();
      await cut.getByRole('button', { name: 'Levelled on 3 corners' }).tap();
      // Sixty-one tenths by three corners, and ten for the finish.
      await cut.getByText('0.0061').waitFor();
      await cut.getByRole('row', { name: 'Levelled on 3 corners 0.0071' }).waitFor();
      await tap('Along, exhaust side 0.0050');
      await page.getByRole('img', { name: 'Along, exhaust side: 0.0050 in hollow' }).waitFor();
      expect(await brokenRules(page)).toEqual([]);
      await tap('Evening light');
      expect(await brokenRules(page)).toEqual([]);
    });
    await expect.poll(() => readOf(HEAD)).toBe(POINTS);
    expect(await stepsOf(HEAD)).toContain('\u221252');
  }, 90_000);

  it('leads from the figure to the finding, which stands written', async () => {
    await withTablet(SMALL, async ({ page, tap, go }) => {
      await go(`/bench/tag/${HEAD}/deck`);
      await tap(/^Ask for /);
      await page.getByRole('button', { name: 'deck out of flat', pressed: true }).waitFor();
      const words = await page.getByRole('textbox', { name: 'In words, if need be' }).inputValue();
      expect(words).toContain('Deck 0.0056 in out of flat');
      await tap('Keep it');
      await page.getByRole('heading', { name: 'Kept' }).waitFor();
      await page.getByText('Usual for it: surface head, straighten').waitFor();
    });
  });

  it('keeps the first survey when the face is surveyed again after work', async () => {
    await withTablet(SMALL, async ({ page, tap, go }) => {
      await go(`/bench/tag/${HEAD}/deck`);
      await tap('After work');
      await page.getByRole('textbox', { name: 'column 1, row 1' }).waitFor();
      for (let n = 0; n < POINTS; n += 1) {
        await page.keyboard.type(n % 2 === 0 ? '0' : '2');
        await page.keyboard.press('Enter');
      }
      const out = page.getByRole('region', { name: 'Out of flat' });
      await out.getByText('pass').first().waitFor();
      await out.getByText('Before work: 0.0056').waitFor();
      expect(await brokenRules(page)).toEqual([]);
    });
    await expect.poll(() => readOf(HEAD, 'after')).toBe(POINTS);
    await expect.poll(() => readOf(HEAD)).toBe(POINTS);
  });

  it('keeps what is typed while the host is away, over a reload, and sends each figure once', async () => {
    await withTablet(WIDE, async ({ page, go, errors }) => {
      await go(`/bench/tag/${OTHER}/deck`);
      await page.getByRole('textbox', { name: 'column 1, row 1' }).waitFor();
      await page.route('**/call', (route) => route.abort());
      for (const steps of ['0', '-28', '-40']) {
        await page.keyboard.type(steps);
        await page.keyboard.press('Enter');
      }
      await page.getByRole('button', { name: /^column 3, row 1, \u221240/ }).waitFor();
      await page.getByText('3 readings kept here').waitFor();
      await page.unroute('**/call');
      await page.reload();
      await expect.poll(() => readOf(OTHER)).toBe(3);
      expect((await surveyOf(OTHER)).before.points.every((point) => point.cell.earlier.length === 0)).toBe(true);
      // What the browser said of the lost line.
      errors.length = 0;
    });
  });

  it('undoes the figure it names, and a flip moves places without mirroring a word', async () => {
    await withTablet(SMALL, async (tablet) => {
      const { page, tap, go } = tablet;
      await go(`/bench/tag/${OTHER}/deck`);
      await page.getByRole('textbox', { name: 'column 4, row 1' }).waitFor();
      await figure(tablet, '-26');
      await expect.poll(() => readOf(OTHER)).toBe(4);
      await tap('Undo -26');
      await expect.poll(() => readOf(OTHER)).toBe(3);
      const first = page.getByRole('button', { name: /^column 1, row 1/ });
      const before = await first.boundingBox();
      await tap('Flip');
      const after = await first.boundingBox();
      expect(after?.x).toBeGreaterThan((before?.x ?? 0) + 200);
      expect(after?.y).toBeGreaterThan((before?.y ?? 0) + 40);
      expect(await first.textContent()).toBe('0');
    });
  });

  it('takes feeler gaps on the lines of a block, bank by bank', async () => {
    await withTablet(SMALL, async (tablet) => {
      const { page, tap, go } = tablet;
      await go(`/bench/tag/${BLOCK}/deck`);
      await page.getByRole('link', { name: /^Right deck/ }).tap();
      await page.getByRole('heading', { name: 'Right deck flatness' }).waitFor();
      await tap('Straightedge');
      await page.getByRole('textbox', { name: 'Along, valley side' }).waitFor();
      await tap('middle');
      await figure(tablet, '.002');
      await page.getByRole('textbox', { name: 'Along, middle' }).waitFor();
      await expect.poll(async () => (await surveyOf(BLOCK, 'right-deck')).before.lines[0]?.place.text).toBe('middle');
      // Place and gap are sent one after the other.
      await expect.poll(async () => (await surveyOf(BLOCK, 'right-deck')).before.lines[0]?.cell.value).toBe(50_800);
      expect(await readOf(BLOCK)).toBe(0);
      expect(await brokenRules(page)).toEqual([]);
    });
  });
});
