import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('operations/bring-in', () => {
  it('gives the heads of an older workspace their ports, and the vacuum test its table of ports', async () => {
    const { send, db, sqlite } = await startTestHost();
    const operationOf = (code: string) =>
      db.one(
        db.q
          .selectFrom('bench_table as t')
          .leftJoin('operation_kind as k', 'k.id', 't.operation_kind_id')
          .select('k.code')
          .where('t.code', '=', code),
      )?.code;
    sqlite.exec(`
      DROP TRIGGER spot__no_delete;
      DELETE FROM spot WHERE kind = 'port';
      UPDATE bench_table SET code = 'vacuum' WHERE code = 'port-vacuum'`);
    expect(await send('operations/is-brought-in', { quantities: true })).toEqual({ whole: false });

    await send('operations/bring-in', { quantities: true });

    const { types } = await send('operations/list-casting-types', {});
    const type = types.find((it) => it.code === 'TW-4');
    if (!type) throw new Error('no TW-4');
    const { spots } = await send('operations/get-casting-type', { castingType: type.id });
    expect(spots.filter((s) => s.kind === 'port').map((s) => s.label)).toEqual([
      '1I',
      '2I',
      '3I',
      '4I',
      '1E',
      '2E',
      '3E',
      '4E',
    ]);
    expect([operationOf('vacuum'), operationOf('port-vacuum')]).toEqual([null, 'vacuum-test']);
    expect(await send('operations/is-brought-in', { quantities: true })).toEqual({ whole: true });
  });
});
