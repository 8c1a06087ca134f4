/** S04: looks like iron under its grease, is aluminium; the hot tank is refused and no override exists. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { expectedOf } from './expected.ts';
import type { Story } from './kit.ts';
import { handOver, heightReadings, shimsOf } from './steps.ts';

const TAG = 41304;
const OPERATIONS = [
  'disassemble-head',
  'aluminium-wash',
  'penetrant-check',
  'pressure-test',
  'guide-check',
  'seat-cut',
  'valve-grind',
  'spring-test',
  'cam-bore-check',
  'surface-head',
  'installed-height',
  'assemble-head',
  'vacuum-test',
  'final-clean',
];

export async function wrongMetal(story: Story): Promise<void> {
  const { at, send, refused, work, read, photo, bench } = story;
  const told = expectedOf('S04');
  await at('2027-03-16 15:15');
  await send('shop/set-next-number', { series: 'ticket', next: 20_496 }, 'OB');
  await at('2027-03-16 15:20');
  const customer = await story.customer('Cinder Oval Racing Club');
  const made = await send(
    'tickets/check-in-ticket',
    {
      customer: customer as never,
      ticket: {
        wantedWords: 'race head, close tolerance; nothing may be stamped',
        useWords: 'race',
        gasket: 'mls',
        oldParts: 'discard',
        certified: false,
      },
      castings: [
        {
          type: 'CF-4',
          tagNo: TAG,
          material: 'aluminium',
          materialHow: 'type',
          position: 'single',
          closeTolerance: true,
          stampAllowed: 'tag_only',
          cameAssembled: true,
        },
      ],
      wishes: [
        { said: 'hot tank', castings: [0] },
        ...OPERATIONS.filter((code) => code !== 'aluminium-wash').map((operation) => ({ operation })),
      ],
      promise: { day: '2027-03-22', minute: 16 * 60 + 30 } as never,
      signed: { how: 'on_paper', by: 'the driver' },
    },
    'TV',
  );
  const casting = made.castings[0]?.castingId ?? (0 as never);
  await send(
    'parts/add-part',
    {
      ticketId: made.ticketId,
      castingId: casting,
      part: { stockItemId: (await story.stockId('seal-mm')) as never, quantity: 8 },
    },
    'TV',
  );
  await photo(TAG, 'under its grease it looks like iron', 'TV');
  await at('2027-03-16 15:35');
  const estimate = await send('pricing/send-estimate', { ticketId: made.ticketId }, 'TV');
  await send(
    'approvals/record-answer',
    {
      question: { estimateId: estimate.estimateId },
      answer: 'yes',
      personId: customer.personId as never,
      means: 'counter',
      words: 'Yes. Close tolerance throughout.',
    },
    'TV',
  );

  await work(TAG, 'disassemble-head', 'JP', ['2027-03-17 07:32', '2027-03-17 07:50']);
  await at('2027-03-17 07:55');
  // Jorun takes it for iron and wants the hot tank; then the magnet. Both are refused, and nobody can override it.
  for (const code of ['hot-tank', 'mag-particle-check']) {
    await refused(
      'pricing/add-operations',
      {
        ticketId: made.ticketId,
        castingId: casting,
        operations: [{ operationKindId: (await story.kindId(code)) as never }],
      },
      'OB',
    );
  }
  await send(
    'floor/report-incident',
    {
      castingId: casting,
      kind: 'near_miss',
      words: 'Taken to the hot tank as iron. The program refused; the magnet does not stick. It is aluminium.',
      cause: 'grease hid the metal',
    },
    'JP',
  );
  await send('castings/confirm-metal', { castingId: casting, material: 'aluminium', how: 'magnet' }, 'JP');
  for (const item of (await bench(TAG)).arrival.items.filter((i) => i.removeBeforeWash && i.removedAt === null)) {
    await send('floor/remove-item', { itemId: item.id }, 'JP');
  }
  await work(TAG, 'aluminium-wash', 'JP', ['2027-03-17 08:10', '2027-03-17 09:20']);
  const clear = () => read(TAG, 'after', [{ quantity: 'crack-result', typed: 'none found' }], 'DK');
  await work(TAG, 'penetrant-check', 'DK', ['2027-03-17 10:00', '2027-03-17 10:40'], clear);
  await work(TAG, 'pressure-test', 'DK', ['2027-03-17 11:00', '2027-03-17 11:50']);
  await work(TAG, 'guide-check', 'SO', ['2027-03-17 13:00', '2027-03-17 13:20'], () =>
    read(
      TAG,
      'after',
      (told.shims?.valves ?? []).flatMap(({ valve }) => [
        { quantity: 'guide-id', spot: valve, point: 'mid', typed: '7.035', unit: 'mm', tool: 'G07' },
        { quantity: 'stem', spot: valve, typed: valve.endsWith('E') ? '6.965' : '6.980', unit: 'mm', tool: 'G01' },
      ]),
      'SO',
    ),
  );
  await work(TAG, 'cam-bore-check', 'DK', ['2027-03-18 08:00', '2027-03-18 08:25'], () =>
    read(TAG, 'after', [{ quantity: 'cam-line', typed: '0.02', unit: 'mm', tool: 'G12' }], 'DK'),
  );
  await work(TAG, 'seat-cut', 'SO', ['2027-03-18 08:30', '2027-03-18 10:40']);
  await work(TAG, 'valve-grind', 'SO', ['2027-03-18 10:45', '2027-03-18 12:00']);
  await at('2027-03-18 12:55');
  await read(TAG, 'before', [{ quantity: 'thickness', typed: '117.94', unit: 'mm', tool: 'G15' }], 'EF');
  await work(TAG, 'surface-head', 'EF', ['2027-03-18 13:00', '2027-03-18 13:50'], () =>
    read(TAG, 'after', [{ quantity: 'thickness', typed: '117.86', unit: 'mm', tool: 'G15' }], 'EF'),
  );
  await work(TAG, 'spring-test', 'SO', ['2027-03-19 08:00', '2027-03-19 08:20']);
  const heights = heightReadings(told.shims, 'G10');
  await work(TAG, 'installed-height', 'SO', ['2027-03-19 08:30', '2027-03-19 09:40'], async () => {
    await read(
      TAG,
      'before',
      heights.map((r) => (r.spot === '3I' ? { ...r, typed: '39.70' } : r)),
      'SO',
    );
    await at('2027-03-19 09:05');
    await setRight(story, casting, heights.find((r) => r.spot === '3I')?.typed ?? '');
    await send('readings/fit-shims', { casting }, 'SO');
  });
  await send(
    'parts/add-part',
    {
      ticketId: made.ticketId,
      castingId: casting,
      part: { stockItemId: (await story.stockId('shim-mm')) as never, quantity: shimsOf(told.shims) },
    },
    'MN',
  );
  await work(TAG, 'final-clean', 'JP', ['2027-03-19 10:00', '2027-03-19 10:40']);
  await work(TAG, 'assemble-head', 'SO', ['2027-03-19 12:40', '2027-03-19 14:30']);
  await work(TAG, 'vacuum-test', 'SO', ['2027-03-22 08:00', '2027-03-22 08:20']);
  await handOver(story, {
    tag: TAG,
    ticket: made.ticketId,
    customer: customer.customerId,
    signer: 'OB',
    signedAt: '2027-03-22 09:00',
    place: 'D-2-4',
    readyAt: '2027-03-22 09:20',
    takenAt: '2027-03-22 15:10',
    takenBy: 'the club’s driver',
    person: customer.personId,
  });
}

/** 3I was too short: a burr stood under the steel cup. Cleaned, measured again; both readings stay. */
async function setRight({ send }: Story, casting: number, typed: string): Promise<void> {
  const sheet = await send('readings/get-table', { casting: casting as never, table: 'heights' }, 'SO');
  const reading = readingOf(sheet, '3I');
  await send(
    'readings/supersede-reading',
    { reading, typed, unit: 'mm', reason: 'burr under the steel cup, cleaned' },
    'SO',
  );
}

function readingOf(sheet: OutputOf<App['readings/get-table']>, label: string) {
  const place = sheet.columns.findIndex((column) => column.label === label);
  const found = sheet.rows.find((row) => row.quantity === 'installed-height')?.cells[place]?.reading?.id;
  if (found === undefined) throw new Error(`no height was read on ${label}`);
  return found;
}
