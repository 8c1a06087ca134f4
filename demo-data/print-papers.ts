/** `npm run papers -- <folder>`: makes the practice shop aside and prints every kind of its paper there. */
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { openWorkspace, type Workspace } from '#electron/wiring/open-workspace.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { makePracticeShop } from './practice-shop.ts';
import { type Replay, send } from './replay.ts';

type Wish = InputOf<App['documents/print-paper']>['wish'];

/** Tickets of stories that are told to their end; what is still here comes from the open ones. */
const TOLD = [20455, 20417, 20496];

const KINDS: readonly Wish['paper'][] = [
  'drop-off',
  'claim-ticket',
  'traveller',
  'casting-tag',
  'bag-tag',
  'estimate',
  'added-work',
  'build-sheet',
  'invoice',
  'receipt',
  'release',
  'ready-label',
];

/**
 * Print one paper of each kind into a folder.
 *
 * @returns names of the files, and the kinds for which no ticket of the practice shop has anything to print
 */
export async function printPapers(
  workspace: Workspace,
  folder: string,
): Promise<{ files: string[]; missing: string[] }> {
  mkdirSync(folder, { recursive: true });
  const replay: Replay = {
    ask: (name, input, initials) =>
      workspace.answer({ name, input }, commandLineSession(workspace.host(), initials ?? 'OB')),
    setClock: () => undefined,
  };
  const { tickets } = await send(replay, 'tickets/list-open', {});
  const open = tickets.map(({ number }) => number).filter((number) => !TOLD.includes(number));
  const wishes = (await Promise.all([...TOLD, ...open].map((number) => wishesOf(replay, number)))).flat();
  const files: string[] = [];
  const missing: string[] = [];
  for (const kind of KINDS) {
    // A question that is still open shows what it is made of.
    const wish =
      kind === 'added-work'
        ? wishes.findLast(({ paper }) => paper === kind)
        : wishes.find(({ paper }) => paper === kind);
    if (!wish) {
      missing.push(kind);
      continue;
    }
    const { sha256, fileName } = await send(replay, 'documents/print-paper', { wish });
    copyFileSync(join(workspace.paths.attachments, sha256.slice(0, 2), sha256), join(folder, fileName));
    files.push(fileName);
  }
  return { files, missing };
}

/** Everything that can be printed of one ticket; nothing when the ticket is not there. */
async function wishesOf(replay: Replay, number: number): Promise<Wish[]> {
  const reply = await replay.ask('tickets/get-ticket', { number });
  if (!reply.ok) return [];
  const ticket = await send(replay, 'tickets/get-ticket', { number });
  const { ticketId } = ticket;
  const { customerId } = ticket.customer;
  const { payments } = await send(replay, 'payments/list-payments', { customerId });
  const staged = ticket.castings.some(({ word }) => word === 'staged');
  const hasBags = ticket.containers.length > 0 || ticket.castings.some(({ containers }) => containers.length > 0);
  return [
    { paper: 'drop-off', ticketId },
    { paper: 'claim-ticket', ticketId },
    { paper: 'casting-tag', ticketId, spares: 1 },
    ...(hasBags ? [{ paper: 'bag-tag' as const, ticketId, spares: 1 }] : []),
    ...(staged ? [{ paper: 'ready-label' as const, ticketId }] : []),
    ...ticket.castings.flatMap(({ castingId }): Wish[] => [
      { paper: 'traveller', castingId },
      { paper: 'build-sheet', castingId },
    ]),
    ...(ticket.money.estimate ? [{ paper: 'estimate' as const, estimateId: ticket.money.estimate.estimateId }] : []),
    ...ticket.questions.map(({ addedWorkId }): Wish => ({ paper: 'added-work', addedWorkId })),
    ...ticket.money.invoices.map(({ invoiceId }): Wish => ({ paper: 'invoice', invoiceId })),
    ...payments.map(({ id }): Wish => ({ paper: 'receipt', paymentId: id })),
    ...ticket.releases.map(({ releaseId }): Wish => ({ paper: 'release', releaseId })),
  ];
}

async function main(folder: string): Promise<void> {
  const aside = mkdtempSync(join(tmpdir(), 'benchtag-papers-'));
  try {
    await makePracticeShop(aside);
    const workspace = openWorkspace(aside);
    try {
      const { files, missing } = await printPapers(workspace, folder);
      for (const file of files) process.stdout.write(`${join(folder, file)}\n`);
      for (const kind of missing) process.stderr.write(`The practice shop has no ${kind} to print.\n`);
      if (missing.length > 0) process.exitCode = 1;
    } finally {
      await workspace.close();
    }
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}

const [folder] = process.argv.slice(2);
if (import.meta.main) {
  if (folder) await main(resolve(folder));
  else {
    process.stderr.write('Say where: npm run papers -- <folder>\n');
    process.exitCode = 1;
  }
}
