/** Opens the practice shop: its title block, people, hours, catalogue, prices and customers. No ticket yet. */

import { bringUpToDate } from '#electron/wiring/program-catalogue.ts';
import { centsOf, lengthOf, percentOf, priceOf } from './figures.ts';
import { loadCastingTypes, loadGauges } from './load-catalogue.ts';
import { loadCustomers } from './load-customers.ts';
import { loadPrices } from './load-prices.ts';
import { readDemo } from './read-file.ts';
import { type Replay, send } from './replay.ts';
import type { RatesFile, StaffFile } from './shapes.ts';

const OPENED_AT = '2026-01-05T14:00:00.000Z';
const CLOSED_2027 = [
  ['2027-01-01', 'New Year'],
  ['2027-04-19', 'Blessing of the Boats'],
  ['2027-05-03', 'Lock Day'],
  ['2027-09-06', 'Harvest Monday'],
  ['2027-12-24', 'Midwinter'],
  ['2027-12-27', 'Midwinter'],
] as const;
const at = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));

/**
 * @param stopNow put accounts on stop at once; the storylines do it on its own day instead
 */
export async function loadShop(
  replay: Replay,
  { stopNow = true }: Readonly<{ stopNow?: boolean }> = {},
): Promise<void> {
  replay.setClock(OPENED_AT);
  await openShop(replay);
  await loadPeople(replay);
  await setShop(replay);
  await bringUpToDate((name, input) => replay.ask(name, input));
  await loadCastingTypes(replay);
  await loadGauges(replay);
  await loadPrices(replay);
  await loadCustomers(replay, stopNow);
}

async function openShop(replay: Replay): Promise<void> {
  const [owner] = readDemo<StaffFile>('staff').staff;
  await send(replay, 'shop/first-run', {
    name: 'Cinder Quay Head & Block',
    shortName: 'Cinder Quay',
    address: '7 Cinder Quay\nQuillmouth, Marren QM-0417',
    phone: '555-0100',
    email: 'counter@cinderquay.example.com',
    currencyCode: 'USD',
    currencySign: '$',
    units: 'inch',
    paper: 'letter',
    timeZone: 'America/New_York',
    practice: true,
    personName: owner?.name ?? '',
    personInitials: owner?.initials ?? '',
    pin: owner?.demoPin ?? '',
  });
}

async function loadPeople(replay: Replay): Promise<void> {
  const people = readDemo<StaffFile>('staff').staff.slice(1);
  // Initials are one person's at a time: who has left comes and goes first.
  const inOrder = [...people].sort((a, b) => Number(b.retiredOn !== null) - Number(a.retiredOn !== null));
  for (const person of inOrder) {
    const { staff } = await send(replay, 'staff/add-person', {
      name: person.name,
      initials: person.initials,
      jobWords: person.job,
      roles: person.roles as never,
      pin: person.demoPin,
    });
    if (person.retiredOn !== null) await send(replay, 'staff/retire-person', { staff, seenVersion: 1 });
  }
}

async function setShop(replay: Replay): Promise<void> {
  const rates = readDemo<RatesFile>('rates');
  await send(replay, 'shop/change-settings', {
    seenVersion: 1,
    changes: {
      minimumLabour: centsOf('35.00'),
      supplies: percentOf('4'),
      suppliesCap: centsOf('40.00'),
      feePerWash: centsOf('6.50'),
      storagePerDay: centsOf('5.00'),
      rush: percentOf('25'),
      sublet: percentOf('20'),
      buffer: percentOf('25'),
      depositNewRetail: centsOf('100.00'),
      depositSpecial: percentOf('50'),
      benchRate: priceOf(rates.benchRate),
      weldRate: priceOf(rates.weldRate),
      shimStackInch: lengthOf({ value: rates.shims.inMaxStack, unit: 'in' }),
      shimStackMm: lengthOf({ value: rates.shims.mmMaxStack, unit: 'mm' }),
      ceilingTaxIn: false,
      promiseMinute: at('16:30'),
    },
  });
  const weekdays = [1, 2, 3, 4, 5];
  await send(replay, 'promises/set-open-hours', {
    hours: [
      ...weekdays.map((weekday) => ({ weekday, part: 'counter' as const, from: at('07:30'), until: at('17:00') })),
      { weekday: 6, part: 'counter', from: at('08:00'), until: at('12:00') },
      ...weekdays.flatMap((weekday) => [
        { weekday, part: 'bench' as const, from: at('07:30'), until: at('12:00') },
        { weekday, part: 'bench' as const, from: at('12:30'), until: at('16:30') },
      ]),
    ],
  });
  for (const [day, words] of CLOSED_2027) await send(replay, 'promises/add-holiday', { day, words });
  for (const [series, next] of Object.entries(FIRST_NUMBERS))
    await send(replay, 'shop/set-next-number', { series: series as never, next });
  for (const [kind, body] of Object.entries(TEXTS))
    await send(replay, 'shop/add-text-version', { kind: kind as never, body, from: '2026-01-01' });
}

const FIRST_NUMBERS = { ticket: 20001, tag: 40001, invoice: 7001, credit_note: 101, receipt: 101 };
const TEXTS = {
  claim_terms:
    'We keep your castings with care until you collect them. Bring this sheet or proof of who you are. Work beyond the agreed amount is done only after you say yes.',
  warranty:
    'Our work is warranted for 12 months from the day it is collected, in the use you told us of. We put our own work right here; we do not cover parts that others fitted, or running without oil or coolant.',
  storage:
    'Storage is free for 30 days after we tell you the work is ready, then 5.00 a casting and day, never more than the unpaid invoice. Local law decides.',
  disclaimer:
    'Sizes are as measured here on the day shown, at 20 degrees C, with the gauges named. Assembly, torque and clearances in the engine are checked by whoever builds it.',
};
