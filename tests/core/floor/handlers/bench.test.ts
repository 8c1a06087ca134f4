/** The casting's page in one answer. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { ALUMINIUM_HEAD, benchOf, checkIn, finish, IRON_HEAD, operationOf, tick } from '../builders.ts';

describe('floor/get-bench', () => {
  it('says the metal in words, warns, and names the place of the casting', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, {
      castings: [
        { ...ALUMINIUM_HEAD, pair: 1, stampAllowed: 'tag_only', ownMarks: 'paint L', dressWords: 'manifold on' },
        { ...ALUMINIUM_HEAD, pair: 1, position: 'right' },
      ],
      operations: ['disassemble-head', 'aluminium-wash'],
      ticket: { gasket: 'mls' },
    } as never);
    const page = await benchOf(host, job);
    expect(page).toMatchObject({
      placeWords: 'LEFT, head 1 of 2',
      customer: 'P. Lindqvist',
      metal: { word: 'ALUMINIUM', outline: 'open' },
      pair: [{ tag: job.castings[1]?.tagNo, placeWords: 'RIGHT, head 2 of 2' }],
    });
    expect(page.warnings).toEqual(['ALUMINIUM - NO CAUSTIC', 'DO NOT STAMP - TAG ONLY', 'MLS GASKET - FINE FINISH']);
    expect(page.arrival.notes).toEqual(['Dressed with: manifold on', 'Their marks: paint L']);
    expect(page.firstStop?.short).toBe('waits for tag and photos');
  });

  it('shows no price, no telephone and no address to anybody', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const text = JSON.stringify(await benchOf(host, job));
    const amounts = host.sqlite.prepare('SELECT amount_cents FROM work_line').all() as { amount_cents: number }[];
    expect(amounts.length).toBeGreaterThan(0);
    expect(text).not.toMatch(/cents|amount|price|phone|address/i);
  });

  it('names the one operation the hand goes to next', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['disassemble-head', 'hot-tank', 'mag-particle-check'] });
    const next = async () => (await benchOf(host, job)).operations.filter((o) => o.next).map((o) => o.kindCode);
    expect(await next()).toEqual([]);
    await tick(host, job, 'tag-and-photos');
    expect(await next()).toEqual(['disassemble-head']);
    await finish(host, job, 'disassemble-head');
    expect(await next()).toEqual(['hot-tank']);
  });

  it('counts the readings an operation needs, and names the bench table', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['installed-height'] });
    const row = operationOf(await benchOf(host, job), 'installed-height');
    expect(row.before).toMatchObject({ done: 0, of: 8, table: 'heights' });
    expect(row.before.words).toMatch(/^Not measured: \S+ height read and 7 more$/);
  });

  it('shows the sizes that the open work is judged by, each with its source', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['installed-height'] });
    const { sizes } = await benchOf(host, job);
    const height = sizes.find((size) => size.quantity === 'height-with-shim' || size.quantity === 'installed-height');
    expect(height?.text).toMatch(/in$|mm$/);
    expect(height?.source.length).toBeGreaterThan(0);
  });

  it('says that the paper is stale when the plan changed after it was printed', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const page = await benchOf(host, job);
    expect(page.paperWords).toBeNull();
    const file = host.sqlite
      .prepare(
        "INSERT INTO attachment (sha256, bytes, mime, created_at) VALUES (?, 1, 'application/pdf', '2026-03-09T14:00:00.000Z')",
      )
      .run('a'.repeat(64)).lastInsertRowid;
    host.sqlite
      .prepare(
        `INSERT INTO document (kind, subject_table, subject_id, ticket_id, revision, file_name, attachment_id, created_at)
         VALUES ('traveller', 'casting', ?, ?, 1, 'traveller.pdf', ?, '2026-03-09T14:00:00.000Z')`,
      )
      .run(page.castingId, job.ticketId, file);
    expect((await benchOf(host, job)).paperWords).toBeNull();
    host.setClock('2026-03-09T15:00:00.000Z');
    const { id, version } = operationOf(page, 'hot-tank');
    await host.send('floor/mark-not-needed', { operationId: id, seenVersion: version, why: 'clean' }, { as: 'JP' });
    expect((await benchOf(host, job)).paperWords).toBe('Paper is revision 1, now 2.');
  });

  it('says a tag that is not here', async () => {
    const host = await startTestHost();
    const refused = await host.refuse('floor/get-bench', { tag: 99_999 }, { as: 'JP' });
    expect(refused).toMatchObject({
      kind: 'not-found',
      message: 'Tag 99999 is not here. Check the number, or go back.',
    });
  });

  it('lists what came with it, short and long', async () => {
    const host = await startTestHost();
    const items = [
      { words: 'caps', expected: 8, counted: 8, boltedInPlace: true, numbersSeen: true },
      { words: 'dowel', expected: 2, counted: 1 },
      { words: 'rockers', missing: true },
      { words: 'valves', customersOwn: true, counted: 8, mixRule: 'own_place' },
    ];
    const job = await checkIn(host, { castings: [{ ...IRON_HEAD, items } as never] });
    const { arrival, warnings } = await benchOf(host, job);
    expect(arrival.cameWith).toBe('8 caps bolted in place, 1 dowel of 2, 8 valves');
    expect(arrival.items.map((i) => i.countWords)).toEqual(['8 of 8', '1 of 2, 1 short', 'missing at arrival', '8']);
    expect(arrival.items[0]?.marks).toEqual(['bolted in place', 'numbers seen']);
    expect(warnings).toContain("CUSTOMER'S OWN - VALVES");
  });

  it('says whether a bowed overhead-cam head may be bent (deck and cam line together)', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, {
      castings: [ALUMINIUM_HEAD],
      operations: ['cam-bore-check', 'straighten', 'surface-head'],
    });
    const casting = (job.castings[0]?.castingId ?? 0) as never;
    const read = (quantity: string, stage: 'before' | 'after', typed: string) =>
      host.send('readings/add-readings', { casting, rows: [{ quantity, stage, typed, sure: true }] }, { as: 'JP' });
    const advice = async () => (await benchOf(host, job)).warnings.filter((line) => line.includes('bowed'));
    expect(await advice()).toEqual([]);
    await read('deck-flatness', 'before', '0.50 mm');
    expect(await advice()).toEqual(['The deck is bowed. Measure cam line before anything is bent or cut.']);
    await read('cam-line', 'before', '0.01 mm');
    expect(await advice()).toEqual([expect.stringMatching(/do not bend it/)]);
  });

  it('sees a bowed deck in a grid of dial readings too, once every point is read', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { castings: [ALUMINIUM_HEAD], operations: ['straighten', 'surface-head'] });
    const casting = (job.castings[0]?.castingId ?? 0) as never;
    const point = (column: number, row: number, typed: string) => ({
      quantity: 'deck-dial',
      point: `c${column}r${row}`,
      stage: 'before' as const,
      typed,
      unit: 'mm' as const,
    });
    const rows = [1, 2, 3, 4, 5].flatMap((c) => [1, 2, 3].map((r) => point(c, r, c === 3 ? '-120' : '0')));
    const advice = async () => (await benchOf(host, job)).warnings.filter((line) => line.includes('bowed'));
    await host.send('readings/add-readings', { casting, rows: rows.slice(0, 6) }, { as: 'JP' });
    expect(await advice()).toEqual([]);
    await host.send('readings/add-readings', { casting, rows: rows.slice(6) }, { as: 'JP' });
    expect(await advice()).toEqual(['The deck is bowed. Measure cam line before anything is bent or cut.']);
  });
});
