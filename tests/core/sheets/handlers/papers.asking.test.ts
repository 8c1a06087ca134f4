/** The added-work sheet, from a crack found at the bench to the question put to the customer. */
import { describe, expect, it } from 'vitest';
import type { CastingId } from '#core/kernel/ids.ts';
import type { AddedWorkPaper } from '#core/sheets/contract/papers.ts';
import { checkInPair } from '#tests/kit/checked-in.ts';
import { codesOf, faultsOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

async function askAboutCrack() {
  const shop = await startTestHost();
  const made = await checkInPair(shop);
  const castingId = made.castings[1]?.castingId as CastingId;
  const kind = (code: string) =>
    shop.db.sql<{ id: number }>('SELECT id FROM operation_kind WHERE code = ?', code)[0]?.id ?? 0;
  const asked = await shop.send(
    'approvals/ask-added-work',
    {
      ticketId: made.ticketId,
      castingId,
      words: 'The right head has a crack from exhaust seat 6 into the water passage. It weeps at 40 psi.',
      options: [
        {
          kind: 'work',
          words: 'Weld the crack, new seat, dye check, test again.',
          daysMore: 3,
          operations: [
            { operationKindId: kind('weld-repair'), quantity: 5_400 },
            { operationKindId: kind('seat-insert'), quantity: 1 },
            { operationKindId: kind('penetrant-check') },
            { operationKindId: kind('pressure-retest') },
          ],
        },
        { kind: 'other_casting', words: 'You find another casting; your parts are moved across.' },
      ],
      expiresAt: '2026-03-13T21:00:00.000Z',
    },
    { as: 'TV' },
  );
  return { shop, made, asked };
}

describe('sheets/get-paper', () => {
  it('gathers every way to go with what was answered to the counter, both stops among them', async () => {
    const { shop, asked } = await askAboutCrack();

    const { data } = await shop.send(
      'sheets/get-paper',
      { wish: { paper: 'added-work', addedWorkId: asked.addedWorkId } },
      { as: 'TV' },
    );
    const paper = data as unknown as AddedWorkPaper;
    const cents = (amount: string) => Math.round(Number(amount.replace(/,/g, '')) * 100);

    expect(paper.number).toBe(asked.number);
    expect(paper.ways.map(({ title }) => title)).toEqual([
      'Repair it',
      'Another casting',
      'Stop this casting',
      'Stop everything',
    ]);
    expect(paper.ways.map(({ rows }) => cents(rows[1]?.value ?? ''))).toEqual(
      asked.options.map(({ newTotal }) => newTotal),
    );
    expect(cents(paper.ways[0]?.rows[0]?.value ?? '')).toBe(asked.options[0]?.extra);
    expect(cents(paper.soFarTotal[0]?.amount ?? '')).toBe(asked.options.at(-1)?.newTotal);
  });
});

describe.skipIf(lacks('pdftotext', 'pdftoppm', 'zbarimg'))('documents/print-paper', () => {
  it('prints the question with its code, clean', async () => {
    const { shop, asked } = await askAboutCrack();

    const printed = await shop.send(
      'documents/print-paper',
      { wish: { paper: 'added-work', addedWorkId: asked.addedWorkId } },
      { as: 'TV' },
    );
    const bytes = await shop.host.services.files.read(printed.sha256);

    expect(codesOf(bytes)[0]).toEqual([`BT A${asked.number}`]);
    expect(faultsOf(bytes)).toEqual([]);
    expect(textOf(bytes)).toContain('It weeps at 40 psi.');
    expect(textOf(bytes)).toContain('Yes to d');
  });
});
