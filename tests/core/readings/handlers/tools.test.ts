import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';

const BORE = {
  name: 'G30',
  kind: 'dial bore gauge',
  workCentre: 'block-bench',
  unit: 'in',
  rangeLow: '2',
  rangeHigh: '6',
  uncertainty: '0.0003',
} as const;

describe('tools/add-tool', () => {
  it('keeps what the gauge is worth, in its own unit', async () => {
    const shop = await startTestHost();

    await shop.send('tools/add-tool', BORE);
    const tool = (await shop.send('tools/list-tools', {})).find((it) => it.name === 'G30');

    expect(tool).toMatchObject({ uncertainty: 7620, uncertaintyText: '± 0.0003 in', range: '2 – 6 in', nextDue: null });
  });

  it.each([
    [{ name: 'G01' }, 'tools/name-used'],
    [{ workCentre: 'moon' }, 'tools/no-such-centre'],
    [{ uncertainty: 'small' }, 'tools/bad-figure'],
  ])('refuses %o', async (words, code) => {
    const shop = await startTestHost();

    expect(await shop.refuse('tools/add-tool', { ...BORE, ...words })).toMatchObject({ kind: 'invalid-input', code });
  });
});

describe('tools/record-check', () => {
  it('sets the next check; past it the gauge is overdue, and still there', async () => {
    const shop = await startTestHost();
    const { tool } = await shop.send('tools/add-tool', BORE);

    await shop.send('tools/record-check', { tool, on: '2026-03-01', result: 'within', nextDue: '2026-03-08' });
    const listed = (await shop.send('tools/list-tools', {})).find((it) => it.name === 'G30');
    const refused = await shop.refuse('tools/record-check', {
      tool,
      on: '2026-03-09',
      result: 'within',
      nextDue: '2026-03-09',
    });

    expect(listed).toMatchObject({ overdue: true, nextDue: '2026-03-08', lastCheck: '2026-03-01' });
    expect(refused.code).toBe('tools/next-due');
  });
});

describe('tools/retire-tool', () => {
  it('takes it off the list once', async () => {
    const shop = await startTestHost();
    const { tool, version } = await shop.send('tools/add-tool', BORE);

    await shop.send('tools/retire-tool', { tool, seenVersion: version });
    const again = await shop.refuse('tools/retire-tool', { tool, seenVersion: 2 });

    expect((await shop.send('tools/list-tools', {})).some((it) => it.name === 'G30')).toBe(false);
    expect(again.code).toBe('tools/retired');
  });
});
