/** The counter on Friday 14 May 2027: tickets in every state a plain week has. */
import type { Story } from './kit.ts';
import { WORN_BORES } from './worn-bores.ts';

const THURSDAY = '2027-05-13';
const FRIDAY = '2027-05-14';
const MONDAY = '2027-05-17';
const AT_1630 = 16 * 60 + 30;

type In = Readonly<{
  who: string;
  at: string;
  type: string;
  metal: 'iron_grey' | 'aluminium';
  tags: readonly number[];
  wishes: readonly ({ package: string } | { operation: string })[];
  promise: string;
  minute?: number;
  wanted: string;
  order?: string;
}>;

type Made = Readonly<{ ticketId: never; customerId: number; personId: number | null; castings: readonly never[] }>;

export async function theDay(story: Story): Promise<void> {
  const { at, send } = story;
  await at('2027-05-12 08:00');
  await send('shop/set-next-number', { series: 'ticket', next: 20_830 }, 'OB');
  const waiting = await checkIn(story, {
    who: 'Ouvel Estuary Ferry Line',
    at: '2027-05-12 08:10',
    type: 'HB-6',
    metal: 'iron_grey',
    tags: [41_801],
    wishes: [{ package: 'diesel-head' }],
    promise: MONDAY,
    wanted: 'uses water, no visible leak',
    order: 'FL-2318',
  });
  await estimate(story, waiting);
  const approved = await checkIn(story, {
    who: 'Sluice Gate Boat Yard',
    at: '2027-05-12 09:20',
    type: 'TW-4',
    metal: 'aluminium',
    tags: [41_802],
    wishes: [{ package: 'valve-job' }, { operation: 'penetrant-check' }],
    promise: MONDAY,
    wanted: 'smokes at start',
  });
  await agree(story, approved, await estimate(story, approved));
  await inWork(story);
  await readyToTell(story);
  await quote(story);
  await waitingParts(story);
  await declined(story);
  await at(`${FRIDAY} 08:30`);
  await send(
    'tickets/log-contact',
    {
      customerId: approved.customerId as never,
      ticketId: approved.ticketId,
      means: 'call',
      about: 'late',
      words: 'Asks whether Monday holds; nobody at the bench to ask. Ring back.',
      reached: false,
    },
    'MN',
  );
}

async function checkIn(story: Story, what: In): Promise<Made> {
  const { at, send, photo, customer } = story;
  await at(what.at);
  const { customerId, personId } = await customer(what.who);
  const made = await send(
    'tickets/check-in-ticket',
    {
      customer: { customerId, personId } as never,
      ticket: { wantedWords: what.wanted, orderNumber: what.order ?? null, oldParts: 'discard', gasket: 'composition' },
      castings: what.tags.map((tagNo, i) => ({
        type: what.type,
        tagNo,
        material: what.metal,
        materialHow: 'magnet' as const,
        position: what.tags.length === 1 ? ('single' as const) : i === 0 ? ('left' as const) : ('right' as const),
        pair: what.tags.length === 1 ? null : 1,
        cameAssembled: true,
      })),
      wishes: [...what.wishes],
      promise: { day: what.promise, minute: what.minute ?? AT_1630 } as never,
      signed: { how: 'on_paper', by: what.who },
    },
    'TV',
  );
  for (const tag of what.tags) await photo(tag, 'deck up, tag in place', 'TV');
  return {
    ticketId: made.ticketId as never,
    customerId,
    personId,
    castings: made.castings.map((c) => c.castingId as never),
  };
}

const estimate = async ({ send }: Story, made: Made): Promise<number> =>
  (await send('pricing/send-estimate', { ticketId: made.ticketId }, 'TV')).estimateId;

async function agree({ send }: Story, made: Made, estimateId: number): Promise<void> {
  await send(
    'approvals/record-answer',
    {
      question: { estimateId: estimateId as never },
      answer: 'yes',
      personId: made.personId as never,
      means: 'counter',
      words: 'Yes, go ahead.',
    },
    'TV',
  );
}

/** A pair on the benches, one operation running, promised this afternoon at a time of its own. */
async function inWork(story: Story): Promise<void> {
  const { at, send, work, read, bench } = story;
  const tags = [41_803, 41_804];
  const made = await checkIn(story, {
    who: 'Patina Yard Restorations',
    at: `${THURSDAY} 07:35`,
    type: 'NV-8',
    metal: 'iron_grey',
    tags,
    wishes: [{ package: 'valve-job' }, { operation: 'mag-particle-check' }],
    promise: FRIDAY,
    minute: 15 * 60,
    wanted: 'one cylinder down on compression',
  });
  await agree(story, made, await estimate(story, made));
  let minute = 0;
  const slot = (length: number): readonly [string, string] => {
    const from = minute;
    minute += length;
    return [clock(from), clock(minute - 2)];
  };
  const clock = (m: number): string =>
    `${THURSDAY} ${String(8 + Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
  for (const tag of tags) await work(tag, 'disassemble-head', 'JP', slot(30));
  for (const tag of tags) {
    const page = await bench(tag);
    await send('castings/confirm-metal', { castingId: page.castingId, material: 'iron_grey', how: 'magnet' }, 'JP');
    for (const item of page.arrival.items.filter((i) => i.removeBeforeWash && i.removedAt === null))
      await send('floor/remove-item', { itemId: item.id }, 'JP');
  }
  for (const tag of tags) await work(tag, 'hot-tank', 'JP', slot(75));
  for (const tag of tags) {
    await work(tag, 'mag-particle-check', 'DK', slot(25), () =>
      read(tag, 'after', [{ quantity: 'crack-result', typed: 'none found' }], 'DK', 'mag-particle-check'),
    );
  }
  await at(`${FRIDAY} 07:40`);
  const page = await bench(41_803);
  const next = page.operations.find((o) => o.kindCode === 'guide-check');
  if (next)
    await send('floor/start-operation', { operations: [{ operationId: next.id, seenVersion: next.version }] }, 'SO');
}

/** Done and put away this morning; nobody has told them yet. */
async function readyToTell(story: Story): Promise<void> {
  const { at, send, work, bench } = story;
  const tag = 41_805;
  const made = await checkIn(story, {
    who: 'Nettle & Fen Dairy Rounds',
    at: `${THURSDAY} 13:20`,
    type: 'LO-4',
    metal: 'iron_grey',
    tags: [tag],
    wishes: [{ package: 'head-check' }],
    promise: FRIDAY,
    wanted: 'check only, tell us what it needs',
  });
  await agree(story, made, await estimate(story, made));
  let hour = 7 * 60 + 45;
  const slot = (): readonly [string, string] => {
    hour += 15;
    const text = (m: number) =>
      `${FRIDAY} ${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
    return [text(hour - 15), text(hour - 3)];
  };
  for (const operation of (await bench(tag)).operations) {
    if (operation.gate === 'clean') {
      const page = await bench(tag);
      await send('castings/confirm-metal', { castingId: page.castingId, material: 'iron_grey', how: 'magnet' }, 'JP');
      for (const item of page.arrival.items.filter((i) => i.removeBeforeWash && i.removedAt === null))
        await send('floor/remove-item', { itemId: item.id }, 'JP');
    }
    await work(tag, operation.kindCode, operation.centre.code === 'crack-bench' ? 'DK' : 'JP', slot(), () =>
      measured(story, tag, operation.kindCode),
    );
  }
  const casting = (await bench(tag)).castingId;
  const open = await send('castings/get-sign-off', { castingId: casting }, 'OB');
  await send('castings/sign-off-casting', { castingId: casting, seenVersion: open.version, place: 'first' }, 'OB');
  await send('racks/put-away', { things: [{ castingId: casting }], place: 'D-2-5' }, 'SO');
  await at(`${FRIDAY} 09:20`);
}

/** What the check of a head writes down. */
async function measured({ read }: Story, tag: number, code: string): Promise<void> {
  if (code.endsWith('-check') && code !== 'guide-check')
    await read(tag, 'after', [{ quantity: 'crack-result', typed: 'none found' }], 'DK', code);
  if (code === 'pressure-test')
    await read(tag, 'after', [{ quantity: 'crack-result', typed: 'none found' }], 'DK', code);
  if (code !== 'guide-check') return;
  const valves = ['1E', '1I', '2I', '2E', '3E', '3I', '4I', '4E'];
  await read(
    tag,
    'after',
    valves.flatMap((spot) => [
      { quantity: 'guide-id', spot, point: 'mid', typed: '0.3131', unit: 'in', tool: 'G08' },
      { quantity: 'stem', spot, typed: '0.3102', unit: 'in', tool: 'G02' },
    ]),
    'JP',
  );
}

/** A price on the telephone that nobody has answered. */
async function quote({ at, send, customer }: Story): Promise<void> {
  await at(`${THURSDAY} 10:05`);
  const { customerId, personId } = await customer('Steady Light Generator Hire');
  await send(
    'tickets/open-enquiry',
    {
      customer: { customerId, personId } as never,
      engine: 'BG-2',
      wantedWords: 'how much for a valve job on a standby twin, and by when',
    },
    'MN',
  );
}

/** A block that was measured and waits for pistons, with somebody chasing them. */
async function waitingParts(story: Story): Promise<void> {
  const { at, read, send, bench } = story;
  const made = await checkIn(story, {
    who: 'Brøndlykke Motorværksted',
    at: `${THURSDAY} 11:00`,
    type: 'TW-4B',
    metal: 'aluminium',
    tags: [41_806],
    wishes: [{ package: 'rebore' }],
    promise: '2027-05-21',
    wanted: 'rebore to the next size',
  });
  await agree(story, made, await estimate(story, made));
  const page = await bench(41_806);
  await at(`${THURSDAY} 13:20`);
  await read(41_806, 'before', WORN_BORES, 'BL');
  await send(
    'floor/open-hold',
    {
      castingId: page.castingId,
      reason: 'parts',
      words: 'pistons ordered, expected Tuesday',
      ownerRole: 'parts',
      followUpOn: '2027-05-18' as never,
    },
    'MN',
  );
}

/** They thought better of it. */
async function declined(story: Story): Promise<void> {
  const { at, send } = story;
  const made = await checkIn(story, {
    who: 'Ebo Ferrantyne',
    at: `${THURSDAY} 14:40`,
    type: 'FN-1',
    metal: 'aluminium',
    tags: [41_807],
    wishes: [{ package: 'head-check' }],
    promise: MONDAY,
    wanted: 'no start after winter',
  });
  await estimate(story, made);
  await at(`${FRIDAY} 08:05`);
  const page = await send('tickets/get-ticket', { ticketId: made.ticketId } as never, 'TV');
  await send(
    'tickets/decline-ticket',
    { ticketId: made.ticketId, seenVersion: (page as { version: number }).version, why: 'buys another engine' },
    'TV',
  );
}
