import { describe, expect, it } from 'vitest';
import type { CastingId } from '#core/kernel/ids.ts';
import { startMeasuring } from '#tests/kit/measuring.ts';

describe('readings/export-readings', () => {
  it('gives the readings of a casting as a file with its name', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.512');

    const csv = await shop.send('readings/export-readings', { casting: shop.casting, as: 'csv' }, { as: 'DK' });
    const json = await shop.send('readings/export-readings', { casting: shop.casting, as: 'json' }, { as: 'DK' });
    const read = JSON.parse(json.text) as { casting: { customer: string }; rows: { typed: string | null }[] };

    expect(csv.fileName).toMatch(/^readings-\d{5}\.csv$/);
    expect(csv.text).toContain(',1.512,1.512,in,38.40,mm,');
    expect(read.casting.customer).toBe('Ossian Wherrytun');
    expect(read.rows.filter(({ typed }) => typed !== null)).toHaveLength(1);
    expect(read.rows).toHaveLength(csv.rows);
  });

  it('refuses a casting that is not there', async () => {
    const shop = await startMeasuring();

    const refused = await shop.refuse('readings/export-readings', { casting: 4711 as CastingId, as: 'csv' });

    expect(refused.kind).toBe('not-found');
  });
});
