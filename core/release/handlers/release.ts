/** Handing over, whole or part. */
import type { z } from 'zod';
import { getPerson } from '../../customers/store.ts';
import { type Ctx, type Handlers, type PrepareCtx, personOf } from '../../host/implement.ts';
import { keptPicture } from '../../host/kept-file.ts';
import type { StoredFile } from '../../host/services.ts';
import { insertCount, insertFate } from '../../intake/store.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import { formatCount } from '../../kernel/format.ts';
import type { ArrivalItemId, Id } from '../../kernel/ids.ts';
import { keepAttachment } from '../../photos/store.ts';
import type { Identity } from '../../racks/store/goods.ts';
import { readTicketNow } from '../../state/store/load-facts.ts';
import { containerStop } from '../compute.ts';
import type { releaseContract } from '../contract.ts';
import { type Door, doorItem, moneyOf, readDoor, type Said, stopsOf } from './door.ts';

type Input = z.output<(typeof releaseContract)['racks/release-goods']['input']>;
type Container = Identity['containers'][number];

type Plan = Readonly<{
  door: Door;
  castings: readonly Identity[];
  containers: readonly Container[];
  said: ReadonlyMap<ArrivalItemId, Said>;
  bags: ReadonlySet<number>;
  /** Everything that is left of the ticket leaves now. */
  last: boolean;
}>;

const prepare = async ({ signatureFile }: Pick<Input, 'signatureFile'>, { services }: PrepareCtx) =>
  signatureFile === null ? null : keptPicture(signatureFile, services, 'signatureFile');

export const releasing: Pick<Handlers<typeof releaseContract>, 'racks/release-goods' | 'racks/release-unpaid'> = {
  'racks/release-goods': {
    prepare,
    run(input, ctx, file: StoredFile | null) {
      const plan = planOf(ctx, input);
      refuse(ctx, plan, input, file);
      const money = moneyOf(ctx, plan.door, input.castings, plan.last);
      if (!money.clear) {
        throw ruleBroken('release/unpaid', money.why ?? '', {
          offers: [{ words: 'Let it go with a reason', request: 'racks/release-unpaid' }],
        });
      }
      return write(ctx, plan, input, file, null);
    },
  },
  'racks/release-unpaid': {
    prepare,
    run({ reason, ...input }, ctx, file: StoredFile | null) {
      const plan = planOf(ctx, input);
      refuse(ctx, plan, input, file);
      return write(ctx, plan, input, file, reason);
    },
  },
};

function planOf(ctx: Ctx, input: Input): Plan {
  const door = readDoor(ctx, input.ticketId);
  const all = [...door.goods.castings.flatMap((one) => one.containers), ...door.goods.containers];
  const castings = input.castings.map((id, index) => {
    const found = door.goods.castings.find((one) => one.castingId === id);
    if (!found)
      throw badField(
        'release/other-ticket',
        `castings.${index}`,
        'This casting is on another ticket. Load the page again.',
      );
    return found;
  });
  const containers = input.containers.map(({ containerId }, index) => {
    const found = all.find((one) => one.containerId === containerId);
    if (!found)
      throw badField(
        'release/other-ticket',
        `containers.${index}`,
        'This bag is on another ticket. Take it back to its rack.',
      );
    return found;
  });
  const leaving = new Set<number>([...input.castings, ...input.containers.map((one) => one.containerId)]);
  const stays = [
    ...door.goods.castings.filter((one) => one.outAt === null && !input.castings.includes(one.castingId)),
    ...all.filter((one) => one.outAt === null && !input.containers.some((row) => row.containerId === one.containerId)),
  ];
  if (leaving.size === 0) throw badField('release/nothing', 'castings', 'Choose what leaves.');
  return {
    door,
    castings,
    containers,
    said: new Map(input.items.map(({ itemId, ...said }) => [itemId, said])),
    bags: new Set(input.containers.map((one) => one.containerId)),
    last: stays.length === 0,
  };
}

/** @throws AppError naming the first thing that keeps the goods here; every one stands in `fields`. */
function refuse(ctx: Ctx, plan: Plan, input: Input, file: StoredFile | null): void {
  const fields: Record<string, string> = {};
  const leadSays = ctx.session.may.has('leads:decide');
  for (const [index, casting] of plan.castings.entries()) {
    const stops = stopsOf(plan.door, casting, {
      said: plan.said,
      bags: plan.bags,
      unworkedWhy: input.unworkedWhy,
      leadSays,
    });
    if (stops.length > 0) fields[`castings.${index}`] = stops.join(' ');
    const left = leftBehind(casting, plan, input);
    if (left) fields.stays ??= left;
  }
  for (const [index, container] of plan.containers.entries()) {
    const { counted = null, explained = null } = input.containers[index] ?? {};
    const stop = containerStop({
      label: container.label,
      out: container.outAt !== null,
      count: container.count,
      counted,
      explained,
    });
    if (stop !== null) fields[`containers.${index}`] = stop;
  }
  const first = Object.values(fields)[0];
  if (first !== undefined) throw ruleBroken('release/not-ready', first, { fields });
  refuseStranger(ctx, plan, input);
  if (file === null && !input.signedOnPaper) {
    throw badField('release/not-signed', 'signatureFile', 'Let them sign after the count, on the screen or on paper.');
  }
}

/** A bag of a leaving casting leaves with it, or somebody says why it stays. */
function leftBehind(casting: Identity, plan: Plan, input: Input): string | undefined {
  const bag = casting.containers.find(
    (one) =>
      one.outAt === null &&
      !plan.bags.has(one.containerId) &&
      !input.stays.some((stay) => stay.containerId === one.containerId),
  );
  return (
    bag &&
    `${bag.label} is still ${bag.place === null ? 'here' : `in ${bag.place}`}: ${bag.contents}. Fetch it, or say why it stays.`
  );
}

function refuseStranger(ctx: Ctx, { door }: Plan, input: Input): void {
  if (input.proof === 'identity' && input.proofWords === null) {
    throw badField('release/which-paper', 'proofWords', 'Write which paper they showed.');
  }
  if (input.personId === null) return;
  const person = getPerson(ctx.db, input.personId);
  if (person.customer_id !== door.customer.id)
    throw badField('release/other-person', 'personId', 'This person does not speak for this customer.');
  if (person.may_collect === 0 && input.proof !== 'claim_ticket') {
    throw badField(
      'release/may-not-collect',
      'personId',
      `${person.name} may not collect for this customer. Ask for the claim ticket, or ring them.`,
    );
  }
}

function write(ctx: Ctx, plan: Plan, input: Input, file: StoredFile | null, unpaidWhy: string | null) {
  const { db, now } = ctx;
  const releaseId = db.add('release', {
    ticket_id: input.ticketId,
    taken_by: input.takenBy,
    person_id: input.personId,
    proof: input.proof,
    proof_words: input.proofWords,
    signature_id: file === null ? null : keepAttachment(db, file),
    signed_on_paper: input.signedOnPaper ? 1 : 0,
    unworked: input.unworkedWhy === null ? 0 : 1,
    unworked_why: input.unworkedWhy,
    unpaid_ok_by: unpaidWhy === null ? null : personOf(ctx),
    unpaid_why: unpaidWhy,
  });
  for (const casting of plan.castings) letGo(ctx, plan, casting, releaseId);
  for (const container of plan.containers) {
    db.set('container', container.containerId, { out_at: now });
    db.add('release_item', { release_id: releaseId, ticket_id: input.ticketId, container_id: container.containerId });
  }
  return done(ctx, plan, input, releaseId, unpaidWhy);
}

function letGo(ctx: Ctx, plan: Plan, casting: Identity, releaseId: Id<'release'>): void {
  const { db, now } = ctx;
  db.step('casting', casting.castingId, casting.version, { out_at: now });
  db.add('release_item', { release_id: releaseId, ticket_id: casting.ticketId, casting_id: casting.castingId });
  for (const item of casting.items) {
    const row = { id: item.itemId, ticket_id: casting.ticketId };
    const said = plan.said.get(item.itemId);
    const end = doorItem(plan.door, casting, item, said, plan.bags);
    if (end.fate !== null && end.fate !== item.fate) {
      insertFate(db, row, end.fate, {
        count: end.out,
        container: end.fate === 'in_bag' ? item.containerId : null,
        words: end.explained,
      });
    }
    if (end.out !== null && (said !== undefined || end.counted !== null))
      insertCount(db, row, 'out', end.out, end.explained);
  }
}

function done(ctx: Ctx, plan: Plan, input: Input, releaseId: Id<'release'>, unpaidWhy: string | null) {
  const { facts, goods } = plan.door;
  const pieces = plan.castings.length + plan.containers.length;
  const staying = [
    ...goods.castings
      .filter((one) => one.outAt === null && !input.castings.includes(one.castingId))
      .map((one) => ({ label: String(one.tagNo), words: one.title })),
    ...[...goods.castings.flatMap((one) => one.containers), ...goods.containers]
      .filter((one) => one.outAt === null && !plan.bags.has(one.containerId))
      .map((one) => ({
        label: one.label,
        words: input.stays.find((stay) => stay.containerId === one.containerId)?.why ?? one.contents,
      })),
  ];
  const words =
    staying.length === 0
      ? `All out: ${formatCount(pieces, 'piece')}.`
      : `${pieces} of ${pieces + staying.length} pieces out; ${staying.map((one) => one.label).join(', ')} ${staying.length === 1 ? 'stays' : 'stay'}.`;
  const unpaid = unpaidWhy === null ? '' : `, unpaid: ${unpaidWhy}`;
  return {
    output: { releaseId, pieces, ticketWord: readTicketNow(ctx.db, input.ticketId).word, words, staying },
    activity: [
      {
        subject: ['release', releaseId],
        ticket: input.ticketId,
        words: `${input.takenBy} took ${formatCount(pieces, 'piece')} of ticket ${facts.ticket.number}${unpaid}`,
        after: {
          castings: plan.castings.map((one) => one.tagNo),
          containers: plan.containers.map((one) => one.label),
          proof: input.proof,
          stays: input.stays,
        },
      },
    ] as const,
    touched: [input.ticketId],
  };
}
