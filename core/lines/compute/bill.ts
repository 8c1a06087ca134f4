/**
 * One calculation for preview, estimate, ceiling check and invoice: from priced lines to the total.
 *
 * Discount, rush, supplies, fee and minimum are reckoned for everything billed so far with this document, less what earlier
 * invoices of the ticket charged; so before tax part invoices add up to the one invoice. Tax is rounded on each document.
 *
 * Source: common practice, no source, for the steps; EN 16931-1 BR-CO-10, 13, 15, 17 for the totals.
 */
import { type BasisPoints, type Cents, cents, shareOf, splitByWeight, sumCents } from '../../kernel/units.ts';
import type { TaxClass } from '../../rates/compute.ts';
import { isLabour, type LineKind } from './line.ts';
import { type TaxFigure, type TaxRounding, type TaxTerm, taxFigures } from './tax.ts';
import { centsText, percentText } from './working.ts';

/** A line as the bill sees it: already priced and rounded. */
export type BillLine = Readonly<{
  /** Names the line for the caller; not looked at. */
  key: string;
  kind: LineKind;
  amount: Cents;
  taxClass: TaxClass;
  /** An agreed price: outside the labour and parts discount, inside rush and supplies. */
  net: boolean;
}>;

/** The lines a bill adds by itself. */
export const DERIVED_ROLES = ['discount', 'rush', 'supplies', 'fee', 'minimum'] as const;
export type DerivedRole = (typeof DERIVED_ROLES)[number];

/** What an invoice line is, for sums and for the printed grouping. */
export const LINE_ROLES = ['labour', 'part', ...DERIVED_ROLES, 'core', 'sublet', 'freight', 'storage'] as const;
export type LineRole = (typeof LINE_ROLES)[number];

export type DerivedLine = Readonly<{
  role: DerivedRole;
  /** `labour` or `part` for a discount, else null: what it is taken from. */
  of: 'labour' | 'part' | null;
  taxClass: TaxClass;
  words: string;
  amount: Cents;
  working: string;
}>;

export type BillTerms = Readonly<{
  labourDiscount: BasisPoints;
  partsDiscount: BasisPoints;
  /** 0 when no rush was agreed, or it was lost. */
  rush: BasisPoints;
  supplies: BasisPoints;
  /** Per ticket; null for no cap. */
  suppliesCap: Cents | null;
  feePerWash: Cents;
  minimum: Cents;
  taxes: readonly TaxTerm[];
  taxRounding: TaxRounding;
}>;

/** What earlier invoices of the ticket billed, net of lines that credit notes opened again. */
export type Earlier = Readonly<{
  lines: readonly BillLine[];
  derived: readonly Pick<DerivedLine, 'role' | 'of' | 'taxClass' | 'amount'>[];
}>;

export type BillInput = Readonly<{
  /** The lines of this document, in printing order; may be empty. */
  lines: readonly BillLine[];
  /** Washed castings of everything billed so far with this document, each once. */
  washed: number;
  earlier: Earlier;
  /** True when this document leaves nothing unbilled: the minimum is asked only then. */
  last: boolean;
  terms: BillTerms;
}>;

/** The sums a person checks, in the order they are printed. */
export type BillFigures = Readonly<{
  labour: Cents;
  labourDiscount: Cents;
  rush: Cents;
  supplies: Cents;
  fee: Cents;
  minimum: Cents;
  parts: Cents;
  partsDiscount: Cents;
  sublet: Cents;
  core: Cents;
  /** Typed fees, freight and storage. */
  other: Cents;
  beforeTax: Cents;
  tax: Cents;
  total: Cents;
}>;

export type Bill = Readonly<{
  /** Discount, rush, supplies, fee, minimum; without those of 0. */
  derived: readonly DerivedLine[];
  taxes: readonly TaxFigure[];
  figures: BillFigures;
}>;

export const NOTHING_EARLIER: Earlier = { lines: [], derived: [] };

/** Price a whole document. The total is exactly the sum of its lines, its derived lines and its taxes. */
export function priceBill(input: BillInput): Bill {
  const derived = derivedLines(input).filter((line) => line.amount !== 0);
  const taxes = taxFigures([...input.lines, ...derived], input.terms.taxes, input.terms.taxRounding);
  return { derived, taxes, figures: figuresOf(input.lines, derived, taxes) };
}

/** The role of a typed or priced line. */
export function roleOf(line: Pick<BillLine, 'kind' | 'taxClass'>): LineRole {
  if (isLabour(line)) return 'labour';
  switch (line.kind) {
    case 'part':
    case 'core':
    case 'sublet':
    case 'freight':
    case 'storage':
      return line.kind;
    case 'operation':
    case 'package':
    case 'hourly':
      return line.taxClass === 'sublet' ? 'sublet' : 'fee';
    case 'fee':
    case 'text':
      return 'fee';
  }
}

function derivedLines(input: BillInput): DerivedLine[] {
  const { terms, earlier } = input;
  const all = [...earlier.lines, ...input.lines];
  const labour = all.filter(isLabour);
  const parts = all.filter((line) => line.kind === 'part');
  const labourSum = amountOf(labour);

  const labourDiscount = discountLines(labour, terms.labourDiscount, 'labour', earlier);
  const rush = rushLines(labour, terms.rush, earlier);
  return [
    ...labourDiscount.lines,
    ...rush.lines,
    suppliesLine(labourSum, terms, earlier),
    feeLine(input),
    minimumLine(input, labourSum, cents(labourSum + labourDiscount.sum + rush.sum)),
    ...discountLines(parts, terms.partsDiscount, 'part', earlier).lines,
  ];
}

/** The lines of this document, and the sum of the whole ticket so far. */
type Split = Readonly<{ lines: DerivedLine[]; sum: Cents }>;

function discountLines(lines: readonly BillLine[], bp: BasisPoints, of: 'labour' | 'part', earlier: Earlier): Split {
  const base = lines.filter((line) => !line.net);
  const sum = cents(-shareOf(amountOf(base), bp));
  const words = `${of === 'labour' ? 'Labour' : 'Parts'} discount, ${percentText(bp)}`;
  const working = `${percentText(bp)} of ${centsText(amountOf(base))}`;
  return splitByClass({ role: 'discount', of, base, sum, words, working, earlier });
}

function rushLines(labour: readonly BillLine[], bp: BasisPoints, earlier: Earlier): Split {
  const sum = shareOf(amountOf(labour), bp);
  const working = `${percentText(bp)} of labour ${centsText(amountOf(labour))}`;
  return splitByClass({
    role: 'rush',
    of: null,
    base: labour,
    sum,
    words: `Rush, ${percentText(bp)} of labour`,
    working,
    earlier,
  });
}

type SplitInput = Pick<DerivedLine, 'role' | 'of' | 'words' | 'working'> &
  Readonly<{ base: readonly BillLine[]; sum: Cents; earlier: Earlier }>;

/** One line a tax class of what it changes, by largest remainder, so that no cent is lost between two classes. */
function splitByClass({ role, of, base, sum, words, working, earlier }: SplitInput): Split {
  const before = earlier.derived.filter((line) => line.role === role && line.of === of);
  const classes = [...new Set([...base, ...before].map((line) => line.taxClass))];
  if (classes.length === 0) return { lines: [], sum };
  const weights = classes.map((name) => Math.max(0, amountOf(base.filter((line) => line.taxClass === name))));
  const shares = splitByWeight(sum, weights);
  const lines = classes.map((taxClass, index) => {
    const charged = amountOf(before.filter((line) => line.taxClass === taxClass));
    const amount = cents((shares[index] ?? 0) - charged);
    return { role, of, taxClass, words, amount, working: lessCharged(working, charged) };
  });
  return { lines, sum };
}

function suppliesLine(labour: Cents, terms: BillTerms, earlier: Earlier): DerivedLine {
  const full = shareOf(labour, terms.supplies);
  const capped = terms.suppliesCap !== null && full > terms.suppliesCap ? terms.suppliesCap : full;
  const charged = chargedSo(earlier, 'supplies');
  const share = `${percentText(terms.supplies)} of labour ${centsText(labour)}`;
  const working = capped === full ? share : `${share} = ${centsText(full)}, at most ${centsText(capped)} a ticket`;
  return {
    role: 'supplies',
    of: null,
    taxClass: 'supplies',
    words: `Shop supplies, ${percentText(terms.supplies)} of labour`,
    amount: cents(capped - charged),
    working: lessCharged(working, charged),
  };
}

function feeLine({ washed, terms, earlier }: BillInput): DerivedLine {
  const charged = chargedSo(earlier, 'fee');
  const working = `${washed} washed ${washed === 1 ? 'casting' : 'castings'} × ${centsText(terms.feePerWash)}`;
  return {
    role: 'fee',
    of: null,
    taxClass: 'fee',
    words: 'Washing fee',
    amount: cents(washed * terms.feePerWash - charged),
    working: lessCharged(working, charged),
  };
}

function minimumLine({ terms, earlier, last }: BillInput, labour: Cents, reached: Cents): DerivedLine {
  const charged = chargedSo(earlier, 'minimum');
  const due = labour > 0 && reached < terms.minimum ? terms.minimum - reached : 0;
  return {
    role: 'minimum',
    of: null,
    taxClass: 'labour_repair',
    words: `To the smallest labour charge of ${centsText(terms.minimum)}`,
    amount: cents(last ? due - charged : 0),
    working: lessCharged(`${centsText(terms.minimum)} less labour ${centsText(reached)}`, charged),
  };
}

const amountOf = (lines: readonly Readonly<{ amount: Cents }>[]): Cents => sumCents(lines.map((line) => line.amount));

const chargedSo = (earlier: Earlier, role: DerivedRole): Cents =>
  amountOf(earlier.derived.filter((line) => line.role === role));

const lessCharged = (working: string, charged: Cents): string =>
  charged === 0 ? working : `${working}, less ${centsText(charged)} on earlier invoices`;

function figuresOf(
  lines: readonly BillLine[],
  derived: readonly DerivedLine[],
  taxes: readonly TaxFigure[],
): BillFigures {
  const typed = (...roles: LineRole[]) => amountOf(lines.filter((line) => roles.includes(roleOf(line))));
  const added = (role: DerivedRole, of: DerivedLine['of'] = null) =>
    amountOf(derived.filter((line) => line.role === role && line.of === of));
  const beforeTax = cents(amountOf(lines) + amountOf(derived));
  const tax = amountOf(taxes);
  return {
    labour: typed('labour'),
    labourDiscount: added('discount', 'labour'),
    rush: added('rush'),
    supplies: added('supplies'),
    fee: added('fee'),
    minimum: added('minimum'),
    parts: typed('part'),
    partsDiscount: added('discount', 'part'),
    sublet: typed('sublet'),
    core: typed('core'),
    other: typed('fee', 'freight', 'storage'),
    beforeTax,
    tax,
    total: cents(beforeTax + tax),
  };
}
