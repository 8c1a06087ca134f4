/**
 * A head that comes at 07:40 and goes home at 16:45 of the same day: the desk by keyboard alone, the bench by touch.
 *
 * Figures are the practice shop's own (demo-data/expected.json), a baseline; the trade's formulas are checked elsewhere.
 */
import { afterAll, describe, expect, it } from 'vitest';
import expected from '#demo-data/expected.json' with { type: 'json' };
import { closeBrowser } from '#tests/kit/browser-app.ts';
import { codesOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';
import { type BenchHand, benchHand } from './bench-steps.ts';
import {
  addPart,
  type Desk,
  findTicket,
  issueInvoice,
  openDesk,
  putAway,
  release,
  sendEstimate,
  signInAtDesk,
  takeYes,
  tell,
} from './desk-work.ts';
import { shownPaper } from './shown-paper.ts';
import { fitShims } from './spring-table.ts';

const STORY = expected.stories.S01;
const TAG = 41_170;
const at = (time: string): string => `2027-03-02 ${time}`;

afterAll(closeBrowser);

describe.skipIf(lacks('chromium'))('a head in and out in one day', () => {
  it('goes from the empty find box to the release', { timeout: 180_000 }, async () => {
    const desk = await openDesk(at('07:30'), STORY);
    const { shop } = desk;

    await signInAtDesk(desk, 'Teodor Vaskelund', '740102');
    await shop.page.getByText('Nothing is promised today.').first().waitFor();
    await shop.checkAccess();
    shop.at(at('07:40'));
    await checkIn(desk);
    await agree(desk);

    const bench = await benchHand(shop);
    await stripAndWash(desk, bench);
    await crackAndGuides(desk, bench);
    await springs(desk, bench);
    await findTicket(desk, STORY.ticket);
    await addPart(desk, 'spring shim, inch sizes', 6);
    shop.at(at('15:45'));
    await bench.signOff(TAG, 'OB');
    await goHome(desk);
    await shop.end();
  });
});

async function checkIn({ shop, hand }: Desk): Promise<void> {
  const { page } = shop;
  hand.count();
  await hand.press('Control+f');
  await hand.type('0110');
  await page.getByText('Annelore Fisk-Tarrow').first().waitFor();
  await shop.checkAccess();
  await hand.press('Alt+n');
  // From the caller's number to the page that takes the castings in, without a mouse.
  expect(hand.count()).toBeLessThanOrEqual(10);
  await expect.poll(() => page.getByRole('combobox', { name: /Customer/ }).inputValue()).toBe('Annelore Fisk-Tarrow');
  await hand.write('What they said', 'loses power up hill; wants the old parts back');
  await hand.write('Use', 'road, classic saloon');
  await hand.write('Fuel', 'petrol');
  await hand.choose('Gasket', 'compos.');
  await hand.choose('Old parts', 'return');
  await hand.press('Alt+Shift+N');
  await hand.pick('Casting type', 'LO-4', 'LO-4');
  await hand.choose('Metal', 'Iron');
  await hand.choose('Side', 'single');
  await hand.write('Casting no., ? where unreadable', '71K-0417');
  await hand.write('Tag, if stamped before', String(TAG));
  await hand.write('Their own marks', 'blue paint F at the front');
  await hand.tick('came assembled');
  await hand.push('All the rest as listed');
  await hand.push('Bags and trays of this casting: add one');
  await hand.choose('Kept in', 'box');
  await hand.write('What is inside', 'rocker shaft and bolts');
  await hand.write('How many', '9');
  await hand.pick('A condition, for the whole casting', 'gasket', 'burn marks at gasket');
  await hand.write('Words about burn marks at gasket', 'between 2 and 3');
  await hand.pick('Work asked for', 'valve job', 'valve job');
  await hand.pick('Work asked for', 'magnetic', 'mag check');
  for (const { amount } of STORY.labourLines) await page.getByText(amount, { exact: true }).first().waitFor();
  await hand.write('Promise, day', '');
  await hand.type('03022027');
  await hand.write('at', '16:30');
  await hand.choose('Signed for what was left', 'on paper');
  await shop.checkAccess();
  await hand.press('Control+Enter');
  // The whole pile is drawn and seen before it is printed.
  const claim = await shownPaper(page, /Claim ticket/);
  expect(textOf(claim)).toContain(STORY.ticket);
  await page.getByRole('button', { name: /^Traveller 41170, revision 1/ }).waitFor();
  await page
    .getByRole('button', { name: /^Casting tags/ })
    .first()
    .waitFor();
  await page.getByRole('button', { name: /^Bag tags/ }).waitFor();
  await shop.checkAccess();
  await hand.press('Escape');
  await page.getByRole('heading', { name: `Ticket ${STORY.ticket}` }).waitFor();
}

async function agree(desk: Desk): Promise<void> {
  const { shop, hand } = desk;
  await addPart(desk, 'stem seal, inch', 8);
  shop.at(at('07:52'));
  await shop.checkAccess();
  await sendEstimate(desk, STORY.estimate.total);
  await takeYes(desk, 'Yes, go ahead.');
  await hand.press('Control+p');
  await hand.push(/^Claim ticket.*draw it/);
  const claim = await shownPaper(shop.page, /Claim ticket.*2/);
  const words = textOf(claim);
  for (const figure of [STORY.estimate.total, 'Annelore Fisk-Tarrow', '41170', 'rocker shaft and bolts', '16:30']) {
    expect(words).toContain(figure);
  }
  expect(codesOf(claim)[0]).toContain(`BT T${STORY.ticket}`);
}

async function stripAndWash({ shop }: Desk, bench: BenchHand): Promise<void> {
  const { page } = bench;
  await bench.as('JP');
  await shop.checkAccess(page);
  await bench.open(TAG);
  await bench.lay('Strip head');
  await bench.tap('Tag it and take the photos');
  await bench.work('Strip head', [at('08:00'), at('08:20')]);
  await bench.lay('Hot tank');
  await bench.tap('Confirm the metal');
  await shop.checkAccess(page);
  await bench.touch(page.getByRole('radio', { name: 'Iron' }));
  await bench.tap('stem seals is off');
  await bench.work('Hot tank', [at('08:25'), at('09:40')]);
}

async function crackAndGuides({ shop }: Desk, bench: BenchHand): Promise<void> {
  const { page } = bench;
  await bench.as('DK');
  await bench.work('Mag check', [at('09:50'), at('10:10')], async () => {
    await bench.tap('none found');
    await page.getByRole('button', { name: 'none found', pressed: true }).waitFor();
    await shop.checkAccess(page);
  });
  await bench.as('SO');
  await bench.work('Guide check', [at('10:15'), at('10:30')], () =>
    bench.inTable('Guides and stems', async () => {
      await bench.gauge('G08');
      await bench.cell('Guide inside, middle', '1E');
      for (const { valve, guideWorst } of STORY.guides) await bench.reading(guideWorst, `${valve}, guide inside`);
      await bench.gauge('G02');
      await bench.cell('Valve stem', '1E');
      for (const { valve, stem } of STORY.guides) await bench.reading(stem, `${valve}, valve stem`);
      await bench.rowReads(
        'Stem in guide',
        STORY.guides.map(({ clearance }) => clearance),
      );
      await shop.checkAccess(page);
    }),
  );
  await bench.work('Cut seats', [at('10:35'), at('11:30')]);
  await bench.work('Grind valves', [at('11:35'), at('12:00')]);
}

async function springs({ shop }: Desk, bench: BenchHand): Promise<void> {
  const { page } = bench;
  const { valves } = STORY.shims;
  await bench.work('Heights and shims', [at('12:35'), at('13:10')], () =>
    bench.inTable('Installed height', async () => {
      await bench.gauge('G09');
      for (const { valve, measured } of valves) await bench.reading(measured, `${valve}, height read`);
      await fitShims(bench, STORY.shims);
      await shop.checkAccess(page);
    }),
  );
  await bench.work('Assemble head', [at('13:30'), at('15:00')]);
  await bench.work('Vacuum test', [at('15:05'), at('15:20')]);
  await shop.checkAccess(page);
}

async function goHome(desk: Desk): Promise<void> {
  const { shop, hand } = desk;
  const { page } = shop;
  shop.at(at('15:50'));
  await putAway(desk, [String(TAG), `${TAG}-A`], 'D-2-3');
  await findTicket(desk, STORY.ticket);
  await tell(desk, `Ready, ${STORY.invoice.total} with tax.`);
  await hand.press('Control+p');
  await hand.push(/^Build sheet 41170/);
  const sheet = textOf(await shownPaper(page, /Build sheet/));
  for (const { measured, final, bindClearance } of STORY.shims.valves)
    for (const figure of [measured, final, bindClearance]) expect(sheet).toContain(figure);
  for (const { clearance } of STORY.guides) expect(sheet).toContain(clearance);
  await hand.press('Escape');

  shop.at(at('16:40'));
  const { beforeTax, tax, total, supplies, environmentFee, number } = STORY.invoice;
  await issueInvoice(desk, [beforeTax, tax, total, supplies, environmentFee], number);
  await hand.choose('How they pay', 'Card');
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await page.getByText('Nothing is open on this invoice.').waitFor();
  const receipt = await shownPaper(page, /Receipt/);
  expect(textOf(receipt)).toContain(total);
  expect(codesOf(receipt)[0]).toContain('BT RR101');
  await hand.push('Back');
  await hand.press('Control+p');
  const invoice = await shownPaper(page, /^Invoice/);
  const words = textOf(invoice);
  for (const figure of [number, beforeTax, tax, total, supplies, environmentFee]) expect(words).toContain(figure);
  expect(codesOf(invoice)[0]).toContain(`BT I${number}`);
  await shop.checkAccess();

  await release(desk, { number: STORY.ticket, lines: 2, takenBy: 'Annelore', offered: 'Annelore Fisk-Tarrow' });
  await page.getByText('The ticket reads closed.').waitFor();
  await hand.press('Control+Enter');
  const paper = textOf(await shownPaper(page, /Release/));
  for (const figure of [STORY.ticket, '41170', '41170-A', 'Annelore Fisk-Tarrow']) expect(paper).toContain(figure);
  await shop.checkAccess();
  await hand.press('Control+f');
  await hand.type(STORY.ticket);
  await page.locator('[data-find-results] a[data-row]').filter({ hasText: 'closed' }).waitFor();
  await shop.checkAccess();
}
