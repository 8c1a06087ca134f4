/** What a rule says of one size, in words: the first thing that speaks against it, else what is not known, else that it cleans up. */

import type { Direction, VerdictName } from './model.ts';
import { type BoreFacts, neededSize, thinnestWall, type WornBore } from './oversize.ts';
import type { OversizeRule, OversizeVerdict, SizeShown } from './oversize-model.ts';
import { judge } from './verdict.ts';

/** One size as far as it is known. */
export type SizeAsked = Readonly<{
  finished: number | null;
  boring: number | null;
  /** False: no pistons of this size are made for the engine. */
  made: boolean;
  /** Why finished or boring size is not known; empty when both are. */
  unknown: string;
}>;

export type Case = Readonly<{
  rule: OversizeRule;
  facts: BoreFacts;
  bores: readonly WornBore[];
  /** The largest reach and its doubt; null when nothing was read or nothing is bored. */
  reach: Readonly<{ value: number; uncertainty: number | null }> | null;
  /** `cylinder 5: pin axis, bottom`; empty when everything was read. */
  unread: readonly string[];
  guard: boolean;
  show: (value: number, sign?: boolean) => SizeShown;
}>;

type Said = Pick<OversizeVerdict, 'name' | 'direction' | 'words' | 'reason'>;

const said = (name: VerdictName, direction: Direction | null, words: string, reason: string): Said => ({
  name,
  direction,
  words,
  reason,
});

/** Judge one size by one rule. */
export function judgeSize(asked: SizeAsked, it: Case): OversizeVerdict {
  const need = it.reach === null ? null : neededSize(it.rule, it.reach.value, it.facts);
  const wall = asked.finished === null ? null : thinnestWall(it.rule, asked.finished, it.bores, it.facts.start);
  const answer =
    notThere(asked) ??
    (asked.boring === null || need === null ? null : tooSmall(asked.boring, need, it)) ??
    tooBig(asked.finished, it) ??
    tooThin(wall, it) ??
    notKnown(need, it) ??
    said('pass', null, 'cleans up', passWords(asked.boring, need, it));
  return {
    ...answer,
    spare: asked.boring === null || need === null ? null : it.show(asked.boring - need, true),
    wallLeft: wall === null ? null : it.show(wall.left),
  };
}

function notThere(asked: SizeAsked): Said | null {
  if (!asked.made) return said('fail', null, 'not made', 'No pistons of this size are made for this engine.');
  return asked.unknown === '' ? null : said('not measured', null, 'not known', asked.unknown);
}

function tooSmall(boring: number, need: number, it: Case): Said | null {
  const uncertainty = it.reach?.uncertainty ?? null;
  const { name } = judge({ value: boring, low: need, high: null, uncertainty, guard: it.guard });
  const figures = `Bored to ${it.show(boring).text}; ${it.show(need).text} is needed`;
  if (name === 'fail') return said('fail', 'under', 'not enough', `${figures}: wear would be left.`);
  if (name !== 'too close to call') return null;
  return said(name, 'under', 'too close', `${figures}: closer than the gauge can tell.`);
}

function tooBig(finished: number | null, { facts, show }: Case): Said | null {
  if (finished === null || facts.greatest === null || finished <= facts.greatest) return null;
  return said(
    'fail',
    'over',
    'bore too big',
    `Finished at ${show(finished).text}; the greatest bore allowed is ${show(facts.greatest).text}.`,
  );
}

function tooThin(wall: ReturnType<typeof thinnestWall>, { facts, show }: Case): Said | null {
  if (wall === null || facts.leastWall === null || wall.left >= facts.leastWall) return null;
  return said(
    'fail',
    'under',
    'wall too thin',
    `${wall.label} would be left with ${show(wall.left).text} of wall; at least ${show(facts.leastWall).text} is wanted.`,
  );
}

function notKnown(need: number | null, it: Case): Said | null {
  if (it.bores.length === 0) return null;
  if (need === null) return said('not measured', null, 'not read', 'No bore has been read yet.');
  if (it.unread.length === 0) return null;
  return said('not measured', null, 'not all read', `Cleans up what was read. Not read yet: ${it.unread.join('; ')}.`);
}

function passWords(boring: number | null, need: number | null, it: Case): string {
  if (boring === null || need === null) return 'Nothing is left to clean up: the sleeves make the bores new.';
  const { show } = it;
  return `Bored to ${show(boring).text}; ${show(need).text} is needed: ${show(boring - need).text} to spare.`;
}
