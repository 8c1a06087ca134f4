/** What changes the plan of the bench: not needed, done again, a rule let pass, a fact ticked, a piece taken off. */

import { getCasting } from '../../castings/store.ts';
import { holds } from '../../catalogue/compute/order-rules.ts';
import type { Ctx } from '../../host/implement.ts';
import { type Handlers, personOf } from '../../host/implement.ts';
import { getItem } from '../../intake/store.ts';
import { ruleBroken } from '../../kernel/errors.ts';
import type { ApprovalId } from '../../kernel/ids.ts';
import { getWorkLine, withdrawLine } from '../../lines/store/work-lines.ts';
import { isSigned } from '../../state/compute/signed.ts';
import { FACT_WORDS } from '../../state/compute/words.ts';
import { capital } from '../compute/bench-words.ts';
import type { floorContract } from '../contract.ts';
import { getOperation, insertFact, insertRedo, insertWaiver, markItemRemoved, markNotNeeded } from '../store.ts';
import { type Acting, named, readActing, refuseEnded } from './acting.ts';

type Plan = Pick<
  Handlers<typeof floorContract>,
  'floor/mark-not-needed' | 'floor/redo-operation' | 'floor/waive-rule' | 'floor/tick-fact' | 'floor/remove-item'
>;

export const plan: Plan = {
  'floor/mark-not-needed': {
    run({ operationId, seenVersion, why }, ctx) {
      const acting = readActing(ctx.db, operationId);
      refuseEnded(acting);
      if (acting.state.begun) {
        throw ruleBroken('floor/begun', `${named(acting)} was begun. Finish it, or stop it and say what you found.`);
      }
      refuseReliedOn(acting);
      markNotNeeded(ctx.db, operationId, seenVersion, { at: ctx.now, who: personOf(ctx), why });
      const withdrawn = withdrawOwnLine(ctx, acting, why);
      return {
        output: { words: `${named(acting)} is marked as not needed.${withdrawn ? ' Its charge is taken off.' : ''}` },
        activity: [
          { subject: ['operation', operationId], ticket: acting.ticket, words: `${named(acting)} not needed: ${why}` },
        ],
        touched: [acting.ticket],
      };
    },
  },
  'floor/redo-operation': {
    run({ operationId, seenVersion, cause, words }, ctx) {
      const acting = readActing(ctx.db, operationId);
      if (acting.operation.finishedAt === null || acting.now.known.redoneBy.has(operationId)) {
        throw ruleBroken('floor/not-done', `${named(acting)} is not done, or is being redone already.`);
      }
      if (isSigned(acting.now.known, acting.casting.id)) {
        throw ruleBroken('floor/signed', 'This casting is signed off. A lead must reopen it first.');
      }
      const first = getOperation(ctx.db, operationId);
      const made = insertRedo(ctx.db, first, cause, words);
      // The first row is only marked as seen, so that two people cannot redo it twice.
      ctx.db.step('operation', operationId, seenVersion, {});
      return {
        output: { words: `${named(acting)} is to be done again. It is charged to nobody.`, operationId: made },
        activity: [
          {
            subject: ['operation', made],
            ticket: acting.ticket,
            words: `${named(acting)} to be done again: ${CAUSES[cause]}`,
            after: { cause, words },
          },
        ],
        touched: [acting.ticket],
      };
    },
  },
  'floor/waive-rule': {
    run({ operationId, ruleId, reason, approvalId }, ctx) {
      const acting = readActing(ctx.db, operationId);
      refuseEnded(acting);
      const stop = acting.state.stops.find((s) => s.rule?.id === ruleId);
      if (!stop?.rule) throw ruleBroken('floor/rule-is-met', 'This rule does not stop it now. Load the page again.');
      if (stop.rule.waiver === 'none') throw ruleBroken('floor/no-waiver', `${stop.words} Nobody can let this pass.`);
      if (stop.rule.waiver === 'customer_signature') refuseUnsigned(ctx, acting, approvalId ?? null);
      insertWaiver(ctx.db, {
        operation_id: operationId,
        ticket_id: acting.ticket,
        order_rule_id: ruleId,
        reason,
        approval_id: approvalId ?? null,
      });
      return {
        output: {
          words: `Rule ${stop.rule.no} is let pass for ${named(acting)}. It prints on traveller and sign-off.`,
        },
        activity: [
          {
            subject: ['operation', operationId],
            ticket: acting.ticket,
            words: `Rule ${stop.rule.no} let pass for ${named(acting)}: ${reason}`,
          },
        ],
        touched: [acting.ticket],
      };
    },
  },
  'floor/tick-fact': {
    run({ castingId, fact, holds: yes, words }, { db }) {
      const casting = getCasting(db, castingId);
      const id = insertFact(db, {
        casting_id: castingId,
        ticket_id: casting.ticket_id,
        fact,
        holds: yes ? 1 : 0,
        words,
      });
      const said = `${casting.tag_no}: ${yes ? '' : 'no longer: '}${FACT_WORDS[fact]}.`;
      return {
        output: { words: said },
        activity: [{ subject: ['casting_fact', id], ticket: casting.ticket_id, words: said }],
        touched: [casting.ticket_id],
      };
    },
  },
  'floor/remove-item': {
    run({ itemId }, { db, now }) {
      const item = getItem(db, itemId);
      if (item.removed_at !== null) throw ruleBroken('floor/already-off', `${capital(item.words)} is off already.`);
      markItemRemoved(db, itemId, now);
      const casting = getCasting(db, item.casting_id);
      const said = `${capital(item.words)} is off ${casting.tag_no}. Put it in its bag.`;
      return {
        output: { words: said },
        activity: [{ subject: ['arrival_item', itemId], ticket: item.ticket_id, words: said }],
        touched: [item.ticket_id],
      };
    },
  },
};

const CAUSES = {
  setup: 'setup',
  tool_wear: 'tool wear',
  wrong_spec: 'wrong size asked',
  wrong_part: 'wrong part',
  damage: 'damage',
  hidden_defect: 'hidden defect',
  customer_change: 'the customer changed it',
} as const;

/** A done operation that had to wait for this one keeps it on the traveller. */
function refuseReliedOn({ operation, now }: Acting): void {
  const { facts, live } = now.known;
  const relies = live.find(
    (o) =>
      o.finishedAt !== null &&
      o.castingId === operation.castingId &&
      facts.rules.some(
        (rule) =>
          rule.strength === 'hard' &&
          !rule.first.startsWith('fact:') &&
          holds(rule.first, operation.kind, facts.groups) &&
          holds(rule.next, o.kind, facts.groups) &&
          !facts.waivers.some((w) => w.ruleId === rule.id && w.operationId === o.id),
      ),
  );
  if (relies) {
    const words = capital(relies.kind.words);
    throw ruleBroken('floor/relied-on', `${words} is done and relies on it. Do it, or let a lead decide.`);
  }
}

/** A charge of its own goes with it; a package keeps its price. */
function withdrawOwnLine({ db, now }: Ctx, { operation, now: ticket }: Acting, why: string): boolean {
  const { facts } = ticket.known;
  const line = facts.lines.find((l) => l.id === operation.lineId);
  if (line?.kind !== 'operation' || line.billed || line.withdrawn) return false;
  const others = facts.operations.filter((o) => o.lineId === line.id && o.id !== operation.id);
  if (others.some((o) => o.notNeededAt === null)) return false;
  withdrawLine(db, line.id, getWorkLine(db, line.id).version, now, `Not needed: ${why}`.slice(0, 240));
  return true;
}

/** The customer's own signature: an answer signed on this ticket, or the claim ticket when it says no to the check. */
function refuseUnsigned({ db }: Ctx, { ticket, now }: Acting, approval: ApprovalId | null): void {
  const row = db.one(
    db.q.selectFrom('ticket').select(['crack_check', 'signed_how', 'claim_signed_at']).where('id', '=', ticket),
  );
  if (row?.crack_check === 'declined' && row.claim_signed_at !== null && row.signed_how !== 'left_unsigned') return;
  const signed =
    approval !== null &&
    db.one(
      db.q
        .selectFrom('approval')
        .select('id')
        .where('id', '=', approval)
        .where('ticket_id', '=', ticket)
        .where('means', '=', 'signature'),
    ) !== undefined;
  if (signed) return;
  throw ruleBroken(
    'floor/needs-signature',
    `Only the customer's signature lets this pass. Have ticket ${now.known.facts.ticket.number} signed, then name that answer.`,
  );
}
