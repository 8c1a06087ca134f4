/** Short ways to write a line and the terms of a bill. Rules of the practice shop: 4 %, cap 40.00, 6.50 a wash, 35.00. */
import { basisPoints, cents } from '#core/kernel/units.ts';
import type { BillLine, BillTerms } from '#core/lines/compute/bill.ts';
import type { TaxTerm } from '#core/lines/compute/tax.ts';
import type { TaxClass } from '#core/rates/compute.ts';

const CLASS_OF: Readonly<Record<BillLine['kind'], TaxClass>> = {
  operation: 'labour_repair',
  package: 'labour_repair',
  hourly: 'labour_repair',
  part: 'part',
  sublet: 'sublet',
  fee: 'fee',
  freight: 'freight',
  core: 'core',
  storage: 'storage',
  text: 'fee',
};

export const line = (kind: BillLine['kind'], amount: number, key = 'x'): BillLine => ({
  key,
  kind,
  amount: cents(amount),
  taxClass: CLASS_OF[kind],
  net: false,
});

export const taxOn = (...classes: TaxClass[]): TaxTerm => ({
  code: 'sales',
  words: 'sales tax',
  bp: basisPoints(700),
  classes,
  exempt: null,
});

export const billTerms = (changes: Partial<BillTerms> = {}): BillTerms => ({
  labourDiscount: basisPoints(0),
  partsDiscount: basisPoints(0),
  rush: basisPoints(0),
  supplies: basisPoints(400),
  suppliesCap: cents(4000),
  feePerWash: cents(650),
  minimum: cents(3500),
  taxes: [],
  taxRounding: 'per_rate',
  ...changes,
});
