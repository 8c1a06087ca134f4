import { describe, expect, it } from 'vitest';
import { drawPaper } from '#core/sheets/any-sheet.ts';
import type { BuildSheetPaper, TravellerPaper } from '#core/sheets/contract/papers.ts';
import { checkInPair } from '#tests/kit/checked-in.ts';
import { faultsOf, fonts, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';
import { acting, benchOf, checkIn, finish, type Job, operationOf, tick } from '../../floor/builders.ts';

const AS = { as: 'DK' } as const;
const castingOf = (job: Job) => job.castings[0]?.castingId as never;

async function paperOf<T>(host: TestHost, paper: 'build-sheet' | 'traveller', job: Job): Promise<T> {
  const wish = { paper, castingId: castingOf(job) };
  return (await host.send('sheets/get-paper', { wish }, AS)).data as unknown as T;
}

type Row = Readonly<{
  quantity: string;
  typed: string;
  stage?: 'before' | 'after';
  spot?: number | null;
  tool?: number;
}>;

const read = (host: TestHost, job: Job, rows: readonly Row[], operation: number | null = null) =>
  host.send(
    'readings/add-readings',
    {
      casting: castingOf(job),
      operation: operation as never,
      rows: rows.map((row) => ({ stage: 'after', sure: true, ...row })) as never,
    },
    AS,
  );

async function heightsOf(host: TestHost, job: Job) {
  const sheet = await host.send('readings/get-table', { casting: castingOf(job), table: 'heights' }, AS);
  return sheet.columns.map(({ spot }) => spot as number);
}

describe.skipIf(lacks('pdftotext'))('sheets/get-paper', () => {
  it('keeps the first set of a height that was set again, and what was read after the work', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['installed-height'] });
    const spots = await heightsOf(host, job);
    const operation = operationOf(await benchOf(host, job), 'installed-height');
    const heights = (typed: string) => spots.map((spot) => ({ quantity: 'installed-height', spot, typed }));
    await read(host, job, heights('1.722'), operation.id);
    await finish(host, job, 'installed-height');
    const done = acting(await benchOf(host, job), 'installed-height');
    const again = await host.send('floor/redo-operation', { ...done, cause: 'setup', words: 'wrong cups' }, AS);
    await read(host, job, heights('1.701'), again.operationId);

    const sheet = await paperOf<BuildSheetPaper>(host, 'build-sheet', job);
    const rows = sheet.tables.flatMap((table) => table.rows).filter(({ label }) => label.startsWith('Height read'));

    expect(rows.map(({ stage, values }) => [stage, values[0]])).toEqual([
      ['after, first', '1.722'],
      ['after, again', '1.701'],
    ]);
  });

  it('shows a figure corrected after the signature beside the old one, with the reason', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['installed-height'] });
    const [spot] = await heightsOf(host, job);
    const { readings } = await read(host, job, [{ quantity: 'installed-height', spot: spot ?? null, typed: '1.713' }]);
    host.sqlite
      .prepare(
        `INSERT INTO sign_off (casting_id, ticket_id, place, staff_id, table_json, created_at, created_by)
         VALUES (?, ?, 'first', 7, '{}', '2026-03-09T13:00:00.000Z', 7)`,
      )
      .run(castingOf(job), job.ticketId);
    host.sqlite
      .prepare(
        `INSERT INTO sign_off_reopened (sign_off_id, ticket_id, reason, created_at, created_by)
         VALUES (1, ?, 'drum misread', '2026-03-09T13:30:00.000Z', 7)`,
      )
      .run(job.ticketId);
    await host.send(
      'readings/supersede-reading',
      { reading: readings[0] as never, typed: '1.703', reason: 'drum misread' },
      AS,
    );

    const sheet = await paperOf<BuildSheetPaper>(host, 'build-sheet', job);
    const bytes = await drawPaper(fonts, 'build-sheet', sheet);

    expect(textOf(bytes)).toContain('1.713 a 1.703');
    expect(textOf(bytes)).toMatch(/a \S+ height read: 1\.713 replaced Mon 9 Mar 2026 by .*: drum misread\./);
    expect(faultsOf(bytes)).toEqual([]);
  });

  it('certifies with the guard band, the doubt of each row and the gauges used', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['surface-head'], ticket: { certified: true } as never });
    const tool = (await host.send('tools/list-tools', {}, AS)).find(
      ({ unit, uncertainty }) => unit === 'in' && uncertainty,
    );
    await read(host, job, [
      { quantity: 'thickness', stage: 'before', typed: '4.000 in', tool: tool?.id as number },
      { quantity: 'thickness', typed: '3.994 in', tool: tool?.id as number },
    ]);

    const sheet = await paperOf<BuildSheetPaper>(host, 'build-sheet', job);
    const text = textOf(await drawPaper(fonts, 'build-sheet', sheet));

    expect(sheet.certified?.gauges.map(({ name }) => name)).toEqual([tool?.name]);
    expect(text).toContain('Certified build sheet');
    expect(text).toMatch(/Taken off 0\.0060 in ±0\.0\d+/);
    expect(text).toContain('too close to call and is not a pass');
  });

  it('prints boxes on the traveller for what the work wants to know, and none for a wash', async () => {
    const host = await startTestHost();
    const wash = await checkIn(host, { operations: ['final-clean'] });
    const block = await checkIn(host, {
      castings: [{ type: 'NV-8B', material: 'iron_grey', materialHow: 'magnet', position: 'single', items: [] }],
      operations: ['measure-block', 'main-line-check', 'deck-block'],
    });

    const paper = await paperOf<TravellerPaper>(host, 'traveller', block);
    const bytes = await drawPaper(fonts, 'traveller', paper);

    expect((await paperOf<TravellerPaper>(host, 'traveller', wash)).grids).toEqual([]);
    expect(paper.grids.map(({ heading }) => heading)).toEqual(
      expect.arrayContaining(['Bores', 'Main bores', 'Deck height']),
    );
    expect(paper.grids.find(({ heading }) => heading === 'Bores')?.rows).toHaveLength(14);
    expect(faultsOf(bytes)).toEqual([]);
  });

  it('calls places where work was done as the engine counts them, and says what became of the pieces', async () => {
    const host = await startTestHost();
    const made = await checkInPair(host);
    const right = made.castings[1];
    const job = { ...made, castings: [right] } as unknown as Job;
    const operation = operationOf(await benchOf(host, job), 'disassemble-head');
    const one = <T>(sql: string, ...values: unknown[]) => host.sqlite.prepare(sql).get(...values) as T;
    const spot = one<{ id: number }>(
      `SELECT s.id FROM spot s JOIN casting c ON c.casting_type_id = s.casting_type_id
       WHERE c.id = ? AND s.kind = 'valve' AND s.label = '1E1'`,
      right?.castingId,
    );
    host.sqlite
      .prepare(`INSERT INTO operation_spot (operation_id, spot_id, ticket_id, created_at, created_by)
         VALUES (?, ?, ?, '2026-03-09T13:00:00.000Z', 7)`)
      .run(operation.id, spot.id, made.ticketId);
    await tick(host, job, 'tag-and-photos');
    await finish(host, job, 'disassemble-head');
    const item = (words: string) =>
      one<{ id: never }>('SELECT id FROM arrival_item WHERE casting_id = ? AND words = ?', right?.castingId, words).id;
    const fates = [
      { itemId: item('valves'), fate: 'in_casting' as const },
      { itemId: item('springs'), fate: 'replaced' as const },
    ];
    await host.send('intake/set-fate', { fates }, AS);

    const { texts } = await paperOf<BuildSheetPaper>(host, 'build-sheet', job);
    const words = (heading: string) => texts.find((text) => text.heading === heading)?.words;

    expect(words('Renewed')).toMatch(/at 4E1, 12 springs \(those that came replaced\)\.$/);
    expect(words('Used again')).toBe('12 valves.');
  });
});
