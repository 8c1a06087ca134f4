/** What papers would show now. */
import { createHash } from 'node:crypto';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import { AppError } from '../../kernel/errors.ts';
import { nextRevision, PAPERS, revisionWords } from '../compute/papers.ts';
import type { PaperHead, PaperName, Papers } from '../contract/papers.ts';
import type { sheetsContract, Wish } from '../contract.ts';
import { findLastDocument, type LastDocument } from '../store/documents.ts';
import { type Gathered, gatherPaper } from '../store/gather.ts';
import { openScene } from '../store/scene.ts';

/** A paper ready for drawing, with what is needed to keep it. */
export type Ready = Readonly<{
  gathered: Gathered;
  head: PaperHead;
  digest: string;
  revision: number;
  last: LastDocument | null;
}>;

/** @throws AppError `not-allowed` when the person may not see what the paper holds; `not-found` when its thing is gone */
export function readyPaper(ctx: QueryCtx, wish: Wish): Ready {
  if (!ctx.session.may.has(PAPERS[wish.paper].may)) {
    throw new AppError('not-allowed', 'host/not-allowed', 'This paper is not yours to print. Ask at the counter.');
  }
  const scene = openScene(ctx);
  const gathered = gatherPaper(scene, wish);
  const digest = createHash('sha256').update(JSON.stringify(gathered.data)).digest('hex');
  const last = findLastDocument(ctx.db, gathered.paper, gathered.subject) ?? null;
  const revision = nextRevision(last && { revision: last.revision, digest: last.facts_digest }, digest);
  return {
    gathered,
    head: { ...scene.head, revision: revisionWords(gathered.paper, revision) },
    digest,
    revision,
    last,
  };
}

/** The paper whole. */
export const wholePaper = ({ gathered, head }: Ready): Papers[PaperName] =>
  ({ ...gathered.data, head }) as Papers[PaperName];

export const paperHandlers: Pick<Handlers<typeof sheetsContract>, 'sheets/get-paper' | 'sheets/get-traveller-state'> = {
  'sheets/get-paper': {
    run({ wish }, ctx) {
      const ready = readyPaper(ctx, wish);
      return { paper: wish.paper, data: wholePaper(ready), revision: ready.revision };
    },
  },
  'sheets/get-traveller-state': {
    run({ castingId }, ctx) {
      const { revision, last } = readyPaper(ctx, { paper: 'traveller', castingId });
      const printed = last?.revision ?? null;
      const stale = printed !== null && printed !== revision;
      return { printed, now: revision, stale, words: stale ? `Paper is revision ${printed}, now ${revision}.` : null };
    },
  },
};
