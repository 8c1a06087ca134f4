/**
 * The figures behind an amount, as a shop person would write them on the back of the ticket: "8 valves × 6.50 × 1.50".
 * Plain decimals with a point, no currency sign: the amount beside it carries that. Never read back by the program.
 */
import type { BasisPoints, Cents, Factor, PriceE4 } from '../../kernel/units.ts';

/** Whole-number decimal with at least `least` places and no needless zeros after them. */
function decimal(value: number, places: number, least: number): string {
  const sign = value < 0 ? '\u2212' : '';
  const digits = String(Math.abs(value)).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const kept = digits
    .slice(digits.length - places)
    .replace(/0+$/, '')
    .padEnd(least, '0');
  return kept === '' ? `${sign}${whole}` : `${sign}${whole}.${kept}`;
}

/** 67450 -> "674.50". */
export const centsText = (amount: Cents): string => decimal(amount, 2, 2);
/** 65000 -> "6.50", 375 -> "0.0375". */
export const priceText = (price: PriceE4): string => decimal(price, 4, 2);
/** 11500 -> "1.15", 15000 -> "1.50". */
export const factorText = (factor: Factor): string => decimal(factor, 4, 2);
/** 2500 -> "25 %", 825 -> "8.25 %". */
export const percentText = (bp: BasisPoints): string => `${decimal(bp, 2, 0)} %`;

const HOUR = 3600;
const INCH = 25_400_000;

const PLURALS: Readonly<Record<string, string>> = { each: '', inch: 'inches', bank: 'banks', pocket: 'pockets' };

/** How many of what: "8 valves", "1.5 h", "20 min", "" for one of a thing sold by the piece. */
export function quantityText(quantity: number, per: number, unit: string): string {
  if (per === HOUR) return timeText(quantity);
  if (per === INCH) return `${decimal(Math.round(quantity / 25_400), 3, 0)} in`;
  if (unit === 'each' || unit === '') return quantity === 1 ? '' : String(quantity);
  return `${quantity} ${quantity === 1 ? unit : (PLURALS[unit] ?? `${unit}s`)}`;
}

function timeText(seconds: number): string {
  if (seconds % 360 === 0) return `${decimal(seconds / 360, 1, 0)} h`;
  return seconds % 60 === 0 ? `${seconds / 60} min` : `${seconds} s`;
}
