/** S02: two heads of a V six; a crack behind an exhaust seat, the telephone, the weld, the test again. */
import { expectedOf } from './expected.ts';
import type { Story } from './kit.ts';
import { CLEAR, cutAndAssemble, LEFT, PAIR, RIGHT, stripAndWash, weld } from './s02-bench.ts';
import { invoiceAndRelease, type Leaving, shimsOf, signAndPutAway } from './steps.ts';

export async function crackAndWeld(story: Story): Promise<void> {
  const { at, send, work, read } = story;
  const told = expectedOf('S02');
  const job = await checkIn(story);
  await stripAndWash(story);
  const crack = (tag: number, code: string, word: string) => () =>
    read(tag, 'after', [{ quantity: 'crack-result', typed: word }], 'DK', code);
  await work(
    LEFT,
    'penetrant-check',
    'DK',
    ['2027-03-10 08:00', '2027-03-10 08:30'],
    crack(LEFT, 'penetrant-check', CLEAR),
  );
  await work(
    RIGHT,
    'penetrant-check',
    'DK',
    ['2027-03-10 08:35', '2027-03-10 09:05'],
    crack(RIGHT, 'penetrant-check', CLEAR),
  );
  await work(
    LEFT,
    'pressure-test',
    'DK',
    ['2027-03-10 09:10', '2027-03-10 09:50'],
    crack(LEFT, 'pressure-test', CLEAR),
  );
  await work(RIGHT, 'pressure-test', 'DK', ['2027-03-10 10:00', '2027-03-10 10:42'], async () => {
    await at('2027-03-10 10:40');
    await crack(RIGHT, 'pressure-test', 'crack found')();
    await found(story);
  });
  const question = await ask(story, job.ticketId);
  await answer(story, job, question);
  await weld(story);
  await cutAndAssemble(story, told);
  const seals = shimsOf(told.shimsLeft, told.shimsRight);
  await send(
    'parts/add-part',
    {
      ticketId: job.ticketId,
      castingId: null,
      part: { stockItemId: (await story.stockId('shim-mm')) as never, quantity: seals },
    },
    'MN',
  );
  const leaving: Leaving = {
    tag: PAIR,
    ticket: job.ticketId,
    customer: job.customerId,
    signer: 'OB',
    signedAt: '2027-03-16 14:30',
    place: 'D-1-2',
    readyAt: '2027-03-16 14:50',
    takenAt: '2027-03-16 16:00',
    takenBy: 'Ysolde Kerrow',
    person: job.personId,
  };
  await signAndPutAway(story, leaving, PAIR);
  await invoiceAndRelease(story, leaving);
}

type Job = Readonly<{ ticketId: never; customerId: number; personId: number | null }>;

async function checkIn({ at, send, photo, customer, stockId }: Story): Promise<Job> {
  await at('2027-03-09 08:05');
  await send('shop/set-next-number', { series: 'ticket', next: 20_455 }, 'OB');
  await at('2027-03-09 08:10');
  const { customerId } = await customer('Mudlark Lane');
  const { persons } = await send('customers/get-customer', { customerId: customerId as never }, 'TV');
  const idOf = (name: string) => persons.find((p) => p.name === name)?.personId ?? null;
  const ysolde = idOf('Ysolde Kerrow');
  const head = (tagNo: number, position: 'left' | 'right') => ({
    type: 'BV-6',
    tagNo,
    material: 'aluminium' as const,
    materialHow: 'magnet' as const,
    position,
    pair: 1,
    cameAssembled: true,
    ownMarks: position === 'left' ? 'paint L' : 'paint R',
    containers: [
      {
        kind: 'tray' as const,
        contents: 'followers and lash adjusters in order',
        count: 24,
        ownerMark: 'customers_own' as const,
      },
    ],
  });
  const made = await send(
    'tickets/check-in-ticket',
    {
      customer: { customerId, personId: ysolde } as never,
      ticket: {
        orderNumber: 'ML-7731',
        wantedWords: 'overheated while towing; not machined before',
        historyWords: 'overheated',
        gasket: 'mls',
        oldParts: 'discard',
        useWords: 'road, tows a boat',
      },
      castings: [head(LEFT, 'left'), head(RIGHT, 'right')],
      wishes: [
        { package: 'valve-job' },
        ...['penetrant-check', 'pressure-test', 'cam-bore-check', 'surface-head'].map((operation) => ({ operation })),
      ],
      ceiling: {
        amount: 150_000,
        taxIn: false,
        personId: idOf('Piet Vandrell') as never,
        saidBy: 'Piet Vandrell',
        means: 'email',
        words: 'Order ML-7731: up to 1500.00 before tax without a call.',
      },
      promise: { day: '2027-03-11', minute: 16 * 60 + 30, dependsOn: 'if no cracks are found' } as never,
      signed: { how: 'on_paper', by: 'Ysolde Kerrow' },
    },
    'TV',
  );
  for (const { castingId } of made.castings) {
    const seals = { stockItemId: (await stockId('seal-mm')) as never, quantity: 12 };
    await send('parts/add-part', { ticketId: made.ticketId, castingId, part: seals }, 'TV');
  }
  for (const tag of PAIR) await photo(tag, 'deck up, tag in place', 'TV');
  await at('2027-03-09 08:30');
  await send('pricing/send-estimate', { ticketId: made.ticketId }, 'TV');
  return { ticketId: made.ticketId as never, customerId, personId: ysolde };
}

/** Wed 10 March 10:40: the finding, a picture, and the hold. */
async function found({ send, bench, photo }: Story): Promise<void> {
  const page = await bench(RIGHT);
  const { findings } = await send('operations/list-findings', {}, 'DK');
  await send(
    'floor/report-finding',
    {
      castingId: page.castingId,
      operationId: page.operations.find((o) => o.kindCode === 'pressure-test')?.id ?? null,
      findingKindId: findings.find((f) => f.code === 'crack-found')?.id ?? null,
      place: 'exhaust seat 3E2, into water',
      words: 'crack from the exhaust seat 3E2 into water',
      hold: { reason: 'customer_answer', ownerRole: 'counter', words: 'weld or not' },
    },
    'DK',
  );
  await photo(RIGHT, 'crack at exhaust seat 3E2', 'DK', 'finding');
}

async function ask({ at, send, bench, kindId, stockId }: Story, ticketId: Job['ticketId']): Promise<{ yes: number }> {
  await at('2027-03-10 11:05');
  const page = await bench(RIGHT);
  const operation = async (code: string, quantity: number | null = null) => ({
    operationKindId: (await kindId(code)) as never,
    quantity,
  });
  const asked = await send(
    'approvals/ask-added-work',
    {
      ticketId,
      castingId: page.castingId,
      findings: page.findings.map((f) => f.id),
      words: 'A crack runs from the exhaust seat of cylinder 6, rear, into the water.',
      options: [
        {
          kind: 'work',
          words: 'weld, new seat, dye and pressure re-test, cam line again',
          daysMore: 3,
          operations: [
            await operation('weld-repair', 5400),
            await operation('seat-insert', 1),
            await operation('penetrant-check'),
            await operation('pressure-retest'),
            await operation('cam-bore-check'),
          ],
          parts: [{ stockItemId: (await stockId('insert-ex')) as never, quantity: 1 }],
        },
        { kind: 'other_casting', words: 'you find another casting' },
      ],
      expiresAt: '2027-03-11T21:30:00.000Z' as never,
      ifNoAnswer: 'the head waits; the promise moves day by day',
    },
    'TV',
  );
  const way = asked.options.find((o) => o.letter === 'a')?.id;
  if (!way) throw new Error('no way a');
  return { yes: way };
}

async function answer({ at, send, bench }: Story, job: Job, question: { yes: number }): Promise<void> {
  await at('2027-03-10 11:20');
  await send(
    'approvals/record-answer',
    {
      question: { optionId: question.yes as never },
      answer: 'yes',
      personId: job.personId as never,
      means: 'phone',
      numberCalled: '555-0115',
      words: 'Yes to a. Weld it.',
    },
    'TV',
  );
  const page = await bench(RIGHT);
  for (const hold of page.holds)
    await send('floor/close-hold', { holdId: hold.id, words: 'Ysolde Kerrow: yes to a' }, 'TV');
  await send(
    'promises/set-promise',
    {
      ticketId: job.ticketId,
      promise: { day: '2027-03-16', minute: 16 * 60 + 30 },
      reason: 'found_more',
      why: 'crack, weld and test again',
    } as never,
    'TV',
  );
}
