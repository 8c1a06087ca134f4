import { describe, expect, it } from 'vitest';
import { shopContract } from '#core/shop/contract.ts';
import {
  readSetting,
  type SettingField,
  type Settings,
  settingChanges,
  settingText,
} from '#renderer/screens/shop/settings-typed.ts';

const format = { language: 'en', currencySign: '$', hourClock: '24' } as const;
const settings = {
  name: 'Ferris Street Machine',
  supplies: 400,
  suppliesCap: null,
  benchRate: 950_000,
  promiseMinute: 1020,
  guard: true,
  estimateDays: 30,
} as unknown as Settings;
const field = (key: keyof Settings, as: SettingField['as'], optional = false): SettingField => ({
  key,
  label: key,
  as,
  optional,
});
const FIELDS = [
  field('name', 'words'),
  field('supplies', 'percent'),
  field('suppliesCap', 'money', true),
  field('benchRate', 'price', true),
  field('promiseMinute', 'time'),
  field('guard', 'tick'),
  field('estimateDays', 'count'),
];

describe('settingText', () => {
  it('shows each kind as a person types it', () => {
    expect(FIELDS.map((one) => settingText(one, settings, format))).toEqual([
      'Ferris Street Machine',
      '4.00',
      '',
      '95.00',
      '17:00',
      'true',
      '30',
    ]);
  });

  it('reads back what it showed', () => {
    for (const one of FIELDS) {
      expect(readSetting(one, settingText(one, settings, format), format)).toEqual({ value: settings[one.key] });
    }
  });
});

describe('settingChanges', () => {
  it('sends only what differs, in whole units the contract takes', () => {
    const typed = {
      name: 'Ferris Street Machine',
      supplies: '4.5 %',
      suppliesCap: '40',
      promiseMinute: '16.30',
      guard: 'false',
    };
    const { changes, wrong } = settingChanges(FIELDS, settings, typed, format);

    expect(wrong).toEqual({});
    expect(changes).toEqual({ supplies: 450, suppliesCap: 4000, promiseMinute: 990, guard: false });
    expect(shopContract['shop/change-settings'].input.safeParse({ seenVersion: 1, changes }).error).toBeUndefined();
  });

  it('names what cannot be read and keeps it out', () => {
    const { changes, wrong } = settingChanges(
      FIELDS,
      settings,
      { supplies: 'x', promiseMinute: '25:00', estimateDays: '-1' },
      format,
    );

    expect(changes).toEqual({});
    expect(Object.keys(wrong)).toEqual(['supplies', 'promiseMinute', 'estimateDays']);
  });
});
