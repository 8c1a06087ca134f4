/**
 * The bores of a V8 read on a tablet, by touch and by keypad, and bored to one size. Readings are invented; what they make is
 * exact arithmetic: finished size = piston + clearance, boring size = finished size - what is left for the hone.
 */
import type { Page } from '@playwright/test';
import { afterAll, describe, expect, it } from 'vitest';
import { type BrowserApp, closeBrowser, startBrowserApp, TABLET } from '#tests/kit/browser-app.ts';
import { lacks } from '#tests/kit/programs.ts';

const TAG = 30_895;
const POINTS = [
  'thrust, top',
  'thrust, middle',
  'thrust, bottom',
  'pin axis, top',
  'pin axis, middle',
  'pin axis, bottom',
];
/** By cylinder, in inches: thrust axis top, middle, bottom, then pin axis. */
const READ: Readonly<Record<string, readonly string[]>> = {
  1: ['3.9562', '3.9538', '3.9512', '3.9535', '3.9522', '3.9508'],
  2: ['3.9558', '3.9535', '3.9511', '3.9533', '3.9520', '3.9508'],
  3: ['3.9572', '3.9544', '3.9514', '3.9539', '3.9525', '3.9509'],
  4: ['3.9561', '3.9537', '3.9512', '3.9536', '3.9522', '3.9508'],
  5: ['3.9559', '3.9536', '3.9512', '3.9534', '3.9521', '3.9508'],
  6: ['3.9566', '3.9540', '3.9513', '3.9537', '3.9523', '3.9509'],
  7: ['3.9555', '3.9534', '3.9511', '3.9532', '3.9520', '3.9507'],
  8: ['3.9563', '3.9538', '3.9512', '3.9536', '3.9522', '3.9508'],
};
const PISTONS = { '+.010in': '3.9575', '+.020in': '3.9675', '+.030in': '3.9775', '+.040in': '3.9875' };
/** As they lie on the bench: the left bank from the front, then the right one. */
const BENCH_ORDER = ['1', '3', '5', '7', '2', '4', '6', '8'];

type Sheet = Readonly<{
  columns: readonly Readonly<{ label: string }>[];
  rows: readonly Readonly<{
    quantity: string;
    stage: string;
    pointWords: string | null;
    cells: readonly Readonly<{ text: string; word: string }>[];
  }>[];
}>;

afterAll(closeBrowser);

describe.skipIf(lacks('chromium'))('bores of a V8', () => {
  it('are typed in bench order and bored to one size: .020 over, finish 3.9700, bar 3.9660 (exact arithmetic)', {
    timeout: 150_000,
  }, async () => {
    const shop = await startBrowserApp('2027-03-02 08:00');
    const casting = await checkInBlock(shop);
    const page = await shop.anotherScreen(TABLET);
    page.setDefaultTimeout(25_000);
    await signIn(page);
    await page.goto(`${new URL(page.url()).origin}/#/bench/tag/${TAG}/table/bores`);

    await byTouch(page, POINTS[0] ?? '');
    for (const point of POINTS.slice(1)) await byKeypad(page, point);
    const table = () => shop.ask('readings/get-table', { casting, table: 'bores' }, 'DK') as Promise<Sheet>;
    await expect.poll(async () => readIn(await table()), { timeout: 20_000 }).toEqual(READ);
    await judged(page);
    await shop.checkAccess(page);
    await lookedAt(page, shop);

    await page.getByRole('button', { name: 'Oversize', exact: true }).tap();
    await choose(page);
    await shop.checkAccess(page);
    await page.getByRole('button', { name: 'Use .020 over', exact: true }).tap();
    await expect.poll(async () => textsOf(await table(), 'bore-wanted')).toEqual(BENCH_ORDER.map(() => '3.9700'));
    await page.getByText('This size stands already.').waitFor();
    await shop.end();
  });
});

/** The block with what the choice stands on: the engine's standard size, clearance, hone, clean-up, and the pistons in the hand. */
async function checkInBlock(shop: BrowserApp): Promise<number> {
  const made = (await shop.ask(
    'tickets/check-in-ticket',
    {
      customer: { add: { name: 'Beathan Okaforian' } },
      castings: [{ type: 'NV-8B', tagNo: TAG, material: 'iron_grey' }],
      signed: { how: 'on_paper', by: 'Beathan Okaforian' },
    },
    'TV',
  )) as { castings: { castingId: number }[] };
  const casting = made.castings[0]?.castingId ?? 0;
  const limit = (quantity: string, stage: string, target: string) =>
    shop.ask(
      'limits/add-job-limit',
      { casting, quantity, stage, target, unit: 'in', sourceWords: 'sheet that came with the pistons [demo]' },
      'DK',
    );
  await limit('bore', 'before', '3.9500');
  await limit('piston-clearance', 'after', '0.0025');
  await limit('hone-allowance', 'before', '0.0040');
  await limit('clean-up', 'before', '0.0005');
  const rows = Object.entries(PISTONS).map(([point, typed]) => ({
    quantity: 'piston-offered',
    point,
    stage: 'before',
    typed,
    unit: 'in',
  }));
  await shop.ask('readings/add-readings', { casting, rows }, 'DK');
  return casting;
}

async function signIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Dervla Kestane/ }).tap();
  await page.keyboard.type('740105');
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: /Bench/ }).first().waitFor();
}

const figure = (cylinder: string, point: string): string => READ[cylinder]?.[POINTS.indexOf(point)] ?? '';
const placeOf = (page: Page, cylinder: string) => page.getByRole('textbox', { name: `${cylinder}, bore`, exact: true });

/** A whole row on the number pad, digits only: the point is set by the program and shown before the figure is kept. */
async function byTouch(page: Page, point: string): Promise<void> {
  const pad = page.getByRole('group', { name: 'Number pad' });
  for (const cylinder of BENCH_ORDER) {
    await placeOf(page, cylinder).waitFor();
    for (const digit of figure(cylinder, point).replace('.', '')) {
      await pad.getByRole('button', { name: digit, exact: true }).tap();
    }
    await page.getByText(`= ${figure(cylinder, point)} in`).waitFor();
    await pad.getByRole('button', { name: 'Next', exact: true }).tap();
  }
}

/** A whole row as a keypad or a gauge types it. */
async function byKeypad(page: Page, point: string): Promise<void> {
  for (const cylinder of BENCH_ORDER) {
    await page.keyboard.type(figure(cylinder, point));
    await page.keyboard.press('Enter');
  }
}

/** Taper at most .005, out of round at most .003 as the engine's sheet has them: exact differences of the readings. */
async function judged(page: Page): Promise<void> {
  const row = (name: string) => page.getByRole('row').filter({ has: page.getByRole('rowheader', { name }) });
  const marks = async (name: string) => (await row(name).first().getByRole('cell').allInnerTexts()).slice(0, 8);
  const squeezed = (texts: readonly string[]) => texts.map((text) => text.replace(/\s+/g, ' ').trim());
  expect(squeezed(await marks('taper'))).toEqual([
    '0.0050 pass',
    '0.0058 too much',
    '0.0047 pass',
    '0.0044 pass',
    '0.0047 pass',
    '0.0049 pass',
    '0.0053 too much',
    '0.0051 too much',
  ]);
  expect(squeezed(await marks('out of round'))[1]).toBe('0.0033 too much');
  expect(squeezed(await marks('wear'))[1]).toContain('0.0072');
}

/** The bore cut open, and taper as bars, told in words to whoever cannot see them. */
async function lookedAt(page: Page, shop: BrowserApp): Promise<void> {
  await page.getByRole('table').getByRole('button', { name: '3', exact: true }).tap();
  await page.getByRole('button', { name: 'Picture', exact: true }).tap();
  await page.getByRole('button', { name: 'Bore before work', exact: true }).tap();
  await page.getByRole('img', { name: /^cylinder 3, Bore before work: thrust top 3\.9572, middle 3\.9544/ }).waitFor();
  await page.getByRole('button', { name: 'Taper before', exact: true }).tap();
  await page.getByRole('img', { name: /^taper: 1 0\.0050 pass, 3 0\.0058 too much/ }).waitFor();
  await shop.checkAccess(page);
}

async function choose(page: Page): Promise<void> {
  const cells = (over: string) =>
    page
      .getByRole('row')
      .filter({ has: page.getByRole('button', { name: over, exact: true }) })
      .getByRole('cell');
  await expect
    .poll(() => cells('.020').allInnerTexts())
    .toEqual(['3.9675', '3.9660', '3.9700', 'cleans up', 'cleans up']);
  expect(await cells('.010').allInnerTexts()).toEqual(['3.9575', '3.9560', '3.9600', 'not enough', 'not enough']);
  await page.getByRole('button', { name: 'Centred on wear needs 3.9577' }).waitFor();
  await page.getByRole('button', { name: 'Kept on centre needs 3.9649' }).waitFor();
  const result = page.getByRole('region', { name: 'Finished size' });
  await result.getByText('3.9700').waitFor();
  await result.getByText('100.838 mm, .020 in over').waitFor();
  await result
    .getByText('Bore to 3.9660, hone the last 0.0040. Largest reading 3.9572: cylinder 3, thrust, top.')
    .waitFor();
}

const textsOf = (sheet: Sheet, quantity: string): string[] =>
  sheet.rows.find((row) => row.quantity === quantity)?.cells.map((cell) => cell.text) ?? [];

/** The readings before work by cylinder, in the order of the points. */
function readIn(sheet: Sheet): Record<string, string[]> {
  const rows = POINTS.map((point) =>
    sheet.rows.find((row) => row.quantity === 'bore' && row.stage === 'before' && row.pointWords === point),
  );
  return Object.fromEntries(
    sheet.columns.map((column, n) => [column.label, rows.map((row) => row?.cells[n]?.text ?? '')]),
  );
}
