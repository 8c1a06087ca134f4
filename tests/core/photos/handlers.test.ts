import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

/** One black dot. */
const PNG = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});

describe('photos/add-photo', () => {
  it('keeps a picture once, under the hash the host made', async () => {
    const { ticketId, castings } = await checkIn(t);
    const castingId = castings[0]?.castingId ?? 0;
    const file = { base64: PNG, mime: 'image/png' };
    const first = await t.send('photos/add-photo', { ticketId, castingId, caption: 'deck up', file }, { as: 'JP' });
    const second = await t.send(
      'photos/add-photo',
      { ticketId, castingId, stage: 'finding', file: { sha256: first.sha256 } },
      { as: 'JP' },
    );
    expect(second.sha256).toBe(first.sha256);
    expect(first).toMatchObject({ width: 1, height: 1 });
    expect(t.db.sql<{ n: number }>('SELECT COUNT(*) AS n FROM attachment')[0]?.n).toBe(1);
    const { photos } = await t.send('photos/list-photos', { castingId }, { as: 'JP' });
    expect(photos.map((photo) => [photo.stageWords, photo.caption, photo.tagNo, photo.by])).toEqual([
      ['found', null, 40_001, 'Jorun Pellathy'],
      ['at arrival', 'deck up', 40_001, 'Jorun Pellathy'],
    ]);
  });

  it.each([
    ['text that says it is a picture', { base64: Buffer.from('hello').toString('base64'), mime: 'image/png' }],
    ['a paper', { base64: Buffer.from('%PDF-1.7\n').toString('base64'), mime: 'application/pdf' }],
    ['half of a picture', { base64: PNG.slice(0, 8), mime: 'image/png' }],
    ['nothing', { base64: '', mime: 'image/png' }],
    ['a hash nobody sent', { sha256: 'a'.repeat(64) }],
  ])('refuses %s with a sentence and keeps nothing', async (_, file) => {
    const { ticketId } = await checkIn(t);
    const error = await t.refuse('photos/add-photo', { ticketId, file }, { as: 'JP' });
    expect(error.kind).toBe('invalid-input');
    expect(error.message.length).toBeGreaterThan(20);
    expect((await t.send('photos/list-photos', { ticketId }, { as: 'JP' })).photos).toEqual([]);
  });

  it('does not hang a picture of one ticket on the casting of another', async () => {
    const first = await checkIn(t);
    const second = await checkIn(t);
    const error = await t.refuse(
      'photos/add-photo',
      {
        ticketId: first.ticketId,
        castingId: second.castings[0]?.castingId ?? 0,
        file: { base64: PNG, mime: 'image/png' },
      },
      { as: 'JP' },
    );
    expect(error.code).toBe('photos/other-ticket');
  });
});

describe('photos/hide-photo', () => {
  it('hides a picture with its reason and deletes nothing', async () => {
    const { ticketId } = await checkIn(t);
    const { photoId } = await t.send(
      'photos/add-photo',
      { ticketId, file: { base64: PNG, mime: 'image/png' } },
      { as: 'JP' },
    );
    await t.send('photos/hide-photo', { photoId, why: 'a face in it' }, { as: 'JP' });
    expect((await t.send('photos/list-photos', { ticketId }, { as: 'JP' })).photos).toEqual([]);
    expect((await t.refuse('photos/hide-photo', { photoId, why: 'again' }, { as: 'JP' })).code).toBe('photos/hidden');
    expect(() => t.sqlite.prepare('DELETE FROM photo').run()).toThrow(/never deleted/);
  });
});

describe('photos/keep-proof', () => {
  it('keeps a signed paper for an answer or an instruction', async () => {
    const kept = await t.send(
      'photos/keep-proof',
      { words: 'signed instruction', file: { base64: PNG, mime: 'image/png' } },
      { as: 'TV' },
    );
    expect(kept.attachmentId).toBeGreaterThan(0);
  });
});
