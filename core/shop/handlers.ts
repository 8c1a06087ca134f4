/** What the shop's own requests do. */

import { findBrokenLink } from '../host/chain.ts';
import { isTimeZone } from '../host/clock.ts';
import { implement } from '../host/implement.ts';
import { AppError, badField, ruleBroken } from '../kernel/errors.ts';
import { shopContract, TEXT_KINDS } from './contract.ts';
import { findLastBackup, listActivity } from './store/activity-read.ts';
import * as store from './store.ts';

type KeptBackup = Readonly<{ file: string; at: string; bytes: number; why: string }>;

const UNBROKEN = ['invoice', 'credit_note', 'receipt'];
const NO_FACE = {
  set: false,
  name: '',
  shortName: '',
  practice: false,
  units: 'inch',
  showBothUnits: true,
  paper: 'letter',
  currencyCode: 'USD',
  currencySign: '$',
  language: 'en',
  timeZone: 'UTC',
  hourClock: '24',
  pinDigits: 6,
  idleMinutes: 20,
} as const;

export const shop = implement(shopContract, {
  'shop/get-face': {
    run(_, { db }) {
      const row = store.findShop(db);
      if (!row) return NO_FACE;
      const s = store.settingsOf(row);
      return {
        set: true,
        name: s.name,
        shortName: s.shortName,
        practice: row.practice === 1,
        units: s.units,
        showBothUnits: s.showBothUnits,
        paper: s.paper,
        currencyCode: s.currencyCode,
        currencySign: s.currencySign,
        language: s.language,
        timeZone: s.timeZone,
        hourClock: s.hourClock,
        pinDigits: s.pinDigits,
        idleMinutes: s.idleMinutes,
      };
    },
  },
  'shop/get-settings': {
    run(_, { db, today }) {
      const row = store.getShop(db);
      const series = ['ticket', 'tag', 'invoice', 'credit_note', 'receipt'] as const;
      return {
        version: row.version,
        settings: store.settingsOf(row),
        openHours: store.listOpenHours(db).map(({ weekday, part, from, until }) => ({ weekday, part, from, until })),
        holidays: store.listHolidays(db),
        numbers: series.map((name) => ({
          series: name,
          next: store.nextNumber(db, name),
          used: store.isSeriesUsed(db, name),
        })),
        texts: TEXT_KINDS.flatMap((kind) => {
          const text = store.findText(db, kind, today);
          return text ? [{ kind, body: text.body, from: text.from }] : [];
        }),
      };
    },
  },
  'shop/change-settings': {
    run({ seenVersion, changes }, { db }) {
      if (changes.timeZone !== undefined && !isTimeZone(changes.timeZone)) {
        throw badField(
          'shop/no-such-zone',
          'changes.timeZone',
          'This time zone is not known. Choose one from the list.',
        );
      }
      const row = store.getShop(db);
      const seen = store.settingsOf(row);
      const names = Object.keys(changes) as (keyof typeof changes)[];
      const version = store.stepSettings(db, seenVersion, changes);
      return {
        output: { version },
        activity: [
          {
            subject: ['shop_setting', row.id],
            words: `Changed shop settings: ${names.join(', ')}`,
            before: Object.fromEntries(names.map((name) => [name, seen[name]])),
            after: changes,
          },
        ],
      };
    },
  },
  'shop/set-next-number': {
    run({ series, next }, { db }) {
      const seen = store.peekNumber(db, series);
      if (UNBROKEN.includes(series) && store.isSeriesUsed(db, series)) {
        throw badField(
          'shop/number-fixed',
          'next',
          'These numbers run without a gap; the first was given already, so this stays as it is.',
        );
      }
      if (next < seen && store.isSeriesUsed(db, series)) {
        throw badField('shop/number-back', 'next', `Numbers only move forward. The next one is ${seen}.`);
      }
      store.setNextNumber(db, series, next);
      return {
        output: {},
        activity: [{ subject: ['sequence', 1], words: `Next ${series} number ${next}`, before: seen, after: next }],
      };
    },
  },
  'shop/add-text-version': {
    run({ kind, body, from }, { db }) {
      const id = db.add('text_version', { kind, body, from_on: from });
      return {
        output: { id },
        activity: [
          { subject: ['text_version', id], words: `New ${kind.replace('_', ' ')} text from ${from}`, after: body },
        ],
      };
    },
  },
  'promises/set-open-hours': {
    run({ hours }, { db, now }) {
      const wrong = hours.findIndex((h) => h.until <= h.from);
      if (wrong >= 0)
        throw badField('shop/hours-backwards', `hours.${wrong}.until`, 'Closing time is after opening time.');
      const before = store.listOpenHours(db);
      for (const row of before) db.set('open_hours', row.id, { ended_at: now });
      for (const h of hours)
        db.add('open_hours', { weekday: h.weekday, part: h.part, from_minute: h.from, until_minute: h.until });
      return {
        output: {},
        activity: [{ subject: ['open_hours', 1], words: 'Set opening hours', before, after: hours }],
      };
    },
  },
  'promises/add-holiday': {
    run({ day, words }, { db }) {
      if (store.listHolidays(db).some((h) => h.day === day))
        throw badField('shop/holiday-there', 'day', 'The shop is already closed that day.');
      const id = db.add('holiday', { on_day: day, words });
      return { output: { id }, activity: [{ subject: ['holiday', id], words: `Closed on ${day}: ${words}` }] };
    },
  },
  'promises/end-holiday': {
    run({ holiday }, { db, now }) {
      const found = store.listHolidays(db).find((h) => h.id === holiday);
      if (!found) throw ruleBroken('shop/no-such-holiday', 'That closed day is not there any more.');
      db.set('holiday', holiday, { ended_at: now });
      return { output: {}, activity: [{ subject: ['holiday', holiday], words: `Open again on ${found.day}` }] };
    },
  },
  'activity/list-activity': {
    run(input, { db }) {
      const rows = listActivity(db, input);
      return { rows: rows.slice(0, input.limit), more: rows.length > input.limit };
    },
  },
  'activity/check-chain': {
    run(_, { db }) {
      const brokenAt = findBrokenLink(db) ?? null;
      return { whole: brokenAt === null, brokenAt };
    },
  },
  'backup/make-backup': {
    prepare: (_, ctx) => ctx.services.backup('asked for'),
    run(_, __, made: { file: string; bytes: number }) {
      const output = { file: made.file, bytes: made.bytes };
      return {
        output,
        activity: [{ subject: ['backup', 1], words: `Backup made and checked: ${made.file}`, after: output }],
      };
    },
  },
  'backup/list-backups': {
    prepare: async (_, ctx) => ctx.services.backups.list(),
    run: (_, __, backups: readonly KeptBackup[]) => ({
      output: { backups: [...backups] },
      activity: [{ subject: ['backup', 1], words: 'Looked at the list of backups' }],
    }),
  },
  'backup/restore-backup': {
    async prepare({ file }, ctx) {
      if (!ctx.session.atTheMachine) {
        throw new AppError(
          'not-allowed',
          'backup/not-here',
          'A backup is restored at the computer that keeps the workspace.',
        );
      }
      ctx.services.backups.check(file);
    },
    run: ({ file }) => ({
      output: { file },
      activity: [{ subject: ['backup', 1], words: `About to restore ${file}` }],
    }),
  },
  'backup/get-last-backup': {
    run: (_, { db }) => ({ last: findLastBackup(db) ?? null }),
  },
});
