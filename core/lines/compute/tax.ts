/**
 * Tax of one document: for each rate, the base is summed first and the tax rounded once (or, where the shop's place wants
 * it, rounded on each line and added).
 *
 * Source of "once per rate": EN 16931-1 rule BR-CO-17. Per line is a setting because some places demand it.
 */
import { type BasisPoints, type Cents, cents, divideRounded, ONE, shareOf, sumCents } from '../../kernel/units.ts';
import { isTaxed, type TaxClass } from '../../rates/compute.ts';
import { centsText, percentText } from './working.ts';

/** A tax of the document's day; `exempt` carries the customer's certificate when they do not pay it. */
export type TaxTerm = Readonly<{
  code: string;
  words: string;
  bp: BasisPoints;
  classes: readonly TaxClass[];
  exempt: string | null;
}>;

export type TaxRounding = 'per_rate' | 'per_line';

export type TaxFigure = Readonly<{
  code: string;
  words: string;
  bp: BasisPoints;
  /** What the tax falls on; 0 when exempt. */
  base: Cents;
  amount: Cents;
  /** The certificate number printed instead of a tax. */
  exempt: string | null;
  working: string;
}>;

type Taxable = Readonly<{ amount: Cents; taxClass: TaxClass }>;

/** One figure a tax, in the order given, also when its base is 0. */
export function taxFigures(lines: readonly Taxable[], taxes: readonly TaxTerm[], rounding: TaxRounding): TaxFigure[] {
  return taxes.map((tax) => {
    const { code, words, bp, exempt } = tax;
    if (exempt !== null) {
      return { code, words, bp, base: cents(0), amount: cents(0), exempt, working: `exempt, certificate ${exempt}` };
    }
    const taxed = lines.filter((line) => isTaxed(tax, line.taxClass)).map((line) => line.amount);
    const base = sumCents(taxed);
    const amount = rounding === 'per_line' ? sumCents(taxed.map((part) => shareOf(part, bp))) : shareOf(base, bp);
    const how = rounding === 'per_line' ? ', line by line' : '';
    return { code, words, bp, base, amount, exempt, working: `${percentText(bp)} of ${centsText(base)}${how}` };
  });
}

/**
 * The tax a credit gives back: what the credited part of a taxed base carries, at the invoice's own rate.
 *
 * @param creditedBefore base already credited by earlier credit notes, so that credits in steps add up to the invoice's tax
 */
export function creditedTax(
  tax: Readonly<{ bp: BasisPoints; base: Cents; amount: Cents }>,
  credited: Cents,
  creditedBefore: Readonly<{ base: Cents; amount: Cents }>,
): Cents {
  const baseNow = creditedBefore.base + credited;
  if (baseNow === tax.base) return cents(tax.amount - creditedBefore.amount);
  return cents(divideRounded(BigInt(baseNow) * BigInt(tax.bp), BigInt(ONE)) - creditedBefore.amount);
}
