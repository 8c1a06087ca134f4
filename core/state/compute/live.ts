/** Which operations still count, and what the customer said about them. */
import type { Moment } from '../../kernel/days.ts';
import { standingAnswers } from '../../lines/compute/authorised.ts';
import type { CastingFact, LineFact, OperationFact, QuestionFact, TicketFacts } from './facts.ts';

/** Facts with the look-ups that every rule needs, made once a ticket. */
export type Known = Readonly<{
  facts: TicketFacts;
  lines: ReadonlyMap<number, LineFact>;
  castings: ReadonlyMap<number, CastingFact>;
  /** Operation id to the operation that redoes it. */
  redoneBy: ReadonlyMap<number, OperationFact>;
  live: readonly OperationFact[];
  unanswered: readonly Unanswered[];
}>;

/** A question that waits for the customer. */
export type Unanswered = Readonly<{
  kind: 'estimate' | 'added work';
  id: number;
  number: number;
  askedAt: Moment;
  /** Day or moment up to which it holds. */
  until: string;
  words: string;
}>;

export function know(facts: TicketFacts): Known {
  const lines = new Map<number, LineFact>(facts.lines.map((line) => [line.id, line]));
  const castings = new Map<number, CastingFact>(facts.castings.map((casting) => [casting.id, casting]));
  const redoneBy = new Map<number, OperationFact>();
  for (const operation of facts.operations) {
    if (operation.redoOf !== null) redoneBy.set(operation.redoOf, operation);
  }
  const live = facts.operations.filter((o) => isLive(o, { facts, lines, redoneBy }));
  return { facts, lines, castings, redoneBy, live, unanswered: unansweredOf(facts) };
}

type ForLife = Pick<Known, 'facts' | 'lines' | 'redoneBy'>;

/** Live: not marked not needed, not redone by another, not declined. */
export const isLive = (operation: OperationFact, known: ForLife): boolean =>
  operation.notNeededAt === null && !known.redoneBy.has(operation.id) && !isDeclined(operation, known);

/** The customer said no to its line, the line was taken back, or another option of its question was chosen. */
export function isDeclined(operation: OperationFact, { facts, lines }: ForLife): boolean {
  if (operation.finishedAt !== null) return false;
  const line = operation.lineId === null ? undefined : lines.get(operation.lineId);
  if (line && (line.withdrawn || line.answer === 'no')) return true;
  return line?.answer !== 'yes' && isOptionLost(operation.optionId ?? line?.optionId ?? null, facts);
}

/** Another option of the same question was chosen, or the question was closed without this one. */
export function isOptionLost(option: number | null, facts: TicketFacts): boolean {
  if (option === null) return false;
  const question = facts.questions.find((q) => q.options.includes(option));
  if (!question) return false;
  const answers = standingAnswers(facts.answers).filter((a) => a.about === 'added_work');
  const chosen = answers.some((a) => a.answer === 'yes' && a.question !== option && isOf(question, a.question));
  return chosen || question.closedAt !== null;
}

const isOf = (question: QuestionFact, option: number | null): boolean =>
  option !== null && question.options.includes(option);

/**
 * Questions asked and not answered: the last estimate, and every added work. An answer taken back asks again. A ticket that
 * is declined, given up or all out of the house asks nothing any more.
 */
function unansweredOf(facts: TicketFacts): Unanswered[] {
  if (isOver(facts)) return [];
  const standing = standingAnswers(facts.answers);
  const result: Unanswered[] = [];
  const last = facts.estimates.at(-1);
  if (last && !isAnswered(last, facts, standing)) {
    result.push({
      kind: 'estimate',
      id: last.id,
      number: last.revision,
      askedAt: last.sentAt,
      until: last.validUntil,
      words: `Estimate ${last.revision}`,
    });
  }
  for (const question of facts.questions) {
    if (question.askedAt === null || question.closedAt !== null) continue;
    if (standing.some((a) => a.about === 'added_work' && isOf(question, a.question))) continue;
    const { id, number, askedAt, expiresAt: until, words } = question;
    result.push({ kind: 'added work', id, number, askedAt, until, words });
  }
  return result;
}

function isOver({ ticket, castings, containers, disposed }: TicketFacts): boolean {
  if (ticket.declinedAt !== null || ticket.abandonedAt !== null || disposed) return true;
  const things = [...castings, ...containers];
  return things.length > 0 && things.every((thing) => thing.outAt !== null);
}

/** Answered since it was sent; or a ceiling stands and the whole of it, with tax, stays below what is agreed. */
function isAnswered(
  estimate: TicketFacts['estimates'][number],
  { authorised }: TicketFacts,
  standing: readonly TicketFacts['answers'][number][],
): boolean {
  const ceiling = standing.some((a) => a.about === 'ceiling' && a.answer === 'yes');
  if (ceiling && estimate.total <= authorised) return true;
  return standing.some((a) => (a.about === 'estimate' || a.about === 'ceiling') && a.at >= estimate.sentAt);
}
