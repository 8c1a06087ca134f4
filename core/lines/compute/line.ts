/**
 * What one line of a ticket costs. The only rounding of a line happens here, once, after all factors, half away from zero.
 *
 * Source of the rule: common practice, no source (base x units x multipliers, rounded to cents per line, then summed). The
 * same "round each line once, then only add" is demanded of electronic invoices by Peppol BIS Billing 3.0, Rounding.
 */
import {
  type BasisPoints,
  type Cents,
  cents,
  divideRounded,
  type Factor,
  ONE,
  type PriceE4,
  priceE4,
} from '../../kernel/units.ts';
import { LABOUR_CLASSES, type TaxClass } from '../../rates/compute.ts';
import { centsText, factorText, priceText, quantityText } from './working.ts';

export const LINE_KINDS = [
  'operation',
  'package',
  'part',
  'sublet',
  'hourly',
  'fee',
  'freight',
  'core',
  'storage',
  'text',
] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** What the divisor of a quantity is: pieces by one, hours in seconds. Inches of a weld are 25 400 000 nanometres. */
export const PER_PIECE = 1;
export const PER_HOUR = 3600;

export type LineFactor = Readonly<{ code: string; factor: Factor }>;

/** Everything that makes the amount of a line; frozen on the line when it is added. */
export type PriceTerms = Readonly<{
  /** In units of 1/`per`: pieces, seconds or nanometres. May be negative on a correction. */
  quantity: number;
  per: number;
  unitPrice: PriceE4;
  /** In the order of the factor table; may be empty. */
  factors: readonly LineFactor[];
  /** 0 for none; a line of a positive quantity never costs less. */
  lineMinimum: Cents;
}>;

/** The amount: unit price x quantity x every factor, rounded once, then at least the line's minimum. */
export function lineAmount(terms: PriceTerms): Cents {
  const counted = countedAmount(terms);
  return terms.quantity > 0 && counted < terms.lineMinimum ? terms.lineMinimum : counted;
}

function countedAmount({ quantity, per, unitPrice, factors }: PriceTerms): Cents {
  let top = BigInt(unitPrice) * BigInt(quantity);
  let bottom = BigInt(per) * 100n;
  for (const { factor } of factors) {
    top *= BigInt(factor);
    bottom *= BigInt(ONE);
  }
  return cents(divideRounded(top, bottom));
}

/**
 * How the amount came about: "8 valves × 6.50 × 1.50", "1.5 h × 110.00", "45.00 × 1.15, at least 60.00".
 *
 * @param unit the charge unit's word, `each` for pieces
 */
export function lineWorking(terms: PriceTerms, unit: string): string {
  const count = quantityText(terms.quantity, terms.per, unit);
  const steps = [count, priceText(terms.unitPrice), ...terms.factors.map(({ factor }) => factorText(factor))];
  const text = steps.filter((step) => step !== '').join(' × ');
  return lineAmount(terms) === countedAmount(terms) ? text : `${text}, at least ${centsText(terms.lineMinimum)}`;
}

/** The factors of a line in words for the screen: "aluminium 1.15, close-tolerance 1.50"; empty for none. */
export const factorWords = (factors: readonly LineFactor[]): string =>
  factors.map(({ code, factor }) => `${code} ${factorText(factor)}`).join(', ');

/** Selling price of one part bought at `cost`, with a markup, rounded to 1/10 000. */
export const costPlus = (cost: PriceE4, markup: BasisPoints): PriceE4 =>
  priceE4(divideRounded(BigInt(cost) * BigInt(ONE + markup), BigInt(ONE)));

/** What outside work is charged at: cost plus markup, rounded to a cent. */
export const subletAmount = (cost: Cents, markup: BasisPoints): Cents =>
  cents(divideRounded(BigInt(cost) * BigInt(ONE + markup), BigInt(ONE)));

/** Labour: operations, packages and hours of a labour class. Fees, sublet work and parts are not. */
export const isLabour = (line: Readonly<{ kind: LineKind; taxClass: TaxClass }>): boolean =>
  (line.kind === 'operation' || line.kind === 'package' || line.kind === 'hourly') &&
  LABOUR_CLASSES.includes(line.taxClass);
