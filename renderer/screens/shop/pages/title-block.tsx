/** The shop's title block, and what its work and money go by. */
import { SettingsForm } from '../parts/settings-form.tsx';
import type { SettingField } from '../settings-typed.ts';
import css from './columns.module.css';

const BLOCK: readonly SettingField[] = [
  { key: 'name', label: 'Shop name', as: 'words' },
  { key: 'shortName', label: 'Short name', as: 'words' },
  { key: 'taxNumber', label: 'Tax number', as: 'words', optional: true },
  { key: 'address', label: 'Address', as: 'lines', optional: true },
  { key: 'phone', label: 'Phone', as: 'words', optional: true },
  { key: 'email', label: 'E-mail', as: 'words', optional: true },
  { key: 'currencyCode', label: 'Currency, three letters', as: 'words' },
  { key: 'currencySign', label: 'Currency sign', as: 'words' },
  {
    key: 'units',
    label: 'Units you say out loud',
    as: 'choice',
    options: [
      { value: 'inch', words: 'inch, thou' },
      { value: 'metric', words: 'mm' },
    ],
  },
  {
    key: 'paper',
    label: 'Paper',
    as: 'choice',
    options: [
      { value: 'letter', words: 'Letter' },
      { value: 'a4', words: 'A4' },
    ],
  },
  { key: 'language', label: 'Language of figures, two letters', as: 'words' },
  { key: 'timeZone', label: 'Time zone', as: 'words' },
  {
    key: 'hourClock',
    label: 'Clock',
    as: 'choice',
    options: [
      { value: '24', words: '17:00' },
      { value: '12', words: '5:00 pm' },
    ],
  },
  { key: 'showBothUnits', label: 'show both units on paper', as: 'tick' },
];

const MONEY: readonly SettingField[] = [
  { key: 'minimumLabour', label: 'Minimum labour of a ticket', as: 'money' },
  { key: 'supplies', label: 'Supplies, on labour', as: 'percent' },
  { key: 'suppliesCap', label: 'Supplies, at most (empty: no cap)', as: 'money', optional: true },
  { key: 'feePerWash', label: 'Washing fee, each wash', as: 'money' },
  { key: 'rush', label: 'Rush, on labour', as: 'percent' },
  { key: 'sublet', label: 'Markup on outside work', as: 'percent' },
  { key: 'benchRate', label: 'Bench, an hour (empty: not sold)', as: 'price', optional: true },
  { key: 'weldRate', label: 'Welding, an hour (empty: not sold)', as: 'price', optional: true },
  { key: 'storagePerDay', label: 'Storage, a day', as: 'money' },
  { key: 'storageAfterDays', label: 'Storage begins after days', as: 'count' },
  { key: 'estimateDays', label: 'An estimate stands for days', as: 'count' },
  { key: 'depositNewRetail', label: 'Deposit of a new customer', as: 'money' },
  { key: 'depositSpecial', label: 'Deposit on special parts', as: 'percent' },
  { key: 'creditWarn', label: 'Say so when an account has used', as: 'percent' },
  {
    key: 'ageFrom',
    label: 'Age counts from',
    as: 'choice',
    options: [
      { value: 'due', words: 'due day' },
      { value: 'issued', words: 'invoice day' },
    ],
  },
  {
    key: 'taxRounding',
    label: 'Tax is rounded',
    as: 'choice',
    options: [
      { value: 'per_rate', words: 'once a tax' },
      { value: 'per_line', words: 'each line' },
    ],
  },
  { key: 'storageCapped', label: 'storage never above the bill', as: 'tick' },
  { key: 'ceilingTaxIn', label: 'a ceiling is said with tax in', as: 'tick' },
];

const WORK: readonly SettingField[] = [
  { key: 'promiseMinute', label: 'A day means by', as: 'time' },
  { key: 'buffer', label: 'Spare time in a promise', as: 'percent' },
  { key: 'pinDigits', label: 'Digits of a PIN', as: 'count' },
  { key: 'idleMinutes', label: 'A screen locks after minutes', as: 'count' },
  { key: 'coreDays', label: 'A core may come back for days', as: 'count' },
  { key: 'coreGood', label: 'Good core', as: 'percent' },
  { key: 'coreRepairable', label: 'Core that can be mended', as: 'percent' },
  { key: 'coreScrap', label: 'Scrap core', as: 'percent' },
  { key: 'samePersonSigns', label: 'who did it may sign it off', as: 'tick' },
  { key: 'guard', label: 'judge a reading with the doubt of its gauge', as: 'tick' },
];

export function TitleBlockPage() {
  return (
    <div className={css.three}>
      <SettingsForm name="block" title="Title block" note="it heads every sheet you print" fields={BLOCK} />
      <SettingsForm name="money" title="Money" note="changes no line of any ticket" fields={MONEY} />
      <SettingsForm name="work" title="Work and screens" fields={WORK} />
    </div>
  );
}
