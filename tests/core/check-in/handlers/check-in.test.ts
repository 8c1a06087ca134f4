import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('tickets/check-in-ticket', () => {
  it('makes customer, ticket, castings, pieces, work and promise in one command', async () => {
    const t = await startTestHost();
    const made = await t.send(
      'tickets/check-in-ticket',
      {
        customer: { add: { name: 'Ossian Wherrytun', persons: [{ name: 'Ossian Wherrytun', mayApprove: true, contacts: [{ kind: 'phone', value: '(555) 0177' }] }] } },
        ticket: { engineWords: 'classic four', gasket: 'mls', valveLift: '12.5 mm', oldParts: 'return' },
        castings: [{ type: 'LO-4', material: 'iron_grey', materialHow: 'magnet', position: 'single' }],
        wishes: [{ package: 'valve-job' }, { operation: 'mag-particle-check' }],
        ceiling: { amount: 60_000, taxIn: false, saidBy: 'Ossian Wherrytun', words: 'up to six hundred' },
        promise: { day: '2026-03-12' },
        signed: { how: 'on_paper', by: 'Ossian Wherrytun' },
      },
      { as: 'TV' },
    );
    expect(made.number).toBe(20001);
    expect(made.castings[0]).toMatchObject({ tagNo: 40001, title: 'Head', identityHold: null });
  });
});
