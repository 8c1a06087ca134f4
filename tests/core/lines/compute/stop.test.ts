import { describe, expect, it } from 'vitest';
import { basisPoints, cents } from '#core/kernel/units.ts';
import { NOTHING_EARLIER, priceBill } from '#core/lines/compute/bill.ts';
import { linesIfStopped, optionPrice, type StoppableLine, stoppedPackage } from '#core/lines/compute/stop.ts';
import { billTerms, line, taxOn } from './builders.ts';

const done = { done: 'all', doneAtList: [] } as const;
const untouched = { done: 'none', doneAtList: [] } as const;

describe('stoppedPackage', () => {
  it('costs the done operations at list price', () => {
    expect(stoppedPackage(cents(41500), [5600, 5175].map(cents))).toBe(10775);
  });
  it('never costs more than the package', () => {
    expect(stoppedPackage(cents(41500), [30000, 20000].map(cents))).toBe(41500);
  });
  it('costs nothing before anything is done', () => {
    expect(stoppedPackage(cents(41500), [])).toBe(0);
  });
});

/** Two heads, each: valve job 415.00, dye 46.00, pressure 86.25, cam line 25.00, surface 80.50, seals 22.20. */
const head = (casting: string, progress: readonly StoppableLine['units'][number]['done'][]): StoppableLine[] =>
  [
    line('package', 41500),
    line('operation', 4600),
    line('operation', 8625),
    line('operation', 2500),
    line('operation', 8050),
    line('part', 2220),
  ].map((l, index) => ({
    line: l,
    units: [{ casting, done: progress[index] ?? 'none', doneAtList: index === 0 ? [5600, 5175].map(cents) : [] }],
  }));

describe('linesIfStopped', () => {
  const left = head('left', []);
  const right = head('right', ['some', 'all', 'all']);
  const total = (lines: ReturnType<typeof linesIfStopped>) =>
    priceBill({
      lines,
      washed: 2,
      earlier: NOTHING_EARLIER,
      last: true,
      terms: billTerms({ labourDiscount: basisPoints(1000) }),
    }).figures.beforeTax;

  // Regression baseline: ticket S02 of the practice shop, "stop this head": 874.38 before tax.
  it('finishes the other casting when one stops', () => {
    expect(total(linesIfStopped([...left, ...right], new Set(['right'])))).toBe(87438);
  });

  it('charges only what is done when everything stops', () => {
    const kept = linesIfStopped([...left, ...right], 'everything');
    expect(kept.map((l) => l.amount)).toEqual([10775, 4600, 8625]);
  });

  it('keeps all when nothing stops', () => {
    expect(linesIfStopped(left, new Set())).toEqual(left.map((l) => l.line));
  });

  it('charges a lot by the castings that are done, every cent', () => {
    const lot: StoppableLine = {
      line: line('package', 10000),
      units: [
        { casting: 'a', ...done },
        { casting: 'b', ...untouched },
        { casting: 'c', done: 'some', doneAtList: [cents(1200)] },
      ],
    };
    expect(linesIfStopped([lot], 'everything')[0]?.amount).toBe(3334 + 1200);
    expect(linesIfStopped([lot], new Set(['b']))[0]?.amount).toBe(3334 + 3333);
  });

  it('keeps a free line that was given', () => {
    expect(
      linesIfStopped([{ line: line('text', 0), units: [{ casting: null, ...untouched }] }], 'everything'),
    ).toHaveLength(1);
  });
});

describe('optionPrice', () => {
  // Regression baseline: ticket S02, option (a) 326.72: the supplies cap is used up, the discount is not.
  it('is the ticket with the option minus the ticket without it', () => {
    const ticket = [41500, 4600, 8625, 2500, 8050].flatMap((amount) => [
      line('operation', amount),
      line('operation', amount),
    ]);
    const added = [16500, 2800, 4600, 8625, 2500].map((amount) => line('operation', amount));
    const terms = billTerms({ labourDiscount: basisPoints(1000), taxes: [taxOn('part')] });
    const input = { lines: [...ticket, line('part', 4440)], washed: 2, earlier: NOTHING_EARLIER, last: true, terms };
    const price = optionPrice(input, [...added, line('part', 1150)], 2);
    expect(price.extraBeforeTax).toBe(32672);
    expect(price.with.figures.beforeTax).toBe(159907);
    expect(price.extraWithTax - price.extraBeforeTax).toBe(80);
  });
});
