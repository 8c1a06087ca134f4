/**
 * What the customer pays when work is stopped: what is done and ordered so far, and nothing else.
 *
 * A package stopped half way costs its done operations at list price, never more than the package. Source: common practice,
 * no source.
 */
import { type Cents, cents, splitByWeight, sumCents } from '../../kernel/units.ts';
import { type Bill, type BillInput, type BillLine, priceBill } from './bill.ts';

/** How far one casting's share of a line has come. Part lines have one unit: here or ordered is `all`, else `none`. */
export type LineUnit = Readonly<{
  /** The casting's key; null for a line of the ticket as a whole. */
  casting: string | null;
  done: 'all' | 'some' | 'none';
  /** For a package with some operations done: the list amounts of those, factors included. */
  doneAtList: readonly Cents[];
}>;

/** A line with the castings it covers; at least one unit. */
export type StoppableLine = Readonly<{ line: BillLine; units: readonly LineUnit[] }>;

/** What a package stopped half way costs. */
export function stoppedPackage(packageAmount: Cents, doneAtList: readonly Cents[]): Cents {
  const done = sumCents(doneAtList);
  return done < packageAmount ? done : packageAmount;
}

/**
 * The lines that stay on the bill when these castings stop.
 *
 * @param stops castings that stop; `everything` stops all, and lines of the ticket as a whole too
 * @returns lines in the order given, those of 0 left out; a line of which only part is done carries that part's amount
 */
export function linesIfStopped(lines: readonly StoppableLine[], stops: ReadonlySet<string> | 'everything'): BillLine[] {
  return lines
    .map(({ line, units }) => ({ ...line, amount: keptAmount(line, units, stops) }))
    .filter((line, index) => line.amount !== 0 || lines[index]?.line.amount === 0);
}

function keptAmount(line: BillLine, units: readonly LineUnit[], stops: ReadonlySet<string> | 'everything'): Cents {
  const shares = splitByWeight(
    line.amount,
    units.map(() => 1),
  );
  const kept = units.map((unit, index) => {
    const share = shares[index] ?? cents(0);
    const stopped = stops === 'everything' || (unit.casting !== null && stops.has(unit.casting));
    if (!stopped || unit.done === 'all') return share;
    return unit.done === 'some' ? stoppedPackage(share, unit.doneAtList) : cents(0);
  });
  return sumCents(kept);
}

/** The whole ticket priced twice; the difference is what an option adds. */
export type OptionPrice = Readonly<{ extraBeforeTax: Cents; extraWithTax: Cents; without: Bill; with: Bill }>;

/**
 * What added work costs: the ticket with it minus the ticket without it, so that discount and the supplies cap come out
 * right.
 *
 * @param washedWith washed castings when the added lines are done too
 */
export function optionPrice(ticket: BillInput, added: readonly BillLine[], washedWith: number): OptionPrice {
  const without = priceBill(ticket);
  const withIt = priceBill({ ...ticket, lines: [...ticket.lines, ...added], washed: washedWith });
  return {
    extraBeforeTax: cents(withIt.figures.beforeTax - without.figures.beforeTax),
    extraWithTax: cents(withIt.figures.total - without.figures.total),
    without,
    with: withIt,
  };
}
