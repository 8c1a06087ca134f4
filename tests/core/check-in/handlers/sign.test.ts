import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
/** One black dot. */
const PNG = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

describe('intake/sign-claim', () => {
  it('locks the list of conditions when it is signed (I36)', async () => {
    const made = await checkIn(t);
    const castingId = made.castings[0]?.castingId ?? 0;
    const mark = { condition: 'crack-chamber', x: 10, y: 10 };
    const first = await t.send('castings/mark-condition', { castingId, mark }, { as: 'TV' });
    expect(first.atStage).toBe('arrival');
    const signed = await t.send(
      'intake/sign-claim',
      {
        ticketId: made.ticketId,
        how: 'drawn',
        signedBy: 'Wendolin Aubry',
        signatureFile: { base64: PNG, mime: 'image/png' },
      },
      { as: 'TV' },
    );
    expect(signed).toEqual({ locked: true, words: 'Signed on the screen by Wendolin Aubry' });
    const error = await t.refuse('castings/remove-mark', { markId: first.markId }, { as: 'TV' });
    expect(error.message).toBe('The customer signed this list. Add it as a finding.');
    const later = await t.send('castings/mark-condition', { castingId, mark }, { as: 'JP' });
    expect(later.atStage).toBe('finding');
    await t.send('castings/remove-mark', { markId: later.markId }, { as: 'JP' });
  });

  it('does not take an empty drawing, nor a second signature', async () => {
    const made = await checkIn(t);
    const error = await t.refuse('intake/sign-claim', { ticketId: made.ticketId, how: 'drawn' }, { as: 'TV' });
    expect(error.fields?.signatureFile).toContain('The signature is empty.');
    await t.send('intake/sign-claim', { ticketId: made.ticketId, how: 'on_paper' }, { as: 'TV' });
    const again = await t.refuse('intake/sign-claim', { ticketId: made.ticketId, how: 'on_paper' }, { as: 'TV' });
    expect(again.code).toBe('check-in/signed');
  });

  it('says on the ticket when it is left unsigned, and can be signed later', async () => {
    const made = await checkIn(t, { signed: { how: 'left_unsigned' } });
    const page = await t.send('tickets/get-ticket', { ticketId: made.ticketId }, { as: 'TV' });
    expect(page).toMatchObject({ conditionsLocked: false, signed: { words: 'left unsigned' } });
    expect((await t.send('intake/sign-claim', { ticketId: made.ticketId, how: 'on_paper' }, { as: 'TV' })).locked).toBe(
      true,
    );
  });

  it('takes a signature that is no picture with a sentence and writes nothing', async () => {
    const made = await checkIn(t);
    const error = await t.refuse(
      'intake/sign-claim',
      {
        ticketId: made.ticketId,
        how: 'drawn',
        signatureFile: { base64: Buffer.from('not a picture').toString('base64'), mime: 'image/png' },
      },
      { as: 'TV' },
    );
    expect(error.kind).toBe('invalid-input');
    expect((await t.send('tickets/get-ticket', { ticketId: made.ticketId }, { as: 'TV' })).signed).toBeNull();
  });

  it('keeps the drawing out of the activity', async () => {
    await checkIn(t, {
      signed: { how: 'drawn', by: 'Wendolin Aubry' },
      signatureFile: { base64: PNG, mime: 'image/png' },
    });
    expect(
      t.db.sql<{ body: string }>('SELECT body FROM activity_text').some((row) => row.body.includes(PNG.slice(0, 40))),
    ).toBe(false);
  });
});
