/** First run: the shop's row and its first owner, in one command. */
import { isTimeZone } from '../host/clock.ts';
import { type Ctx, implement, type PrepareCtx } from '../host/implement.ts';
import { AppError, badField, ruleBroken } from '../kernel/errors.ts';
import { flag } from '../kernel/flag.ts';
import { findShop, insertShop } from '../shop/store.ts';
import { pinFault } from '../staff/compute.ts';
import { insertPerson, openSignIn } from '../staff/store.ts';
import { openingContract } from './contract.ts';

/** Shops choose later; six digits until then. */
const FIRST_PIN_DIGITS = 6;
const SHORT_NAME = 40;

export const opening = implement(openingContract, {
  'shop/first-run': {
    async prepare(input, ctx: PrepareCtx) {
      const fault = pinFault(input.pin, FIRST_PIN_DIGITS, input.practice);
      if (fault) throw badField('staff/pin-weak', 'pin', fault);
      if (!isTimeZone(input.timeZone)) {
        throw badField('shop/no-such-zone', 'timeZone', 'This time zone is not known. Choose one from the list.');
      }
      return { pinHash: await ctx.services.pins.hash(input.pin) };
    },
    run(input, ctx, prepared: { pinHash: string }) {
      if (findShop(ctx.db)) {
        throw ruleBroken('shop/already-set', 'This workspace has a shop already. Sign in, or open another folder.');
      }
      insertShop(ctx.db, {
        name: input.name,
        short_name: input.shortName ?? input.name.slice(0, SHORT_NAME).trim(),
        address: input.address,
        phone: input.phone,
        email: input.email,
        tax_number: input.taxNumber,
        currency_code: input.currencyCode,
        currency_sign: input.currencySign,
        units: input.units,
        paper: input.paper,
        language: input.language,
        time_zone: input.timeZone,
        practice: flag(input.practice),
      });
      const staff = insertPerson(ctx.db, {
        name: input.personName,
        initials: input.personInitials,
        jobWords: null,
        roles: ['owner'],
        pinHash: prepared.pinHash,
      });
      if (ctx.session.device !== null) openSignIn(ctx.db, ctx.session.device, staff, ctx.now);
      return {
        output: { staff },
        activity: [{ subject: ['shop_setting', 1], words: `Opened ${input.name}; ${input.personName} is owner` }],
      };
    },
  },
  'shop/open-practice-shop': { run: (_, ctx) => through(ctx, 'Went to the practice shop') },
  'shop/leave-practice-shop': { run: (_, ctx) => through(ctx, 'Left the practice shop') },
});

function through(ctx: Ctx, words: string) {
  if (!ctx.session.atTheMachine) {
    throw new AppError(
      'not-allowed',
      'shop/not-at-the-machine',
      'The practice shop is opened at the computer that keeps the workspace.',
    );
  }
  return { output: {}, activity: [{ subject: ['shop_setting', 1], words }] as const };
}
