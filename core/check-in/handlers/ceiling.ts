/** A ceiling said at the counter: an answer of the customer like any other, with who may say it. */
import { getCustomer, getPerson, listPersons } from '../../customers/store.ts';
import { type Ctx, personOf } from '../../host/implement.ts';
import { badField } from '../../kernel/errors.ts';
import type { ApprovalId, CustomerId, CustomerPersonId, TicketId } from '../../kernel/ids.ts';
import type { Cents } from '../../kernel/units.ts';
import { mayNotApprove } from '../../lines/compute/approver.ts';
import { insertApproval } from '../../lines/store/answers.ts';

export type CeilingWish = Readonly<{
  amount: Cents;
  taxIn: boolean;
  personId: CustomerPersonId | null;
  saidBy: string;
  means: 'signature' | 'text' | 'email' | 'phone' | 'counter';
  numberCalled: string | null;
  words: string;
  overrideWhy: string | null;
}>;

/** @throws AppError `invalid-input` when the number is missing or the person may not approve so much */
export function setCeiling(
  ctx: Ctx,
  ticket: TicketId,
  customer: CustomerId,
  typed: CeilingWish,
  person: CustomerPersonId | null,
): ApprovalId {
  if (typed.means === 'phone' && typed.numberCalled === null) {
    throw badField('check-in/no-number', 'ceiling.numberCalled', 'Write who said yes and the number you called.');
  }
  const who = typed.personId ?? speakerOf(ctx, customer, typed.saidBy, person);
  const row = who === null ? null : getPerson(ctx.db, who);
  const known = row?.customer_id === customer ? row : null;
  const approver = known && { name: known.name, mayApprove: known.may_approve === 1, limit: known.approve_limit_cents };
  const refusal = mayNotApprove(getCustomer(ctx.db, customer).who_approves, approver, typed.saidBy, typed.amount);
  const override = refusal !== null && typed.overrideWhy !== null && ctx.session.may.has('leads:decide');
  if (refusal !== null && !override) throw badField('check-in/may-not-approve', 'ceiling.saidBy', refusal);
  return insertApproval(
    ctx.db,
    {
      ticket_id: ticket,
      about: 'ceiling',
      answer: 'yes',
      amount_cents: typed.amount,
      tax_in: typed.taxIn ? 1 : 0,
      person_id: who,
      said_by: typed.saidBy,
      means: typed.means,
      number_called: typed.numberCalled,
      words: typed.words,
      said_at: ctx.now,
      override_by: override ? personOf(ctx) : null,
      override_why: override ? typed.overrideWhy : null,
    },
    [],
  );
}

/** The named person of that name, else the person the ticket speaks to when the name is theirs. */
function speakerOf(
  ctx: Ctx,
  customer: CustomerId,
  saidBy: string,
  person: CustomerPersonId | null,
): CustomerPersonId | null {
  const named = listPersons(ctx.db, customer).find((one) => one.name.toLowerCase() === saidBy.toLowerCase());
  return named?.id ?? (person !== null && getPerson(ctx.db, person).name === saidBy ? person : null);
}
