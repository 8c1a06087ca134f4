/** The shop's settings as they are typed, and which of them changed. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { type FormatSettings, formatMoney, formatTime, readMoney } from '#core/kernel/format.ts';
import type { Cents } from '#core/kernel/units.ts';

export type Settings = OutputOf<App['shop/get-settings']>['settings'];
export type Changes = InputOf<App['shop/change-settings']>['changes'];
type Key = keyof Settings;

/**
 * How a setting is typed: words, an amount, a unit price in 1/10 000, a percentage, a whole number, a time of day, a tick, or
 * one of a few. `optional` ones may be left empty.
 */
export type SettingField = Readonly<{
  key: Key;
  label: string;
  as: 'words' | 'lines' | 'money' | 'price' | 'percent' | 'count' | 'time' | 'tick' | 'choice';
  optional?: boolean;
  options?: readonly Readonly<{ value: string; words: string }>[];
}>;

export type TextOf = Readonly<Record<string, string>>;

/** A setting as its field shows it. */
export function settingText(field: SettingField, settings: Settings, format: FormatSettings): string {
  const value = settings[field.key];
  if (value === null) return '';
  switch (field.as) {
    case 'money':
    case 'percent':
      return formatMoney(value as Cents, format);
    case 'price':
      return formatMoney(((value as number) / 100) as Cents, format);
    case 'time':
      return formatTime(value as number, { hourClock: '24' });
    default:
      return String(value);
  }
}

type Read = Readonly<{ value: unknown }> | Readonly<{ wrong: string }>;

/** A field's text as the setting, or what is wrong with it. */
export function readSetting(field: SettingField, text: string, format: FormatSettings): Read {
  const bare = text.trim();
  if (bare === '' && field.optional) return { value: null };
  switch (field.as) {
    case 'money':
    case 'percent':
      return readAmount(bare, format, 1);
    case 'price':
      return readAmount(bare, format, 100);
    case 'count':
      return /^\d{1,6}$/.test(bare) ? { value: Number.parseInt(bare, 10) } : { wrong: 'Write a whole number.' };
    case 'time':
      return readTime(bare);
    case 'tick':
      return { value: bare === 'true' };
    default:
      return { value: text };
  }
}

function readAmount(text: string, format: FormatSettings, times: number): Read {
  const amount = readMoney(text.replace('%', ''), format);
  return amount === null ? { wrong: 'Write a number, for example 12.50.' } : { value: amount * times };
}

/** `17:00`, `7.30`, `7`. */
function readTime(text: string): Read {
  const found = /^(\d{1,2})(?:[:.](\d{2}))?$/.exec(text);
  const minute = Number(found?.[1]) * 60 + Number(found?.[2] ?? 0);
  return found && minute <= 1440 ? { value: minute } : { wrong: 'Write a time, for example 17:00.' };
}

export type ChangesRead = Readonly<{ changes: Changes; wrong: Readonly<Record<string, string>> }>;

/** What differs from what was seen; a field that nobody touched is never sent. */
export function settingChanges(
  fields: readonly SettingField[],
  settings: Settings,
  typed: TextOf,
  format: FormatSettings,
): ChangesRead {
  const changes: Record<string, unknown> = {};
  const wrong: Record<string, string> = {};
  for (const field of fields) {
    const text = typed[field.key];
    if (text === undefined || text === settingText(field, settings, format)) continue;
    const read = readSetting(field, text, format);
    if ('wrong' in read) wrong[field.key] = read.wrong;
    else changes[field.key] = read.value;
  }
  return { changes, wrong };
}
