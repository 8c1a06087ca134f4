import { describe, expect, it } from 'vitest';
import type { CastingId } from '#core/kernel/ids.ts';
import { checkInPair } from '#tests/kit/checked-in.ts';
import { checkIn } from '#tests/kit/desk.ts';
import { codesOf, faultsOf, ONE_POINT, pagesOf, picturesIn, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

const bytesOf = (shop: TestHost, sha256: string) => shop.host.services.files.read(sha256);

describe.skipIf(lacks('pdftotext', 'pdftoppm', 'zbarimg'))('documents/print-set', () => {
  it('draws the pile of a check-in in its order and keeps every file', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);

    const { papers } = await shop.send('documents/print-set', { ticketId: made.ticketId }, { as: 'TV' });

    expect(papers.map(({ paper }) => paper)).toEqual([
      'claim-ticket',
      'traveller',
      'traveller',
      'casting-tag',
      'bag-tag',
    ]);
    expect(papers[0]).toMatchObject({ fileName: `claim-ticket-${made.number}-r1.pdf`, revision: 1 });
    for (const { sha256, fileName } of papers) {
      const bytes = await bytesOf(shop, sha256);
      expect(faultsOf(bytes), fileName).toEqual([]);
      expect(textOf(bytes), fileName).toContain('PRACTICE');
    }
  });

  it('prints tags whose codes read back to the tags and trays checked in, and one spare of each', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const tags = made.castings.map(({ tagNo }) => String(tagNo));

    const { papers } = await shop.send('documents/print-set', { ticketId: made.ticketId }, { as: 'TV' });
    const file = async (paper: string) => bytesOf(shop, papers.find((one) => one.paper === paper)?.sha256 ?? '');
    const [casting, bags] = [await file('casting-tag'), await file('bag-tag')];

    expect(codesOf(casting).flat().sort()).toEqual(tags.map((tag) => `BT C${tag}`));
    expect(codesOf(bags).flat().sort()).toEqual(tags.map((tag) => `BT B${tag}-A`));
    expect(textOf(casting)).toContain('spare');
    expect(textOf(bags)).toContain("CUSTOMER'S OWN");
  });

  it('refuses nobody and leaves no document', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);

    const error = await shop.refuse('documents/print-set', { ticketId: made.ticketId }, { as: 'JP' });

    expect(error.code).toBe('host/not-allowed');
    expect(shop.db.sql('SELECT id FROM document')).toEqual([]);
  });
});

describe.skipIf(lacks('pdftotext'))('documents/print-paper', () => {
  it('keeps the revision while the paper says the same, and steps it when it does not', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const wish = { paper: 'claim-ticket', ticketId: made.ticketId } as const;

    const first = await shop.send('documents/print-paper', { wish }, { as: 'TV' });
    shop.setClock('2026-03-09T15:00:00.000Z');
    const again = await shop.send('documents/print-paper', { wish }, { as: 'TV' });
    await shop
      .send(
        'promises/set-promise' as never,
        { ticketId: made.ticketId, promise: { day: '2026-03-13' }, reason: 'customer' } as never,
        { as: 'TV' },
      )
      .catch(() => undefined);
    shop.sqlite.prepare('UPDATE ticket SET order_number = ? WHERE id = ?').run('ML-7732', made.ticketId);
    const later = await shop.send('documents/print-paper', { wish }, { as: 'TV' });

    expect([first.revision, again.revision, later.revision]).toEqual([1, 1, 2]);
    expect(pagesOf(await bytesOf(shop, later.sha256))[0]).toContain('revision 2');
  });

  it('says on a later traveller what changed since the last one', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const castingId = made.castings[1]?.castingId as CastingId;
    const wish = { paper: 'traveller', castingId } as const;
    await shop.send('documents/print-paper', { wish }, { as: 'TV' });
    const kind = shop.db.sql<{ id: number }>("SELECT id FROM operation_kind WHERE code = 'cam-bore-check'")[0]?.id ?? 0;

    await shop.send(
      'pricing/add-operations',
      { ticketId: made.ticketId, castingId, operations: [{ operationKindId: kind }] },
      { as: 'TV' },
    );
    const state = await shop.send('sheets/get-traveller-state', { castingId }, { as: 'JP' });
    const later = await shop.send('documents/print-paper', { wish }, { as: 'JP' });
    const text = textOf(await bytesOf(shop, later.sha256));

    expect(state).toEqual({ printed: 1, now: 2, stale: true, words: 'Paper is revision 1, now 2.' });
    expect(text).toContain('Changed since revision 1');
    expect(text).toMatch(/new: .*cam/i);
    expect(await shop.send('sheets/get-traveller-state', { castingId }, { as: 'JP' })).toMatchObject({ stale: false });
  });

  it('prints the signature that was drawn when the list was signed', async () => {
    const shop = await startTestHost();
    const { ticketId } = await checkIn(shop);
    const signatureFile = { base64: ONE_POINT, mime: 'image/png' };
    const sign = { ticketId, how: 'drawn', signedBy: 'Wendolin Aubry', signatureFile } as const;
    await shop.send('intake/sign-claim', sign, { as: 'TV' });

    const wish = { paper: 'claim-ticket', ticketId } as const;
    const bytes = await bytesOf(shop, (await shop.send('documents/print-paper', { wish }, { as: 'TV' })).sha256);

    expect(textOf(bytes)).toContain('Wendolin Aubry');
    expect(picturesIn(bytes)).toBeGreaterThan(0);
  });

  it('refuses a paper with prices to a machinist', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);

    const error = await shop.refuse(
      'documents/print-paper',
      { wish: { paper: 'claim-ticket', ticketId: made.ticketId } },
      { as: 'JP' },
    );

    expect(error.kind).toBe('not-allowed');
  });

  it('writes one line of activity with the paper', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);

    await shop.send('documents/print-paper', { wish: { paper: 'drop-off', ticketId: made.ticketId } }, { as: 'TV' });
    const last = shop.db.sql<{ command: string; subject_table: string }>(
      'SELECT command, subject_table FROM activity ORDER BY id DESC LIMIT 1',
    );

    expect(last).toEqual([{ command: 'documents/print-paper', subject_table: 'document' }]);
  });
});

describe('documents/list-documents', () => {
  it('lists papers newest first with how their printing went, and marks those replaced', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const wish = { paper: 'claim-ticket', ticketId: made.ticketId } as const;
    const first = await shop.send('documents/print-paper', { wish }, { as: 'TV' });
    await shop.send(
      'documents/record-printing',
      { documentId: first.documentId, outcome: 'failed', words: 'printer Counter does not answer' },
      { as: 'TV' },
    );
    await shop.send('documents/print-paper', { wish }, { as: 'TV' });

    const { documents } = await shop.send('documents/list-documents', { ticketId: made.ticketId }, { as: 'TV' });

    expect(documents.map(({ replaced, outcome, words }) => ({ replaced, outcome, words }))).toEqual([
      { replaced: false, outcome: null, words: `Claim ticket ${made.number}, revision 1` },
      { replaced: true, outcome: 'failed', words: `Claim ticket ${made.number}, revision 1` },
    ]);
  });

  it('leaves out papers whose content the person may not see', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    await shop.send('documents/print-set', { ticketId: made.ticketId }, { as: 'TV' });

    const { documents } = await shop.send('documents/list-documents', { ticketId: made.ticketId }, { as: 'JP' });

    expect(new Set(documents.map(({ paper }) => paper))).toEqual(new Set(['bag-tag', 'casting-tag', 'traveller']));
  });
});

describe('documents/record-printing', () => {
  it('refuses a paper that is not there', async () => {
    const shop = await startTestHost();

    const error = await shop.refuse('documents/record-printing', { documentId: 99, outcome: 'printed' }, { as: 'TV' });

    expect(error.code).toBe('documents/no-such-document');
  });
});
