/** Names, telephone digits and sentences about a customer. Pure and browser-safe. */

import type { Day } from '../kernel/days.ts';
import { type FormatSettings, formatDay, formatMoney } from '../kernel/format.ts';
import type { Cents } from '../kernel/units.ts';

/** Letters that are a letter of their own, not a base letter with a mark, so that decomposing leaves them as they are. */
const FOLDED: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ħ: 'h',
  ŧ: 't',
  ı: 'i',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  þ: 'th',
  ŋ: 'n',
  '’': "'",
};

/**
 * Text as the find box compares it: small letters without marks, so that `Zolwinska` finds `Żółwińska`.
 *
 * Every character of the answer is a letter, digit or single space.
 */
export const foldText = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[łøđðħŧıßæœþŋ’]/gu, (letter) => FOLDED[letter] ?? letter)
    .replace(/'/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** The digits of a telephone number in any spelling: `(555) 0142` is `5550142`. Empty when there are none. */
export const digitsOf = (text: string): string => text.normalize('NFKC').replace(/\D/g, '');

/** How a number may have been typed: with its national 0, its 00, or without. Longest first; empty for no digits. */
export function digitSpellings(text: string): string[] {
  const digits = digitsOf(text);
  return [...new Set([digits, digits.replace(/^0{1,2}/, '')])].filter((one) => one.length > 0);
}

const SHORT = 20;

/** A short name for tags: the name where it fits, else a person's last word, else as many first words as fit. */
export function shortNameOf(name: string, kind: 'retail' | 'trade'): string {
  const all = [...name];
  if (all.length <= SHORT) return name;
  const parts = name.split(/\s+/);
  const last = parts.at(-1) ?? '';
  if (kind === 'retail' && parts.length > 1 && [...last].length <= SHORT) return last;
  let short = '';
  for (const part of parts) {
    const longer = short === '' ? part : `${short} ${part}`;
    if ([...longer].length > SHORT) break;
    short = longer;
  }
  return short === '' ? all.slice(0, SHORT).join('').trim() : short;
}

/** "may approve, any amount"; amounts before tax. */
export function approveWords(
  person: Readonly<{ mayApprove: boolean; approveLimit: Cents | null }>,
  settings: Pick<FormatSettings, 'language'>,
): string {
  if (!person.mayApprove) return 'may not approve';
  return person.approveLimit === null
    ? 'may approve, any amount'
    : `may approve up to ${formatMoney(person.approveLimit, settings)}`;
}

/** "Account on stop since Tue 2 Mar: two cheques came back. Ask the owner before unloading." */
export const stopWords = (since: Day, why: string): string =>
  `Account on stop since ${formatDay(since)}: ${why.replace(/[.\s]+$/, '')}. Ask the owner before unloading.`;
