/** S01: a classic head, in at 07:40 and home at 16:45 the same day. */
import { expectedOf } from './expected.ts';
import type { Story } from './kit.ts';
import { handOver, heightReadings, shimsOf, vacuumReadings } from './steps.ts';

const TAG = 41170;
const DAY = '2027-03-02';

export async function dayJob(story: Story): Promise<void> {
  const { at, send, work, read, photo } = story;
  const told = expectedOf('S01');
  await at(`${DAY} 07:35`);
  await send('shop/set-next-number', { series: 'ticket', next: 20_417 }, 'OB');
  await at(`${DAY} 07:40`);
  const customer = await story.customer('Annelore Fisk-Tarrow');
  const made = await send(
    'tickets/check-in-ticket',
    {
      customer: customer as never,
      ticket: {
        wantedWords: 'loses power up hill; wants the old parts back',
        oldParts: 'return',
        gasket: 'composition',
        useWords: 'road, classic saloon',
        fuelWords: 'petrol',
      },
      castings: [
        {
          type: 'LO-4',
          tagNo: TAG,
          material: 'iron_grey',
          materialHow: 'magnet',
          position: 'single',
          castingNumber: '71K-0417',
          cameAssembled: true,
          ownMarks: 'blue paint F at the front',
          marks: [{ condition: 'gasket-burn', x: 4200, y: 5200, words: 'between 2 and 3' }],
          containers: [{ kind: 'box', contents: 'rocker shaft and bolts', count: 9 }],
        },
      ],
      wishes: [{ package: 'valve-job' }, { operation: 'mag-particle-check' }],
      promise: { day: DAY, minute: 16 * 60 + 30 } as never,
      signed: { how: 'on_paper', by: 'Annelore Fisk-Tarrow' },
    },
    'TV',
  );
  const casting = made.castings[0]?.castingId ?? (0 as never);
  await send(
    'parts/add-part',
    {
      ticketId: made.ticketId,
      castingId: casting,
      part: { stockItemId: (await story.stockId('seal-in')) as never, quantity: 8 },
    } as never,
    'TV',
  );
  await photo(TAG, 'deck up, tag in place', 'TV');
  await photo(TAG, 'casting number', 'TV');
  await at(`${DAY} 07:52`);
  const estimate = await send('pricing/send-estimate', { ticketId: made.ticketId }, 'TV');
  await send(
    'approvals/record-answer',
    {
      question: { estimateId: estimate.estimateId },
      answer: 'yes',
      personId: customer.personId as never,
      saidBy: 'Annelore Fisk-Tarrow',
      means: 'counter',
      words: 'Yes, go ahead.',
    },
    'TV',
  );

  await at(`${DAY} 07:58`);
  await send('castings/confirm-metal', { castingId: casting, material: 'iron_grey', how: 'magnet' }, 'JP');
  await work(TAG, 'disassemble-head', 'JP', [`${DAY} 08:00`, `${DAY} 08:20`]);
  for (const item of (await story.bench(TAG)).arrival.items.filter((i) => i.removeBeforeWash && i.removedAt === null)) {
    await send('floor/remove-item', { itemId: item.id }, 'JP');
  }
  await work(TAG, 'hot-tank', 'JP', [`${DAY} 08:25`, `${DAY} 09:40`]);
  await work(TAG, 'mag-particle-check', 'DK', [`${DAY} 09:50`, `${DAY} 10:10`], () =>
    read(TAG, 'after', [{ quantity: 'crack-result', typed: 'none found' }], 'DK'),
  );
  await work(TAG, 'guide-check', 'SO', [`${DAY} 10:15`, `${DAY} 10:30`], async () => {
    for (const guide of told.guides ?? []) {
      await read(
        TAG,
        'after',
        [
          { quantity: 'guide-id', spot: guide.valve, point: 'mid', typed: guide.guideWorst, unit: 'in', tool: 'G08' },
          { quantity: 'stem', spot: guide.valve, typed: guide.stem, unit: 'in', tool: 'G02' },
        ],
        'SO',
      );
    }
  });
  await work(TAG, 'seat-cut', 'SO', [`${DAY} 10:35`, `${DAY} 11:30`]);
  await work(TAG, 'valve-grind', 'SO', [`${DAY} 11:35`, `${DAY} 12:00`]);
  await work(TAG, 'installed-height', 'SO', [`${DAY} 12:35`, `${DAY} 13:10`], async () => {
    await read(TAG, 'before', heightReadings(told.shims, 'G09'), 'SO');
    await send('readings/fit-shims', { casting }, 'SO');
  });
  await send(
    'parts/add-part',
    {
      ticketId: made.ticketId,
      castingId: casting,
      part: { stockItemId: (await story.stockId('shim-in')) as never, quantity: shimsOf(told.shims) },
    } as never,
    'MN',
  );
  await work(TAG, 'assemble-head', 'SO', [`${DAY} 13:30`, `${DAY} 15:00`]);
  await work(TAG, 'vacuum-test', 'SO', [`${DAY} 15:05`, `${DAY} 15:20`], () =>
    read(
      TAG,
      'after',
      vacuumReadings({ '1E': '24', '1-2I': '24', '2-3E': '23', '3-4I': '24', '4E': '24' }, 'G19'),
      'SO',
      'vacuum-test',
    ),
  );
  await handOver(story, {
    tag: TAG,
    ticket: made.ticketId,
    customer: customer.customerId,
    signer: 'OB',
    signedAt: `${DAY} 15:45`,
    place: 'D-2-3',
    readyAt: `${DAY} 15:50`,
    takenAt: `${DAY} 16:40`,
    takenBy: 'Annelore Fisk-Tarrow',
    person: customer.personId,
    pays: 'card',
  });
}
