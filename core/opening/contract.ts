/** The very first command of a workspace. */
import { z } from 'zod';
import { command } from '../kernel/contract.ts';
import { idOf, optionalWords, words } from '../kernel/schemas.ts';
import { Settings } from '../shop/contract.ts';

export const openingContract = {
  /** Once, while the workspace is empty: name, currency, units and paper are enough; the first person becomes owner. */
  'shop/first-run': command({
    may: 'nobody',
    secret: ['pin'],
    input: z.strictObject({
      name: Settings.name,
      shortName: optionalWords(40, 'a short name'),
      address: Settings.address,
      phone: Settings.phone,
      email: Settings.email,
      taxNumber: Settings.taxNumber,
      currencyCode: Settings.currencyCode,
      currencySign: Settings.currencySign,
      units: Settings.units,
      paper: Settings.paper,
      language: Settings.language.default('en'),
      timeZone: Settings.timeZone,
      practice: z.boolean().default(false),
      personName: words(80, 'your name'),
      personInitials: words(4, 'your initials'),
      pin: z.string().regex(/^\d{4,8}$/, 'A PIN is 4 to 8 digits.'),
    }),
    output: z.strictObject({ staff: idOf<'staff'>() }),
  }),
  /** The door to the practice shop, at the machine itself. The program makes it if needed and opens it after this answer. */
  'shop/open-practice-shop': command({ may: 'nobody', input: z.strictObject({}), output: z.strictObject({}) }),
  /** Back to the shop's own workspace. */
  'shop/leave-practice-shop': command({ may: 'nobody', input: z.strictObject({}), output: z.strictObject({}) }),
} as const;
