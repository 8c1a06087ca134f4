/** What is typed on the first day, as text, and how it becomes the request. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';

export type ShopTyped = Readonly<{
  name: string;
  address: string;
  phone: string;
  taxNumber: string;
  currencyCode: string;
  currencySign: string;
  units: 'inch' | 'metric';
  paper: 'letter' | 'a4';
  personName: string;
  personInitials: string;
}>;

export const EMPTY_SHOP: ShopTyped = {
  name: '',
  address: '',
  phone: '',
  taxNumber: '',
  currencyCode: 'USD',
  currencySign: '$',
  units: 'inch',
  paper: 'letter',
  personName: '',
  personInitials: '',
};

/** Currencies offered with their signs (ISO 4217 codes with two decimals; signs from memory). Any other may be typed. */
export const CURRENCIES: readonly (readonly [code: string, words: string, sign: string])[] = [
  ['USD', 'US dollar', '$'],
  ['EUR', 'euro', '€'],
  ['GBP', 'pound sterling', '£'],
  ['CAD', 'Canadian dollar', '$'],
  ['AUD', 'Australian dollar', '$'],
  ['NZD', 'New Zealand dollar', '$'],
  ['CHF', 'Swiss franc', 'Fr.'],
  ['PLN', 'Polish zloty', 'zł'],
  ['CZK', 'Czech koruna', 'Kč'],
  ['SEK', 'Swedish krona', 'kr'],
  ['NOK', 'Norwegian krone', 'kr'],
  ['DKK', 'Danish krone', 'kr'],
  ['ZAR', 'South African rand', 'R'],
];

export const isShopTyped = (value: unknown): value is ShopTyped =>
  typeof value === 'object' &&
  value !== null &&
  Object.keys(EMPTY_SHOP).every((key) => typeof (value as Record<string, unknown>)[key] === 'string');

/** First letters of a name, at most four, capitals: `Odile Brackwen` is `OB`. */
export const initialsOf = (name: string): string =>
  name
    .split(/[\s-]+/u)
    .map((part) => [...part][0] ?? '')
    .join('')
    .toLocaleUpperCase()
    .slice(0, 4);

/** Why the shop cannot be opened yet, in words, or undefined. */
export function firstMissing(shop: ShopTyped, pin: string): string | undefined {
  if (shop.name.trim() === '') return 'Write the shop name.';
  if (shop.currencyCode.trim() === '') return 'Choose the currency.';
  if (shop.personName.trim() === '') return 'Write your own name.';
  return pin.length < 4 ? 'Choose a PIN, 4 to 8 digits.' : undefined;
}

/** The request. Fields left empty are left out; initials are made from the name where none are typed. */
export const shopInput = (shop: ShopTyped, pin: string, timeZone: string): InputOf<App['shop/first-run']> => ({
  ...shop,
  currencyCode: shop.currencyCode.trim().toUpperCase(),
  currencySign: shop.currencySign.trim() || shop.currencyCode.trim().toUpperCase(),
  personInitials: shop.personInitials.trim() || initialsOf(shop.personName),
  shortName: null,
  email: null,
  timeZone,
  pin,
});
