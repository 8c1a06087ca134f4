/**
 * Two heads of a V six: a crack behind an exhaust seat, the telephone, the yes, and work goes on.
 *
 * The desk by keyboard alone, the bench by touch. Figures are the practice shop's own (demo-data/expected.json), a baseline.
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
  morningAtDesk,
  openDesk,
  sendEstimate,
  shown,
  signInAtDesk,
} from './desk-work.ts';
import { shownPaper } from './shown-paper.ts';

const STORY = expected.stories.S02;
const [LEFT, RIGHT] = [41_234, 41_235];
const TV = ['Teodor Vaskelund', '740102'] as const;
const PICTURE = new URL('../../demo-data/pictures/head.jpg', import.meta.url).pathname;

afterAll(closeBrowser);

describe.skipIf(lacks('chromium'))('a crack and a call', () => {
  it('asks the customer with both stops, writes down the yes and lets work go on', { timeout: 240_000 }, async () => {
    const desk = await openDesk('2027-03-09 08:05', STORY);
    const { shop } = desk;
    await signInAtDesk(desk, ...TV);
    shop.at('2027-03-09 08:10');
    await checkIn(desk);

    const bench = await benchHand(shop);
    await stripAndWash(desk, bench);
    await find(desk, bench);
    await ask(desk);
    await answer(desk);
    await goOn(desk, bench);
    await shop.end();
  });
});

async function checkIn(desk: Desk): Promise<void> {
  const { shop, hand } = desk;
  const { page } = shop;
  await hand.press('Control+f');
  await hand.type('0115');
  await page.getByText('Mudlark Lane Garage Ltd').first().waitFor();
  await hand.press('Alt+n');
  await expect
    .poll(() => page.getByRole('combobox', { name: /Customer/ }).inputValue())
    .toBe('Mudlark Lane Garage Ltd');
  await hand.write('Said by', 'Piet');
  await page.getByRole('option', { name: 'Piet Vandrell' }).waitFor();
  await hand.press('Enter');
  await hand.write('Their order no.', STORY.orderNumber);
  await hand.write('Ceiling without a call', STORY.ceiling);
  await hand.write('What they said', 'overheated while towing; not machined before');
  await hand.write('Use', 'road, tows a boat');
  await hand.choose('Gasket', 'MLS');
  await hand.choose('Old parts', 'discard');
  await hand.press('Alt+Shift+N');
  await hand.pick('Casting type', 'BV-6', 'BV-6');
  await hand.choose('Metal', 'Aluminium');
  await hand.tick(/magnet held/);
  await hand.choose('Side', 'left');
  await hand.write('Tag, if stamped before', String(LEFT));
  await hand.write('Their own marks', 'paint L');
  await hand.tick('came assembled');
  await hand.push('All the rest as listed');
  // The other one of the engine at a stroke: same type and metal, the other side, its own tag and count.
  await hand.push('The other of the pair');
  await page.getByRole('heading', { name: 'Head 2 of 2, right' }).waitFor();
  await hand.write('Tag, if stamped before', String(RIGHT));
  await hand.write('Their own marks', 'paint R');
  await hand.push('All the rest as listed');
  for (const words of ['valve job', 'dye check', 'pressure test', 'cam line check', 'surface head'])
    await hand.pick('Work asked for', words, words);
  const bill = page.getByRole('table').filter({ hasText: 'Price of the day' });
  await bill.getByText(`−${STORY.estimate.labourDiscount}`).waitFor();
  expect(await bill.textContent()).toContain('1,227.95');
  await hand.write('Promise, day', '');
  await hand.type('03112027');
  await hand.write('at', '16:30');
  await hand.write('It depends on', 'if no cracks are found');
  await hand.choose('Signed for what was left', 'on paper');
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await shownPaper(page, /Claim ticket/);
  await hand.press('Escape');
  await page.getByRole('heading', { name: `Ticket ${STORY.ticket}` }).waitFor();
  await addPart(desk, 'stem seal, metric', 12);
  await hand.push(new RegExp(`^${RIGHT}, aluminium`));
  await addPart(desk, 'stem seal, metric', 12);
  shop.at('2027-03-09 08:30');
  await sendEstimate(desk, STORY.estimate.total);
  await page.getByText(shown(STORY.estimate.beforeTax)).first().waitFor();
  // The ceiling covers it: nobody has to be rung, and nothing waits for an answer.
  await page.getByText('ready to start').first().waitFor();
  await page.getByText(shown(STORY.ceiling)).first().waitFor();
  await shop.checkAccess();
}

async function stripAndWash({ shop }: Desk, bench: BenchHand): Promise<void> {
  shop.at('2027-03-09 09:00');
  await bench.as('JP');
  await bench.open(RIGHT);
  await bench.page.getByText('6E2', { exact: true }).first().waitFor();
  await bench.lay('Strip head');
  await bench.tap('Tag it and take the photos');
  await bench.work('Strip head', ['2027-03-09 10:05', '2027-03-09 11:05']);
  await bench.offBeforeWash('Alu wash');
  await bench.work('Alu wash', ['2027-03-09 14:15', '2027-03-09 15:25']);
  shop.at('2027-03-10 08:30');
  await bench.morning('DK');
  await bench.work('Dye check', ['2027-03-10 08:35', '2027-03-10 09:05'], () => bench.tap('none found'));
}

/** Wednesday 10:40: what was found, where, a photo and the hold, in at most ten touches. */
async function find({ shop }: Desk, bench: BenchHand): Promise<void> {
  const { page } = bench;
  shop.at('2027-03-10 10:00');
  await bench.lay('Pressure test');
  await bench.tap('Start');
  await bench.tap('crack found');
  await page.getByRole('button', { name: 'crack found', pressed: true }).waitFor();
  shop.at('2027-03-10 10:40');
  bench.count();
  await bench.touch(page.getByRole('link', { name: 'Found something' }));
  await bench.tap('crack');
  await bench.tap('valve 6E2');
  const chosen = page.waitForEvent('filechooser');
  await bench.touch(page.getByText('Photo', { exact: true }));
  await (await chosen).setFiles(PICTURE);
  await page.getByRole('img', { name: 'Taken now, 1' }).waitFor();
  await bench.tap("waiting customer's answer");
  await bench.tap('Keep it and hold');
  await page.getByText(`Found on ${RIGHT}: crack`).waitFor();
  expect(bench.count()).toBeLessThanOrEqual(10);
  await shop.checkAccess(page);
  await bench.touch(page.getByRole('link', { name: `Back to ${RIGHT}` }));
  shop.at('2027-03-10 10:42');
  await bench.lay('Pressure test');
  await bench.tap('Done');
  await page.getByRole('button', { name: /^Pressure test.*done DK/i }).waitFor();
  await page
    .getByText(/customer's answer/)
    .first()
    .waitFor();
}

/** 11:05: the question with its ways and both stops. */
async function ask(desk: Desk): Promise<void> {
  const { shop, hand } = desk;
  const { page } = shop;
  shop.at('2027-03-10 11:05');
  await morningAtDesk(desk, ...TV);
  await findTicket(desk, STORY.ticket);
  await hand.push(`Ask them about ${RIGHT}`);
  await page.getByRole('heading', { name: 'What was found' }).waitFor();
  await hand.write(
    'In words for the customer',
    'A crack runs from the exhaust seat of cylinder 6, rear, into the water.',
  );
  const [work] = STORY.addedWork.options;
  await hand.write('In plain words', work?.words ?? '');
  for (const words of ['weld', 'seat insert', 'dye check', 'pressure re-test', 'cam line check'])
    await hand.pick('Work asked for', words, words);
  await hand.write('Hours of weld', '1.5');
  await hand.write('How many seat insert', '1');
  await hand.pick('Work asked for', 'exhaust seat insert', 'exhaust seat insert, hard');
  await page.getByText(`${STORY.addedWork.options[0]?.price} more`).waitFor();
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await page.getByRole('heading', { name: `Added work ${STORY.addedWork.number}` }).waitFor();
  for (const figure of ['326.72', shown(STORY.addedWork.newTotalBeforeTax), '874.38'])
    await page.getByText(figure).first().waitFor();
  await shop.checkAccess();
}

/** 11:20: the telephone. */
async function answer(desk: Desk): Promise<void> {
  const { shop, hand } = desk;
  const { page } = shop;
  shop.at('2027-03-10 11:20');
  await hand.choose('How they answered', 'Phone');
  await hand.pick('Who answered', 'Ysolde', 'Ysolde Kerrow');
  await hand.write('In their words', 'Yes to a. Weld it.');
  await hand.press('Control+Enter');
  await page.getByText('answered: yes').waitFor();
  await shop.checkAccess();
  await hand.press('Control+p');
  await hand.push(/^Added work/);
  const paper = await shownPaper(page, /Added work/);
  const words = textOf(paper);
  for (const figure of ['326.72', '874.38', STORY.addedWork.number]) expect(words).toContain(figure);
  expect(codesOf(paper)[0]).toContain(`BT A${STORY.addedWork.number}`);
  await hand.press('Escape');
  await page.getByRole('heading', { name: `Ticket ${STORY.ticket}` }).waitFor();
  await page.getByText(shown(STORY.addedWork.authorisedAfter)).first().waitFor();
  await hand.push('Change');
  await page.getByRole('heading', { name: 'Change the promise' }).waitFor();
  await hand.write('Day', '');
  await hand.type('03162027');
  await hand.write('At (empty: the usual hour)', '16:30');
  await hand.choose('Why it changes', 'found more');
  await hand.write('In words', 'crack, weld and test again');
  await shop.checkAccess();
  await hand.press('Control+Enter');
  await page.getByRole('heading', { name: 'Change the promise' }).waitFor({ state: 'detached' });
  await page.getByText('Tue 16 Mar 16:30').first().waitFor();
}

async function goOn({ shop }: Desk, bench: BenchHand): Promise<void> {
  const { page } = bench;
  // The yes has closed the hold, and the tablet says that the printed traveller is out of date.
  await page.getByText(/Paper is revision 1, now 2/).waitFor();
  expect(await page.getByRole('button', { name: 'Close the hold' }).count()).toBe(0);
  await page.getByText('Tue 16 Mar 16:30').first().waitFor();
  shop.at('2027-03-11 08:00');
  await bench.morning('EF');
  await bench.work('Weld', ['2027-03-11 08:00', '2027-03-11 09:30']);
  await shop.checkAccess(page);
}
