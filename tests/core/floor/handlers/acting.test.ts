import { describe, expect, it } from 'vitest';
import { capital } from '#core/floor/compute/bench-words.ts';
import { dangers, named, readActing, refusalOf, refuseEnded, refuseStale } from '#core/floor/handlers/acting.ts';
import { NotedRefusal } from '#core/host/implement.ts';
import { AppError } from '#core/kernel/errors.ts';
import { reason } from '#core/state/compute/reasons.ts';
import { startTestHost } from '#tests/kit/test-host.ts';
import { acting, benchOf, checkIn, finish, tick } from '../builders.ts';

async function actingOn(code: string) {
  const host = await startTestHost();
  const job = await checkIn(host);
  const { operationId, seenVersion } = acting(await benchOf(host, job), code);
  return { host, job, found: readActing(host.db, operationId), seenVersion };
}

describe('readActing', () => {
  it('says an operation that is not here', async () => {
    const { host } = await actingOn('hot-tank');
    expect(() => readActing(host.db, 4711 as never)).toThrow('This operation is not here.');
  });
});

describe('refusalOf', () => {
  it('leaves a note of a tried wrong metal only', async () => {
    const { found } = await actingOn('hot-tank');
    const metal = reason('metal', 'ALUMINIUM: no caustic.', 'wrong metal');
    const asked = reason('metal', 'Confirm the metal first: does a magnet stick?', 'metal not confirmed');
    expect(refusalOf(found, [metal], 'Start')).toBeInstanceOf(NotedRefusal);
    expect(refusalOf(found, [asked], 'Start')).toBeInstanceOf(AppError);
    expect(() => refusalOf(found, [], 'Start')).toThrow(RangeError);
  });
});

describe('dangers', () => {
  it('are what stops even work that is begun', async () => {
    const { found } = await actingOn('hot-tank');
    const stops = (['metal', 'items', 'identity', 'hold', 'rule', 'approval'] as const).map((kind) =>
      reason(kind, kind, kind),
    );
    expect(dangers({ ...found.state, stops }).map((stop) => stop.kind)).toEqual(['metal', 'items', 'identity']);
  });
});

describe('refuseEnded', () => {
  it('refuses what is done', async () => {
    const { host, job, found } = await actingOn('disassemble-head');
    expect(() => refuseEnded(found)).not.toThrow();
    await tick(host, job, 'tag-and-photos');
    await finish(host, job, 'disassemble-head');
    const after = readActing(host.db, found.operation.id);
    expect(() => refuseEnded(after)).toThrow(
      `${capital(found.operation.kind.words)} on ${found.casting.tag} is done already.`,
    );
  });
});

describe('refuseStale', () => {
  it('lets the version that was seen pass and no other', async () => {
    const { found, seenVersion } = await actingOn('hot-tank');
    expect(() => refuseStale(found, seenVersion)).not.toThrow();
    expect(() => refuseStale(found, seenVersion + 1)).toThrow('Somebody else changed this');
  });
});

describe('named', () => {
  it('names operation and tag', async () => {
    const { found } = await actingOn('hot-tank');
    expect(named(found)).toBe(`Hot tank on ${found.casting.tag}`);
  });
});
