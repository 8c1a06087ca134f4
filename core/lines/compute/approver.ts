/**
 * Who may say yes for a customer, and up to what (I7). A no may be written down from anybody.
 *
 * Source: common practice, no source.
 */
import type { Cents } from '../../kernel/units.ts';
import { centsText } from './working.ts';

/** A person of the customer; null when the answer came from nobody we know. */
export type Approver = Readonly<{
  name: string;
  mayApprove: boolean;
  /** Before tax; null for any amount. */
  limit: Cents | null;
}>;

/**
 * Why this yes does not count by itself, as a sentence; null when it does.
 *
 * @param whoApproves `anyone`: the customer wants every yes to count
 */
export function mayNotApprove(
  whoApproves: 'named' | 'anyone',
  person: Approver | null,
  saidBy: string,
  amount: Cents,
): string | null {
  if (whoApproves === 'anyone') return null;
  const end = 'Pick a named person, or a lead gives a reason.';
  if (!person?.mayApprove) return `${person?.name ?? saidBy} may not approve for this customer. ${end}`;
  if (person.limit !== null && amount > person.limit) {
    return `${person.name} may approve up to ${centsText(person.limit)}, this is ${centsText(amount)}. ${end}`;
  }
  return null;
}
