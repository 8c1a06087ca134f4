/** S02 at the bench: two heads stripped, washed, one welded, both cut, surfaced and put together. */
import type { expectedOf } from './expected.ts';
import type { Story } from './kit.ts';
import { heightReadings } from './steps.ts';

export const LEFT = 41234;
export const RIGHT = 41235;
export const PAIR = [LEFT, RIGHT] as const;
export const CLEAR = 'none found';

export async function stripAndWash({ at, send, work, bench }: Story): Promise<void> {
  await work(LEFT, 'disassemble-head', 'JP', ['2027-03-09 09:00', '2027-03-09 10:00']);
  await work(RIGHT, 'disassemble-head', 'JP', ['2027-03-09 10:05', '2027-03-09 11:05']);
  await at('2027-03-09 11:10');
  for (const tag of PAIR) {
    const page = await bench(tag);
    await send('castings/confirm-metal', { castingId: page.castingId, material: 'aluminium', how: 'magnet' }, 'JP');
    for (const item of page.arrival.items.filter((i) => i.removeBeforeWash && i.removedAt === null))
      await send('floor/remove-item', { itemId: item.id }, 'JP');
  }
  await work(LEFT, 'aluminium-wash', 'JP', ['2027-03-09 13:00', '2027-03-09 14:10']);
  await work(RIGHT, 'aluminium-wash', 'JP', ['2027-03-09 14:15', '2027-03-09 15:25']);
}

export async function weld({ work, read }: Story): Promise<void> {
  const result = (code: string, typed: string) => () =>
    read(RIGHT, 'after', [{ quantity: 'crack-result', typed }], 'DK', code);
  await work(RIGHT, 'weld-repair', 'EF', ['2027-03-11 08:00', '2027-03-11 09:30']);
  await work(
    RIGHT,
    'penetrant-check',
    'DK',
    ['2027-03-11 10:00', '2027-03-11 10:30'],
    result('penetrant-check', CLEAR),
  );
  await work(RIGHT, 'seat-insert', 'SO', ['2027-03-11 10:40', '2027-03-11 11:10']);
  await work(
    RIGHT,
    'pressure-retest',
    'DK',
    ['2027-03-11 13:00', '2027-03-11 13:40'],
    result('pressure-retest', 'repaired'),
  );
}

export async function cutAndAssemble(story: Story, told: ReturnType<typeof expectedOf>): Promise<void> {
  const { at, work, read, send, bench } = story;
  const guides = (tag: number) => () =>
    read(
      tag,
      'after',
      (tag === LEFT ? told.shimsLeft : told.shimsRight)?.valves.flatMap(({ valve }) => [
        { quantity: 'guide-id', spot: valve, point: 'mid', typed: '5.538', unit: 'mm', tool: 'G07' },
        { quantity: 'stem', spot: valve, typed: valve.includes('E') ? '5.472' : '5.484', unit: 'mm', tool: 'G01' },
      ]) ?? [],
      'SO',
    );
  const line = (tag: number) => () =>
    read(tag, 'after', [{ quantity: 'cam-line', typed: '0.02', unit: 'mm', tool: 'G12' }], 'DK', 'cam-bore-check');
  await work(LEFT, 'guide-check', 'SO', ['2027-03-11 13:45', '2027-03-11 14:05'], guides(LEFT));
  await work(RIGHT, 'guide-check', 'SO', ['2027-03-11 14:10', '2027-03-11 14:30'], guides(RIGHT));
  await work(LEFT, 'cam-bore-check', 'DK', ['2027-03-11 14:35', '2027-03-11 14:55'], line(LEFT));
  await work(RIGHT, 'cam-bore-check', 'DK', ['2027-03-11 15:00', '2027-03-11 15:20'], line(RIGHT));
  await work(RIGHT, 'cam-bore-check', 'DK', ['2027-03-11 15:25', '2027-03-11 15:45'], line(RIGHT));
  await work(LEFT, 'seat-cut', 'SO', ['2027-03-12 08:00', '2027-03-12 10:00']);
  await work(RIGHT, 'seat-cut', 'SO', ['2027-03-12 10:05', '2027-03-12 12:00']);
  await work(LEFT, 'valve-grind', 'SO', ['2027-03-12 13:00', '2027-03-12 14:30']);
  await work(RIGHT, 'valve-grind', 'SO', ['2027-03-12 14:35', '2027-03-12 16:05']);
  for (const [tag, from, until] of [
    [LEFT, '2027-03-15 08:00', '2027-03-15 08:40'],
    [RIGHT, '2027-03-15 08:45', '2027-03-15 09:25'],
  ] as const) {
    await at(from);
    await read(tag, 'before', [{ quantity: 'thickness', typed: '130.98', unit: 'mm', tool: 'G15' }], 'EF');
    await work(tag, 'surface-head', 'EF', [from, until], () =>
      read(tag, 'after', [{ quantity: 'thickness', typed: '130.90', unit: 'mm', tool: 'G15' }], 'EF'),
    );
  }
  for (const [tag, shims, from, until] of [
    [LEFT, told.shimsLeft, '2027-03-15 09:30', '2027-03-15 10:40'],
    [RIGHT, told.shimsRight, '2027-03-15 10:45', '2027-03-15 11:55'],
  ] as const) {
    await work(tag, 'installed-height', 'SO', [from, until], async () => {
      await read(tag, 'before', heightReadings(shims, 'G10'), 'SO');
      await send('readings/fit-shims', { casting: (await bench(tag)).castingId }, 'SO');
    });
  }
  await work(LEFT, 'assemble-head', 'SO', ['2027-03-15 13:00', '2027-03-15 15:00']);
  await work(RIGHT, 'assemble-head', 'SO', ['2027-03-16 08:00', '2027-03-16 10:00']);
  await work(LEFT, 'vacuum-test', 'SO', ['2027-03-16 10:05', '2027-03-16 10:25']);
  await work(RIGHT, 'vacuum-test', 'SO', ['2027-03-16 10:30', '2027-03-16 10:50']);
}
