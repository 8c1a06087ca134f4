import { describe, expect, it } from 'vitest';
import {
  EMPTY_SHOP,
  firstMissing,
  initialsOf,
  isShopTyped,
  shopInput,
} from '#renderer/screens/first-run/first-run-text.ts';

const typed = { ...EMPTY_SHOP, name: 'Cinder Quay Head & Block', personName: 'Odile Brackwen' };

describe('initialsOf', () => {
  it.each([
    ['Odile Brackwen', 'OB'],
    ['Zdzisława Żółwińska-Brzęk', 'ZŻB'],
    ['', ''],
    ['😀 Nadia', '😀N'],
  ])('%s', (name, initials) => {
    expect(initialsOf(name)).toBe(initials);
  });
});

describe('firstMissing', () => {
  it('names one thing at a time, in reading order, and nothing when name, currency, person and PIN are there', () => {
    expect(firstMissing(EMPTY_SHOP, '')).toBe('Write the shop name.');
    expect(firstMissing({ ...typed, currencyCode: ' ' }, '740101')).toBe('Choose the currency.');
    expect(firstMissing(typed, '74')).toBe('Choose a PIN, 4 to 8 digits.');
    expect(firstMissing(typed, '740101')).toBeUndefined();
  });
});

describe('shopInput', () => {
  it('makes initials from the name where none are typed, and takes the code for a sign where there is none', () => {
    const input = shopInput({ ...typed, currencyCode: 'chf', currencySign: '' }, '740101', 'Europe/Zurich');

    expect(input).toMatchObject({
      personInitials: 'OB',
      currencyCode: 'CHF',
      currencySign: 'CHF',
      timeZone: 'Europe/Zurich',
    });
  });
});

describe('isShopTyped', () => {
  it('takes what this page kept and nothing else', () => {
    expect(isShopTyped(JSON.parse(JSON.stringify(typed)))).toBe(true);
    expect(isShopTyped({ name: 'half' })).toBe(false);
    expect(isShopTyped(null)).toBe(false);
  });
});
