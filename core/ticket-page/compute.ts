/** Short lines of the ticket page: the agreement line, what a casting is doing, what is said. Pure and browser-safe. */
import type { CastingNow } from '../state/compute/castings.ts';
import type { OperationNow } from '../state/compute/operations.ts';
import type { OperationWord, TicketWord } from '../state/compute/words.ts';

/** The stages of the agreement line, in order. */
export const STAGES = [
  'checked in',
  'waiting approval',
  'approved',
  'in work',
  'ready',
  'invoiced',
  'paid',
  'collected',
] as const satisfies readonly TicketWord[];

/** The line with the present stage marked; none is marked for an enquiry, a declined or an abandoned ticket. */
export function agreementLine(word: TicketWord): { word: (typeof STAGES)[number]; past: boolean; here: boolean }[] {
  const at = STAGES.indexOf((word === 'closed' ? 'collected' : word) as (typeof STAGES)[number]);
  return STAGES.map((stage, index) => ({ word: stage, past: at >= 0 && index < at, here: index === at }));
}

export type Mark = 'done' | 'running' | 'open' | 'uncovered' | 'off';
const OFF: readonly OperationWord[] = ['not needed', 'redone', 'declined'];

/** Which mark a row or a part of the bar carries. */
export function markOf(operation: Pick<OperationNow, 'word' | 'covered'>): Mark {
  if (operation.word === 'done' || operation.word === 'signed') return 'done';
  if (operation.word === 'started' || operation.word === 'stopped') return 'running';
  if (OFF.includes(operation.word)) return 'off';
  return operation.covered ? 'open' : 'uncovered';
}

/** The next operation the hand goes to: the first of a casting that may start. */
export const nextOf = (operations: readonly OperationNow[]): OperationNow | undefined =>
  operations.find((one) => one.word === 'ready to start' && one.live);

/** "Valve grind started 10:20, D.R. then Seat cut", "next Seat cut", "waits for crack result", "all done". */
export function doingWords(
  casting: Pick<CastingNow, 'operations'>,
  words: (id: number) => string,
  started: (id: number) => string,
): string {
  const live = casting.operations.filter((one) => one.live);
  const running = live.find((one) => one.word === 'started');
  const next = nextOf(live);
  if (running) return `${words(running.id)} started ${started(running.id)}${next ? `, then ${words(next.id)}` : ''}`;
  const stopped = live.find((one) => one.word === 'stopped');
  if (stopped) return `${words(stopped.id)} stopped${shortOf(stopped)}`;
  if (next) return `next ${words(next.id)}`;
  const waiting = live.find((one) => markOf(one) === 'open' || markOf(one) === 'uncovered');
  if (waiting) return `${words(waiting.id)}: ${waiting.stops[0]?.short ?? waiting.word}`;
  return live.length === 0 ? 'no work asked for' : 'all done';
}

const shortOf = (operation: OperationNow): string => {
  const stop = operation.stops[0];
  return stop ? `: ${stop.short}` : '';
};

/** Fields with something in them, as label and text. */
export const saidOf = (
  rows: readonly (readonly [label: string, words: string | null])[],
): { label: string; words: string }[] =>
  rows.flatMap(([label, words]) => (words === null || words === '' ? [] : [{ label, words }]));

export const GASKET_WORDS = { mls: 'MLS', composition: 'composition', other: 'other', not_asked: null } as const;
export const OLD_PARTS_WORDS = { return: 'wanted back', discard: 'not wanted', not_asked: null } as const;
export const PROMISE_WORDS = {
  first: 'first promise',
  parts: 'parts',
  answer: "customer's answer",
  machine: 'machine',
  found_more: 'found more',
  customer: 'customer asked',
  other: 'other',
} as const;
