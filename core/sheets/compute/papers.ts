/** Facts about papers by name: title, who may see what they hold, how a revision reads. Pure. */
import type { Capability } from '../../kernel/roles.ts';
import type { PaperName, TravellerPaper } from '../contract/papers.ts';

type About = Readonly<{
  title: string;
  /** What a person must be allowed to see. */
  may: Capability;
  /** Printed once and never changed: it carries no revision. */
  once?: true;
}>;

export const PAPERS: Readonly<Record<PaperName, About>> = {
  'claim-ticket': { title: 'Claim ticket', may: 'tickets:see' },
  traveller: { title: 'Traveller', may: 'castings:see' },
  'casting-tag': { title: 'Casting tags', may: 'castings:see' },
  'bag-tag': { title: 'Bag tags', may: 'castings:see' },
  estimate: { title: 'Estimate', may: 'pricing:see' },
  'added-work': { title: 'Added work', may: 'pricing:see' },
  'build-sheet': { title: 'Build sheet', may: 'castings:see' },
  invoice: { title: 'Invoice', may: 'money:see', once: true },
  receipt: { title: 'Receipt', may: 'money:see', once: true },
  release: { title: 'Release', may: 'floor:see' },
  'ready-label': { title: 'Ready labels', may: 'floor:see' },
  'drop-off': { title: 'Drop-off sheet', may: 'castings:see' },
};

/** In the foot of every page. */
export const revisionWords = (paper: PaperName, revision: number): string =>
  PAPERS[paper].once ? 'issued once' : `revision ${revision}`;

/** "claim-ticket-20455-r1.pdf". */
export const fileNameOf = (paper: PaperName, number: string, revision: number): string =>
  `${paper}-${number}${PAPERS[paper].once ? '' : `-r${revision}`}.pdf`;

/** "Claim ticket 20455, revision 1". */
export const documentWords = (paper: PaperName, number: string, revision: number): string =>
  `${PAPERS[paper].title} ${number}, ${revisionWords(paper, revision)}`;

/** Revision of what would be printed now: a later one when it says something else than the last. */
export const nextRevision = (
  last: Readonly<{ revision: number; digest: string | null }> | null,
  digest: string,
): number => {
  if (last === null) return 1;
  return last.digest === digest ? last.revision : last.revision + 1;
};

/** What a traveller says, by what it is about, so that a later one can name what changed. */
export function travellerFacts(paper: Omit<TravellerPaper, 'head'>): Record<string, string> {
  const facts: Record<string, string> = {
    Metal: paper.tag.metal,
    Promise: `${paper.promise.day} ${paper.promise.time}`,
  };
  const put = (about: string, words: string): void => {
    let key = about;
    for (let again = 2; key in facts; again += 1) key = `${about} (${again})`;
    facts[key] = words;
  };
  for (const { no, name, units, note } of paper.operations)
    put(name, [no.endsWith('?') ? 'not approved' : '', units, note].filter(Boolean).join(', '));
  for (const { label, chosen } of paper.spec) put(label, chosen);
  for (const warning of paper.warnings) put(warning, '');
  for (const { label, words } of paper.notes) put(label, words);
  return facts;
}
