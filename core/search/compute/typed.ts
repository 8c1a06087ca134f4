/** How typed text is read by the find box. Pure and browser-safe. */
import { foldText } from '../../customers/compute.ts';

/** A casting number, stamp or serial as it is compared: capital letters, digits and ? for an unreadable character. */
export const numberKey = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}?]/gu, '');

/** Most characters of typed text that are looked at; nobody types more on the telephone. */
const LONGEST = 200;

export type Typed = Readonly<{
  /** As shown back: trimmed, at most 200 characters. */
  text: string;
  /** Folded words, each a letter or digit run; at most eight. */
  words: readonly string[];
  /** Digits only, when nothing but digits and telephone signs was typed. */
  phoneDigits: string | null;
  /** The whole as a number, when it could be a tag or ticket number. */
  number: number | null;
  /** Letters and digits without signs; null when shorter than two. */
  key: string | null;
}>;

/** Read what was typed into the find box. */
export function readTyped(raw: string): Typed {
  const text = raw.normalize('NFC').replace(/\s+/g, ' ').trim().slice(0, LONGEST);
  const words = foldText(text)
    .split(' ')
    .filter((word) => word !== '')
    .slice(0, 8);
  const looksLikePhone = /^[\d\s()+./-]+$/.test(text);
  const digits = text.replace(/\D/g, '');
  const bare = /^\d{1,9}$/.test(text) ? Number(text) : null;
  const key = numberKey(text);
  return {
    text,
    words,
    phoneDigits: looksLikePhone && digits.length >= 3 ? digits : null,
    number: bare !== null && bare > 0 ? bare : null,
    key: key.replaceAll('?', '').length >= 2 ? key : null,
  };
}

export type Stretch = Readonly<{ from: number; until: number }>;

/**
 * Where typed words begin words of a shown text: stretches to underline, in order, never overlapping.
 *
 * Marks and cases do not matter; positions are those of the shown text.
 */
export function stretchesOf(shown: string, words: readonly string[]): Stretch[] {
  const found: Stretch[] = [];
  for (const part of shown.matchAll(/[\p{L}\p{N}\p{M}'’]+/gu)) {
    const folded = foldText(part[0]).replaceAll(' ', '');
    const word = words.filter((one) => folded.startsWith(one)).sort((a, b) => b.length - a.length)[0];
    if (word === undefined) continue;
    found.push({ from: part.index, until: part.index + lengthOf(part[0], word.length) });
  }
  return found;
}

/** Shown characters that make up so many folded ones. */
function lengthOf(shown: string, folded: number): number {
  let seen = 0;
  let at = 0;
  for (const letter of shown) {
    if (seen >= folded) break;
    seen += foldText(letter).length;
    at += letter.length;
  }
  return at;
}

/** Where typed digits stand in a shown telephone number, signs in between included; empty when they do not. */
export function digitStretches(shown: string, digits: string): Stretch[] {
  const places = [...shown].flatMap((letter, index) => (/\d/.test(letter) ? [index] : []));
  const all = places.map((index) => shown[index]).join('');
  const start = all.indexOf(digits);
  const from = places[start];
  const last = places[start + digits.length - 1];
  return start < 0 || from === undefined || last === undefined ? [] : [{ from, until: last + 1 }];
}

/** One letter or digit each for `?`; SQLite GLOB. The key holds nothing else that GLOB reads. */
export const globOf = (key: string): string => `*${key}*`;

/** Where the key begins in a kept number; -1 when it is not there. `?` on either side stands for one character. */
export function placeOfKey(number: string, key: string): number {
  for (let start = 0; start + key.length <= number.length; start += 1) {
    if (standsAt(number, key, start)) return start;
  }
  return -1;
}

function standsAt(number: string, key: string, start: number): boolean {
  for (let at = 0; at < key.length; at += 1) {
    const typed = key[at];
    const kept = number[start + at];
    if (typed !== kept && typed !== '?' && kept !== '?') return false;
  }
  return true;
}

/** The longest stretch of a key without `?`; the first of equal ones. */
export const longestRun = (key: string): string =>
  key.split('?').reduce((best, run) => (run.length > best.length ? run : best), '');
