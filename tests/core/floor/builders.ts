/** Tickets of the practice shop's catalogue, checked in by ordinary commands. */

import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { TestHost } from '#tests/kit/test-host.ts';

type CheckIn = InputOf<App['tickets/check-in-ticket']>;
type Casting = NonNullable<CheckIn['castings']>[number];

export type Job = Readonly<{
  ticketId: number;
  number: number;
  customerId: number;
  castings: readonly Readonly<{ castingId: number; tagNo: number }>[];
}>;

/** An iron head whose metal the counter tried with a magnet. */
export const IRON_HEAD: Casting = {
  type: 'NV-8',
  material: 'iron_grey',
  materialHow: 'magnet',
  position: 'left',
  items: [],
};
/** An aluminium head with two overhead camshafts. */
export const ALUMINIUM_HEAD: Casting = { type: 'BV-6', material: 'aluminium', position: 'left', items: [] };

type Wanted = Readonly<{
  castings?: readonly Casting[];
  operations?: readonly string[];
  /** Cents; null: nobody agreed anything. */
  ceiling?: number | null;
}> &
  Partial<Omit<CheckIn, 'castings' | 'wishes' | 'ceiling'>>;

/** Check in castings with operations under a generous ceiling. */
export async function checkIn(host: TestHost, wanted: Wanted = {}): Promise<Job> {
  const { castings = [IRON_HEAD], operations = ['disassemble-head', 'hot-tank'], ceiling = 500_000, ...more } = wanted;
  const made = await host.send(
    'tickets/check-in-ticket',
    {
      customer: {
        add: {
          kind: 'retail',
          name: 'Petra Lindqvist',
          shortName: 'P. Lindqvist',
          persons: [{ name: 'Petra Lindqvist', mayApprove: true }],
        },
      },
      castings: [...castings],
      wishes: operations.map((operation) => ({ operation })),
      ceiling:
        ceiling === null
          ? null
          : {
              amount: ceiling,
              taxIn: false,
              saidBy: 'Petra Lindqvist',
              means: 'counter',
              words: 'go ahead',
            },
      ...more,
    } as CheckIn,
    { as: 'TV' },
  );
  return made as unknown as Job;
}

/** The page of the first casting, or of one by its place. */
export const benchOf = (host: TestHost, job: Job, index = 0, as = 'JP') =>
  host.send('floor/get-bench', { tag: job.castings[index]?.tagNo ?? 0 }, { as });

type Page = Awaited<ReturnType<typeof benchOf>>;

/** An operation of a page by its code; the last one when it was redone. */
export function operationOf(page: Page, code: string): Page['operations'][number] {
  const found = page.operations.findLast((o) => o.kindCode === code);
  if (!found) throw new Error(`no ${code} on ${page.tag}`);
  return found;
}

/** What a command on one operation is sent with. */
export const acting = (page: Page, code: string) => {
  const { id, version } = operationOf(page, code);
  return { operationId: id, seenVersion: version };
};

/** Tick a fact of a casting. */
export const tick = (host: TestHost, job: Job, fact: InputOf<App['floor/tick-fact']>['fact'], index = 0) =>
  host.send('floor/tick-fact', { castingId: job.castings[index]?.castingId ?? 0, fact }, { as: 'JP' });

/** Done without a start, on the first casting or another. */
export async function finish(host: TestHost, job: Job, code: string, { index = 0, as = 'JP' } = {}) {
  const page = await benchOf(host, job, index);
  return host.send('floor/finish-operation', { operations: [acting(page, code)] }, { as });
}
/** Start an operation of the first casting. */
export const start = async (host: TestHost, job: Job, code: string, as = 'JP') =>
  host.send('floor/start-operation', { operations: [acting(await benchOf(host, job), code)] }, { as });
/** Try to start an operation. @returns the refusal */
export const refuseStart = async (host: TestHost, job: Job, code: string, index = 0) =>
  host.refuse('floor/start-operation', { operations: [acting(await benchOf(host, job, index), code)] }, { as: 'JP' });
