import { describe, expect, it } from 'vitest';
import { forgetQuantity } from '#tests/kit/forget-quantity.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

const typeOf = async (host: TestHost, code: string) => {
  const { types } = await host.send('operations/list-casting-types', {});
  const found = types.find((t) => t.code === code);
  if (!found) throw new Error(code);
  return found;
};

describe('operations/bring-in', () => {
  it('brings an older workspace what is new of measuring, and what is read otherwise now', async () => {
    const { send, db, sqlite } = await startTestHost();
    const none = { quantities: true };
    const rowsOf = () =>
      db.all(
        db.q
          .selectFrom('bench_table_row as r')
          .innerJoin('bench_table as t', 't.id', 'r.bench_table_id')
          .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
          .select(['q.code', 'r.point', 'r.stage', 'r.position'])
          .where('t.code', '=', 'seats')
          .orderBy('r.position'),
      );
    const now = rowsOf();
    expect(await send('operations/is-brought-in', none)).toEqual({ whole: true });
    forgetQuantity(sqlite, 'face-runout');
    sqlite.exec("UPDATE quantity SET words = 'as it was called before' WHERE code = 'margin'");
    expect(await send('operations/is-brought-in', none)).toEqual({ whole: false });

    expect(await send('operations/bring-in', none)).toMatchObject({ added: 1 });

    expect(rowsOf()).toEqual(now);
    expect(db.one(db.q.selectFrom('quantity').select('words').where('code', '=', 'margin'))?.words).toBe('margin');
    expect(await send('operations/is-brought-in', none)).toEqual({ whole: true });
  });

  it('leaves what the shop has under the same code as it is', async () => {
    const { send, db } = await startTestHost();
    const [kind] = (await send('operations/list-kinds', {})).kinds;
    if (!kind) throw new Error('no kinds');
    await send('operations/change-kind', { kind: kind.id, seenVersion: kind.version, shopWords: 'strip, our way' });

    const tally = await send('operations/bring-in', {
      operations: [
        {
          code: kind.code,
          shopWords: 'strip head',
          customerWords: 'x',
          section: 'strip',
          workCentre: 'teardown',
          gate: 'strip',
          taxClass: 'labour_repair',
          waitAfter: 'none',
          waitDays: 0,
          twoSignatures: false,
          fits: [],
          uses: [],
          needed: [],
          cautions: [],
          usualAddOns: [],
        },
      ],
    });

    expect(tally).toEqual({ added: 0, kept: 1 });
    expect(db.one(db.q.selectFrom('operation_kind').select('shop_words').where('id', '=', kind.id))).toEqual({
      shop_words: 'strip, our way',
    });
  });

  it('brings the whole catalogue: operations, rules, findings, conditions, packages', async () => {
    const { db } = await startTestHost();
    const count = (table: string) => db.sql<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)[0]?.n;

    // 68 operations of the practice shop and the last one, wipe, oil, wrap.
    expect(count('operation_kind')).toBe(69);
    expect([
      count('finding_kind'),
      count('condition_kind'),
      count('package'),
      count('casting_type'),
      count('rack_place'),
    ]).toEqual([17, 28, 6, 16, 136]);
  });
});

describe('operations/list-kinds', () => {
  it('shows what fits an aluminium head, with its count, and says why caustic does not', async () => {
    const host = await startTestHost();
    const type = await typeOf(host, 'CF-4');

    const { kinds } = await host.send('operations/list-kinds', {
      for: { castingKind: 'head', material: 'aluminium', castingType: type.id },
    });

    const of = (code: string) => kinds.find((k) => k.code === code);
    expect(of('hot-tank')).toMatchObject({ fit: 'refused', why: expect.stringContaining('no caustic') });
    expect(of('aluminium-wash')).toMatchObject({ fit: 'normal', count: 1 });
    expect(of('valve-grind')).toMatchObject({ fit: 'normal', count: 8 });
    expect(of('bore-cylinder')).toBeUndefined();
  });

  it('says that a pressure test does not arise without a water jacket', async () => {
    const host = await startTestHost();
    const type = await typeOf(host, 'FN-1');

    const { kinds } = await host.send('operations/list-kinds', {
      for: { castingKind: 'head', material: 'aluminium', castingType: type.id },
    });

    expect(kinds.find((k) => k.code === 'pressure-test')).toMatchObject({ fit: 'does_not_arise' });
  });
});

describe('operations/add-casting-type', () => {
  it('makes the places from the counts of a casting described at the counter', async () => {
    const { send } = await startTestHost();
    const { castingType } = await send(
      'operations/add-casting-type',
      {
        engineType: null,
        kind: 'head',
        name: 'mower twin',
        castingNumberPattern: null,
        material: 'aluminium',
        camLayout: 'ohv',
        fuel: 'petrol',
        private: true,
        counts: {
          cylinders: 2,
          intake_valves: 2,
          exhaust_valves: 2,
          guides: 4,
          seats: 4,
          springs: 4,
          chambers: 2,
          decks: 1,
        },
        guideStyle: 'insert',
        seatStyle: 'insert',
        usualWeight: null,
        heavyDiesel: false,
        waterJacket: false,
      },
      { as: 'TV' },
    );

    const type = await send('operations/get-casting-type', { castingType });

    expect(type).toMatchObject({ code: 'P1', private: true });
    expect(type.spots.filter((s) => s.kind === 'valve').map((s) => s.label)).toEqual(['1E', '1I', '2I', '2E']);
  });

  it('refuses a code that is used, beside the field', async () => {
    const host = await startTestHost();
    const { id: _, version: __, engineType: ___, ...type } = await typeOf(host, 'CF-4');

    const refused = await host.refuse('operations/add-casting-type', {
      ...type,
      engineType: null,
      guideStyle: 'insert',
      seatStyle: 'insert',
    } as never);

    expect(refused).toMatchObject({ fields: { code: expect.stringContaining('CF-4') } });
  });
});

describe('operations/set-arrival-template', () => {
  it('replaces what usually arrives, and keeps what stood before in activity', async () => {
    const host = await startTestHost();
    const type = await typeOf(host, 'LO-4');

    await host.send('operations/set-arrival-template', {
      castingType: type.id,
      items: [{ words: 'valves', expected: 8, mixRule: 'keep_order', removeBeforeWash: false, containerHint: null }],
    });

    expect(
      (await host.send('operations/get-casting-type', { castingType: type.id })).arrival.map((a) => a.words),
    ).toEqual(['valves']);
  });
});

describe('operations/get-casting-type', () => {
  it('says how the engine of a type counts its cylinders, so that a head can be drawn in its bank', async () => {
    const host = await startTestHost();
    const { types } = await host.send('operations/list-casting-types', {});
    const head = types.find((type) => type.code === 'NV-8');
    if (!head) throw new Error('NV-8');
    const answer = await host.send('operations/get-casting-type', { castingType: head.id });
    expect(answer.numbering).toBe('L:1,3,5,7 R:2,4,6,8');
  });
});

describe('operations/retire-kind', () => {
  it('is no longer offered, and is still there for old tickets', async () => {
    const { send } = await startTestHost();
    const kind = (await send('operations/list-kinds', {})).kinds.find((k) => k.code === 'press-work');
    if (!kind) throw new Error('press-work');
    await send('operations/retire-kind', { kind: kind.id, seenVersion: kind.version });

    expect((await send('operations/list-kinds', {})).kinds.find((k) => k.code === 'press-work')).toMatchObject({
      retired: true,
    });
    expect(
      (await send('operations/list-kinds', { for: { castingKind: 'rod_set' } })).kinds.map((k) => k.code),
    ).not.toContain('press-work');
  });
});

describe('operations/list-conditions', () => {
  it('lists what is found on a kind of casting', async () => {
    const { send } = await startTestHost();
    const codes = (await send('operations/list-conditions', { castingKind: 'block' })).conditions.map((c) => c.code);

    expect(codes.length).toBeGreaterThan(5);
    expect(codes).not.toContain('crack-chamber');
  });
});

describe('operations/set-work-centre', () => {
  it('sets people and hours', async () => {
    const { send } = await startTestHost();
    const [centre] = (await send('operations/list-work-centres', {})).centres;
    if (!centre) throw new Error('no centre');
    await send('operations/set-work-centre', { centre: centre.id, seenVersion: centre.version, people: 3 });

    expect((await send('operations/list-work-centres', {})).centres[0]?.people).toBe(3);
  });
});

describe('operations/add-engine-type', () => {
  const engine = {
    code: 'ZZ-1',
    words: 'test single',
    cylinders: 1,
    layout: 'single',
    bankLean: null,
    faceLean: null,
    bore: null,
    stroke: null,
    numbering: '1',
    frontIs: 'far_from_flywheel',
    frontWords: null,
  } as const;

  it('adds an engine that castings can then name', async () => {
    const { send } = await startTestHost();
    const { engineType } = await send('operations/add-engine-type', engine);

    expect((await send('operations/list-engine-types', {})).engines).toContainEqual({ ...engine, id: engineType });
  });

  it('refuses a code that is used, beside the field', async () => {
    const { refuse } = await startTestHost();

    expect(await refuse('operations/add-engine-type', { ...engine, code: 'NV-8' })).toMatchObject({
      fields: { code: expect.stringContaining('NV-8') },
    });
  });
});

describe('operations/list-stock', () => {
  it('holds the shims of both units with their exact thickness', async () => {
    const { send } = await startTestHost();
    const shims = (await send('operations/list-stock', {})).stock.filter((s) => s.shimUnit !== null);

    // 0.015 in = 381 000 nm; 0.25 mm = 250 000 nm.
    expect(shims.map((s) => [s.thicknessTyped, s.thickness])).toEqual([
      ['0.015', 381_000],
      ['0.030', 762_000],
      ['0.060', 1_524_000],
      ['0.25', 250_000],
      ['0.50', 500_000],
      ['1.00', 1_000_000],
    ]);
  });
});
