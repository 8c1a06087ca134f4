/** Which papers a ticket can have, in the order of the pile. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';

export type Wish = InputOf<App['documents/print-paper']>['wish'];
export type Offered = Readonly<{ key: string; words: string; wish: Wish }>;

type Ticket = OutputOf<App['tickets/get-ticket']>;
type Estimates = readonly Readonly<{ id: number; number: string }>[];

/** Claim ticket first, then what goes with each casting, then questions and money, then what leaves. */
export function papersOf(ticket: Ticket, estimates: Estimates): readonly Offered[] {
  const { ticketId } = ticket;
  const containers = ticket.castings.flatMap((casting) => casting.containers).concat(ticket.containers);
  const offered: (Offered | false)[] = [
    { key: 'claim', words: 'Claim ticket', wish: { paper: 'claim-ticket', ticketId } },
    ...ticket.castings.map((casting) => ({
      key: `traveller-${casting.castingId}`,
      words: `Traveller ${casting.tagNo}`,
      wish: { paper: 'traveller' as const, castingId: casting.castingId },
    })),
    ticket.castings.length > 0 && {
      key: 'tags',
      words: 'Casting tags, one spare',
      wish: { paper: 'casting-tag', ticketId, spares: 1 },
    },
    containers.length > 0 && {
      key: 'bags',
      words: 'Bag and tray tags',
      wish: { paper: 'bag-tag', ticketId, spares: 1 },
    },
    ...estimates.map((estimate) => ({
      key: `estimate-${estimate.id}`,
      words: `Estimate ${estimate.number}`,
      wish: { paper: 'estimate' as const, estimateId: estimate.id },
    })),
    ...ticket.questions.map((question) => ({
      key: `added-${question.addedWorkId}`,
      words: `Added work ${question.label}`,
      wish: { paper: 'added-work' as const, addedWorkId: question.addedWorkId },
    })),
    ...ticket.castings
      .filter((casting) => casting.signedWords !== null)
      .map((casting) => ({
        key: `build-${casting.castingId}`,
        words: `Build sheet ${casting.tagNo}`,
        wish: { paper: 'build-sheet' as const, castingId: casting.castingId },
      })),
    ...ticket.money.invoices.map((invoice) => ({
      key: `invoice-${invoice.invoiceId}`,
      words: `Invoice ${invoice.number}`,
      wish: { paper: 'invoice' as const, invoiceId: invoice.invoiceId },
    })),
    ticket.castings.some((casting) => casting.signedWords !== null) && {
      key: 'ready',
      words: 'Ready labels',
      wish: { paper: 'ready-label', ticketId },
    },
    ...ticket.releases.map((release) => ({
      key: `release-${release.releaseId}`,
      words: `Release, ${release.takenBy}`,
      wish: { paper: 'release' as const, releaseId: release.releaseId },
    })),
    { key: 'drop-off', words: 'Drop-off sheet', wish: { paper: 'drop-off', ticketId } },
  ];
  return offered.filter((one) => one !== false);
}
