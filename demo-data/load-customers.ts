/** Terms, customers, the people who speak for them, certificates. */
import { centsOf, percentOf } from './figures.ts';
import { readDemo } from './read-file.ts';
import { type Replay, send } from './replay.ts';
import type { CustomersFile } from './shapes.ts';

/** @param stopNow also put the accounts on stop that are on stop at the end of the story */
export async function loadCustomers(replay: Replay, stopNow: boolean): Promise<void> {
  const file = readDemo<CustomersFile>('customers');
  for (const terms of file.terms) {
    await send(replay, 'customers/add-terms', {
      code: terms.code,
      words: terms.words,
      kind: terms.kind as never,
      days: terms.days,
      early:
        terms.earlyPercent === null ? null : { percent: percentOf(terms.earlyPercent), days: terms.earlyDays ?? 0 },
    });
  }
  for (const customer of file.customers) await loadCustomer(replay, customer, stopNow);
}

async function loadCustomer(
  replay: Replay,
  customer: CustomersFile['customers'][number],
  stopNow: boolean,
): Promise<void> {
  const { customerId } = await send(replay, 'customers/add-customer', {
    kind: customer.kind as never,
    name: customer.name,
    shortName: customer.shortName,
    legalName: customer.legalName,
    trade: customer.trade,
    billingAddress: customer.billingAddress,
    notes: customer.notes,
    needsOrderNumber: customer.needsOrderNumber,
    whoApproves: customer.whoApproves as never,
    persons: customer.persons.map((p) => ({
      ...p,
      approveLimit: p.approveLimit === null ? null : centsOf(p.approveLimit),
      prefers: p.prefers as never,
      contacts: p.contacts.map((c) => ({ kind: c.kind as never, value: c.value })),
    })),
  });
  const { version } = await send(replay, 'customers/set-terms', {
    customerId,
    seenVersion: 1,
    terms: customer.terms,
    creditLimit: customer.creditLimit === null ? null : centsOf(customer.creditLimit),
    labourDiscount: percentOf(customer.labourDiscountPercent),
    partsDiscount: percentOf(customer.partsDiscountPercent),
  });
  const exemption = customer.taxExemption;
  if (exemption) {
    await send(replay, 'customers/add-exemption', {
      customerId,
      taxCode: exemption.taxRate,
      certificateNo: exemption.certificate,
      words: exemption.words,
      from: exemption.from,
      until: exemption.until,
    });
  }
  if (stopNow && customer.onStop)
    await send(replay, 'customers/put-on-stop', { customerId, seenVersion: version, why: customer.onStop.why });
}
