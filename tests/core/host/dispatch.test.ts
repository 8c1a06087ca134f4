import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { openDatabase } from '#core/db/open-database.ts';
import type { WriteDb } from '#core/db/query.ts';
import { findBrokenLink } from '#core/host/chain.ts';
import { dispatch } from '#core/host/dispatch.ts';
import type { Host } from '#core/host/host.ts';
import { implement } from '#core/host/implement.ts';
import { everything, nobody } from '#core/host/session.ts';
import { command, query } from '#core/kernel/contract.ts';
import { ruleBroken } from '#core/kernel/errors.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

const said: string[] = [];
const trial = implement(
  {
    'trial/add': command({
      may: 'shop:edit',
      secret: ['word'],
      input: z.strictObject({ day: z.string(), word: z.string().optional() }),
      output: z.strictObject({ id: z.int() }),
    }),
    'trial/fail-late': command({ may: 'shop:edit', input: z.strictObject({}), output: z.strictObject({}) }),
    'trial/break': command({ may: 'shop:edit', input: z.strictObject({}), output: z.strictObject({}) }),
    'trial/get-count': query({ may: 'shop:see', input: z.strictObject({}), output: z.strictObject({ n: z.int() }) }),
  },
  {
    'trial/add': {
      run: ({ day }, { db }) => {
        const id = db.add('holiday', { on_day: day as never, words: 'trial' });
        return { output: { id }, activity: [{ subject: ['holiday', id], words: `Closed on ${day}` }] };
      },
    },
    'trial/fail-late': {
      run(_, { db }) {
        db.add('holiday', { on_day: '2026-01-01' as never, words: 'half' });
        throw ruleBroken('trial/no', 'Not like this.');
      },
    },
    'trial/break': {
      run() {
        throw new TypeError('secret internals');
      },
    },
    'trial/get-count': { run: (_, { db }) => ({ n: db.all(db.q.selectFrom('holiday').select('id')).length }) },
  },
);

function trialHost(project: Host['project'] = () => undefined): Host {
  return {
    sqlite: openDatabase(':memory:'),
    features: [trial],
    services: {} as Host['services'],
    appVersion: '0',
    clock: () => new Date('2026-03-09T14:00:00.000Z'),
    timeZone: () => 'UTC',
    secret: () => 'ab'.repeat(32),
    project,
    announce: (what) => void said.push(what.name),
    checkPinAgain: async () => undefined,
    log: (_, line) => void said.push(String(line.reference ?? '')),
  };
}

const everybody = everything('test');
const count = (host: Host, table: string): number =>
  (host.sqlite.prepare(`SELECT count(*) AS n FROM ${table}`).get() as { n: number }).n;

describe('dispatch', () => {
  it.each(['toString', '__proto__', 'constructor', 'tickets/no-such-thing', ''])(
    'answers an unknown name in words: %s',
    async (name) => {
      const { ask } = await startTestHost();

      expect(await ask(name, {})).toMatchObject({
        ok: false,
        error: { kind: 'not-found', code: 'host/unknown-request' },
      });
    },
  );

  it('writes the rows, the activity and the key of a command together', async () => {
    const host = trialHost();

    const reply = await dispatch(
      host,
      { name: 'trial/add', input: { day: '2026-05-01' }, key: 'key-12345' },
      everybody,
    );

    expect(reply).toMatchObject({ ok: true, output: { id: 1 } });
    expect([count(host, 'holiday'), count(host, 'activity'), count(host, 'request_key')]).toEqual([1, 1, 1]);
  });

  it('leaves no trace of a command that is refused half way', async () => {
    const host = trialHost();

    const reply = await dispatch(host, { name: 'trial/fail-late', input: {}, key: 'key-12345' }, everybody);

    expect(reply).toEqual({ ok: false, error: { kind: 'rule-broken', code: 'trial/no', message: 'Not like this.' } });
    expect([count(host, 'holiday'), count(host, 'activity'), count(host, 'request_key')]).toEqual([0, 0, 0]);
  });

  it('takes everything back when a projection fails', async () => {
    const host = trialHost((db: WriteDb) => {
      db.exec("INSERT INTO holiday (on_day) VALUES ('x')");
    });

    const reply = await dispatch(host, { name: 'trial/add', input: { day: '2026-05-01' } }, everybody);

    expect(reply.ok).toBe(false);
    expect(count(host, 'holiday')).toBe(0);
  });

  it('answers the same key once, with the same answer', async () => {
    const host = trialHost();
    const send = () => dispatch(host, { name: 'trial/add', input: { day: '2026-05-01' }, key: 'key-12345' }, everybody);

    const first = await send();
    const second = await send();

    expect(second).toEqual(first);
    expect(count(host, 'holiday')).toBe(1);
  });

  it('refuses a key that was used for something else', async () => {
    const { send, refuse } = await startTestHost();
    await send('promises/add-holiday', { day: '2026-05-01', words: 'x' }, { key: 'key-12345' });

    expect(await refuse('shop/set-next-number', { series: 'tag', next: 50_000 }, { key: 'key-12345' })).toMatchObject({
      code: 'host/key-used',
    });
  });

  it('hides what broke and gives a reference that stands in the log', async () => {
    const host = trialHost();
    said.length = 0;

    const reply = await dispatch(host, { name: 'trial/break', input: {} }, everybody);

    expect(reply).toMatchObject({ ok: false, error: { kind: 'bug', code: 'host/bug' } });
    expect(JSON.stringify(reply)).not.toContain('secret internals');
    expect(reply.ok ? '' : reply.error.reference).toBe(said.at(-1));
  });

  it('looks at the right before it looks at the input', async () => {
    const host = trialHost();

    expect(await dispatch(host, { name: 'trial/add', input: { nonsense: 1 } }, nobody(null, 'test'))).toMatchObject({
      ok: false,
      error: { kind: 'not-allowed', code: 'host/nobody-signed-in' },
    });
  });

  it('names the fields of a bad input', async () => {
    const host = trialHost();

    const reply = await dispatch(host, { name: 'trial/add', input: { day: 5, extra: true } }, everybody);

    expect(reply).toMatchObject({
      ok: false,
      error: { kind: 'invalid-input', code: 'host/bad-input', fields: { day: expect.any(String) } },
    });
  });

  it('says a full disk in words and saves nothing', async () => {
    const host = trialHost();
    const pages = Number(host.sqlite.pragma('page_count', { simple: true }));
    host.sqlite.pragma(`max_page_count = ${pages}`);
    const big = 'x'.repeat(4000);
    let reply = await dispatch(host, { name: 'trial/add', input: { day: '2026-05-01', word: big } }, everybody);
    for (let i = 0; i < 400 && reply.ok; i += 1)
      reply = await dispatch(
        host,
        { name: 'trial/add', input: { day: '2026-05-01' }, key: `${big.slice(0, 60)}${i}` },
        everybody,
      );

    expect(reply).toMatchObject({
      ok: false,
      error: { kind: 'unavailable', code: 'host/disk-full', message: expect.stringContaining('Free some space') },
    });
    const before = count(host, 'holiday');
    expect(count(host, 'activity')).toBe(before);
  });
});

describe('activity', () => {
  it('is a chain in which each row carries the hash of the one before', async () => {
    const { send, db, sqlite } = await startTestHost();
    await send('promises/add-holiday', { day: '2026-05-01', words: 'x' });

    expect(findBrokenLink(db)).toBeUndefined();
    expect(await send('activity/check-chain', {})).toEqual({ whole: true, brokenAt: null });

    sqlite.exec('DROP TRIGGER activity__no_update');
    sqlite.exec("UPDATE activity SET command = 'tickets/nothing' WHERE id = 5");
    expect(findBrokenLink(db)).toBe(5);
  });

  it("stays whole when a person's text is blanked by law", async () => {
    const { db, sqlite } = await startTestHost();
    const body = () => sqlite.prepare('SELECT body FROM activity_text WHERE activity_id = 3').get();

    sqlite.exec('UPDATE activity_text SET body = NULL WHERE activity_id = 3');

    expect(body()).toEqual({ body: null });
    expect(findBrokenLink(db)).toBeUndefined();
  });

  it('cannot be rewritten, removed or replaced by any program that opens the file', async () => {
    const { sqlite } = await startTestHost();

    expect(() => sqlite.exec("UPDATE activity SET at = 'x' WHERE id = 1")).toThrow(/never changed/);
    expect(() => sqlite.exec('DELETE FROM activity WHERE id = 1')).toThrow(/never deleted/);
    expect(() => sqlite.exec('INSERT OR REPLACE INTO activity SELECT * FROM activity WHERE id = 1')).toThrow(
      /never replaced/,
    );
    expect(() => sqlite.exec("UPDATE activity_text SET body = 'other' WHERE activity_id = 1")).toThrow(
      /only be blanked/,
    );
  });

  it('never holds a PIN', async () => {
    const { send, sqlite } = await startTestHost();
    await send('staff/add-person', { name: 'Bo Lind', initials: 'BO', roles: ['counter'], pin: '918273' });

    const texts = sqlite.prepare('SELECT body FROM activity_text').all() as { body: string }[];
    expect(texts.filter((t) => t.body.includes('918273'))).toEqual([]);
  });
});

describe('a workspace', () => {
  it('keeps every command with who, when, from where and what', async () => {
    const { send, db } = await startTestHost();
    await send('promises/add-holiday', { day: '2026-05-01', words: 'Harbour day' });

    const { rows } = await send('activity/list-activity', { limit: 1 });

    expect(rows[0]).toMatchObject({
      by: 'Odile Brackwen',
      from: 'test',
      command: 'promises/add-holiday',
      words: 'Closed on 2026-05-01: Harbour day',
      at: '2026-03-09T14:00:00.000Z',
    });
    expect(db.sql<{ n: number }>('SELECT count(*) AS n FROM activity')[0]?.n).toBeGreaterThan(10);
  });
});
