/** Gathers any paper by its wish: what it shows, what it is about, and its ticket. */
import type { CastingId, TicketId } from '../../kernel/ids.ts';
import type { PaperName, Papers } from '../contract/papers.ts';
import type { Wish } from '../contract.ts';
import { readAddedWork } from './added-work.ts';
import { readBuildSheet } from './build-sheet.ts';
import { readClaimTicket } from './claim-ticket.ts';
import type { Subject } from './documents.ts';
import { readDropOff } from './drop-off.ts';
import { readEstimate } from './estimate.ts';
import { readInvoice, readReceipt } from './invoice.ts';
import { readRelease } from './release.ts';
import type { Scene } from './scene.ts';
import { readBagTags, readCastingTags, readReadyLabels } from './tags.ts';
import { readTraveller } from './traveller.ts';

/** A paper without its head: that comes with the printing. */
export type Gathered = {
  readonly [N in PaperName]: Readonly<{
    paper: N;
    data: Omit<Papers[N], 'head'>;
    /** The number people call it by; names the file. */
    number: string;
    subject: Subject;
    ticket: TicketId | null;
  }>;
}[PaperName];

const ticketOf = (scene: Scene, casting: CastingId): TicketId | null =>
  scene.db.one(scene.db.q.selectFrom('casting').select('ticket_id').where('id', '=', casting))?.ticket_id ?? null;

const numberOf = (scene: Scene, ticket: TicketId): string =>
  String(scene.db.one(scene.db.q.selectFrom('ticket').select('number').where('id', '=', ticket))?.number ?? '');

type Gather<N extends PaperName> = (scene: Scene, wish: Extract<Wish, { paper: N }>) => Extract<Gathered, { paper: N }>;

const GATHER: { readonly [N in PaperName]: Gather<N> } = {
  'claim-ticket': (scene, { paper, ticketId }) => {
    const data = readClaimTicket(scene, ticketId);
    return { paper, data, number: data.number, subject: ['ticket', ticketId], ticket: ticketId };
  },
  traveller: (scene, { paper, castingId }) => {
    const data = { ...readTraveller(scene, castingId), changed: [], changedSince: '' };
    return {
      paper,
      data,
      number: data.tag.number,
      subject: ['casting', castingId],
      ticket: ticketOf(scene, castingId),
    };
  },
  'casting-tag': (scene, { paper, ticketId, ...wish }) => ({
    paper,
    data: readCastingTags(scene, ticketId, wish),
    number: numberOf(scene, ticketId),
    subject: ['ticket', ticketId],
    ticket: ticketId,
  }),
  'bag-tag': (scene, { paper, ticketId, ...wish }) => ({
    paper,
    data: readBagTags(scene, ticketId, wish),
    number: numberOf(scene, ticketId),
    subject: ['ticket', ticketId],
    ticket: ticketId,
  }),
  estimate: (scene, { paper, estimateId }) => {
    const data = readEstimate(scene, estimateId);
    const row = scene.db.one(scene.db.q.selectFrom('estimate').select('ticket_id').where('id', '=', estimateId));
    return { paper, data, number: data.number, subject: ['estimate', estimateId], ticket: row?.ticket_id ?? null };
  },
  'added-work': (scene, { paper, addedWorkId }) => {
    const data = readAddedWork(scene, addedWorkId);
    const row = scene.db.one(scene.db.q.selectFrom('added_work').select('ticket_id').where('id', '=', addedWorkId));
    return { paper, data, number: data.number, subject: ['added_work', addedWorkId], ticket: row?.ticket_id ?? null };
  },
  'build-sheet': (scene, { paper, castingId }) => {
    const data = readBuildSheet(scene, castingId);
    return {
      paper,
      data,
      number: data.tag.number,
      subject: ['casting', castingId],
      ticket: ticketOf(scene, castingId),
    };
  },
  invoice: (scene, { paper, invoiceId }) => {
    const data = readInvoice(scene, invoiceId);
    const row = scene.db.one(scene.db.q.selectFrom('invoice').select('ticket_id').where('id', '=', invoiceId));
    return { paper, data, number: data.number, subject: ['invoice', invoiceId], ticket: row?.ticket_id ?? null };
  },
  receipt: (scene, { paper, paymentId }) => {
    const { ticketId, ...data } = readReceipt(scene, paymentId);
    return { paper, data, number: data.number, subject: ['payment', paymentId], ticket: ticketId };
  },
  release: (scene, { paper, releaseId }) => {
    const { ticketId, ...data } = readRelease(scene, releaseId);
    return { paper, data, number: data.number, subject: ['release', releaseId], ticket: ticketId };
  },
  'ready-label': (scene, { paper, ticketId, ...wish }) => ({
    paper,
    data: readReadyLabels(scene, ticketId, wish),
    number: numberOf(scene, ticketId),
    subject: ['ticket', ticketId],
    ticket: ticketId,
  }),
  'drop-off': (scene, { paper, ticketId }) => {
    const data = readDropOff(scene, ticketId);
    return { paper, data, number: data.number || 'blank', subject: ['ticket', ticketId ?? 0], ticket: ticketId };
  },
};

/** @throws AppError `not-found` when the thing the paper is about is not there */
export const gatherPaper = (scene: Scene, wish: Wish): Gathered =>
  (GATHER[wish.paper] as Gather<PaperName>)(scene, wish as never);
