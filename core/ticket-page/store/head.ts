/** The title block of the ticket page: customer, fields, what they said, signature, account. */
import type { z } from 'zod';
import { personViews, stopOf } from '../../customers/store/read.ts';
import { getCustomer } from '../../customers/store.ts';
import { formatMoney } from '../../kernel/format.ts';
import { readOwed } from '../../state/store/account.ts';
import { accountYes, type TicketRow } from '../../tickets/store.ts';
import { GASKET_WORDS, OLD_PARTS_WORDS, saidOf } from '../compute.ts';
import type { TicketPage } from '../contract.ts';
import { atWords, type Reading, who } from './rows.ts';

type Page = z.output<typeof TicketPage>;

export function customerHead(reading: Reading, row: TicketRow): Page['customer'] {
  const { db } = reading;
  const c = getCustomer(db, row.customer_id);
  const people = personViews(reading, c.id);
  const person = people.find((one) => one.personId === row.contact_person_id) ?? people[0];
  const terms = db.one(db.q.selectFrom('terms').select('words').where('id', '=', c.terms_id));
  return {
    customerId: c.id,
    name: c.name,
    shortName: c.short_name,
    words: c.kind === 'trade' ? `account, ${terms?.words ?? ''}` : 'retail',
    person: person ? { personId: person.personId, name: person.name, approveWords: person.approveWords } : null,
    phone: [person, ...people].flatMap((one) => one?.contacts ?? []).find((one) => one.kind === 'phone')?.value ?? null,
    stopWords: stopOf(c, reading.local),
    standingInstruction: c.standing_instruction,
    needsOrderNumber: c.needs_order_number === 1,
  };
}

export function fieldsOf({ db }: Reading, row: TicketRow): Page['fields'] {
  const engine =
    row.engine_type_id === null
      ? null
      : db.one(db.q.selectFrom('engine_type').select('code').where('id', '=', row.engine_type_id));
  return {
    orderNumber: row.order_number,
    wantedWords: row.wanted_words,
    broughtBy: row.brought_by,
    engine: engine?.code ?? null,
    engineWords: row.engine_words,
    useWords: row.use_words,
    gasket: row.gasket,
    valveLift: row.valve_lift_typed,
    valveLiftValue: row.valve_lift_nm,
    fuelWords: row.fuel_words,
    historyWords: row.history_words,
    notes: row.notes,
    oldParts: row.old_parts,
    crackCheck: row.crack_check,
    certified: row.certified === 1,
    declaredValue: row.declared_value_cents,
    contactPersonId: row.contact_person_id,
    customerId: row.customer_id,
  };
}

export const saidRows = ({ settings }: Reading, row: TicketRow): Page['said'] =>
  saidOf([
    ['Wanted', row.wanted_words],
    ['What they said', row.history_words],
    ['Use', row.use_words],
    ['Gasket', GASKET_WORDS[row.gasket]],
    ['Valve lift', row.valve_lift_typed],
    ['Fuel', row.fuel_words],
    ['Old parts', OLD_PARTS_WORDS[row.old_parts]],
    ['Crack check', row.crack_check === 'declined' ? 'declined by the customer' : null],
    ['Brought by', row.brought_by],
    ['Declared value', row.declared_value_cents === null ? null : formatMoney(row.declared_value_cents, settings)],
    ['Notes', row.notes],
  ]);

export function staffOf({ db }: Reading, id: TicketRow['taken_in_by']): Page['takenInBy'] {
  if (id === null) return null;
  const row = db.one(db.q.selectFrom('staff').select(['name', 'initials']).where('id', '=', id));
  return who(id, row?.initials ?? '', row?.name ?? '');
}

const SIGNED = { drawn: 'signed on the screen', on_paper: 'signed on paper', left_unsigned: 'left unsigned' } as const;

export function signedOf(reading: Reading, row: TicketRow): Page['signed'] {
  if (row.signed_how === null) return null;
  const at = row.claim_signed_at === null ? '' : ` ${atWords(reading, row.claim_signed_at)}`;
  const by = row.signed_by === null ? '' : ` by ${row.signed_by}`;
  return {
    how: row.signed_how,
    by: row.signed_by,
    at: row.claim_signed_at,
    words: `${SIGNED[row.signed_how]}${by}${at}`,
  };
}

/** Short account words: the page does not reckon all tickets of the customer. */
export function accountOf(reading: Reading, row: TicketRow): Page['money']['account'] {
  const c = getCustomer(reading.db, row.customer_id);
  const { owed } = readOwed(reading.db, c.id, reading.today);
  const stop = stopOf(c, reading.local);
  const waits = stop !== null && !accountYes(reading.db, row.id, 'work');
  return {
    state: stop === null ? 'none' : 'on stop',
    words: stop ?? '',
    used: owed,
    limit: c.credit_limit_cents,
    waitsForYes: waits,
  };
}
