/**
 * How much the customer has said yes to, how much is spent, and whether a line may be started, ordered or sent out.
 *
 * Everything here depends on answers; core/state and the guards read it, nobody repeats it. Source: common practice, no
 * source (an authorised amount changes only by a recorded answer).
 */
import { type BasisPoints, type Cents, cents, divideRounded, ONE, sumCents } from '../../kernel/units.ts';
import { centsText } from './working.ts';

/** One recorded answer, as it stands in the approval table, oldest first by `order`. */
export type AnswerFact = Readonly<{
  id: number;
  /** Rising with time; the row id will do. */
  order: number;
  /** When it was recorded, UTC. */
  at: string;
  /** When the added work was asked, UTC; null for other answers. */
  askedAt: string | null;
  about: 'estimate' | 'added_work' | 'ceiling' | 'scrap' | 'overrun';
  answer: 'yes' | 'no' | 'part' | 'withdrawn';
  /** The estimate's or the option's id; null for ceiling, scrap and overrun. */
  question: number | null;
  amount: Cents;
  taxIn: boolean;
  /** The lines the question holds; for `part` each with its own yes or no. */
  lines: readonly Readonly<{ line: number; yes: boolean }>[];
  /** The answer a `withdrawn` takes back. */
  withdraws: number | null;
}>;

export type Authorised = Readonly<{
  amount: Cents;
  /** Compare exposure with tax when true. True when any of its parts was meant with tax. */
  taxIn: boolean;
  /** A ceiling stands: work may be added below it without a call. */
  ceiling: boolean;
  /** The answer everything after builds on; null when nobody said yes yet. */
  base: AnswerFact | null;
  /** Yes to added work asked after the base, oldest first. */
  adds: readonly AnswerFact[];
}>;

/** The answers that stand: those taken back are out, and so are the takings back. In order of time. */
export function standingAnswers(answers: readonly AnswerFact[]): AnswerFact[] {
  const takenBack = new Set(answers.filter((a) => a.answer === 'withdrawn').map((a) => a.withdraws));
  return answers.filter((a) => a.answer !== 'withdrawn' && !takenBack.has(a.id)).sort((a, b) => a.order - b.order);
}

/**
 * The authorised amount: the later of the last accepted estimate and the last ceiling, plus the options asked since and
 * said yes to (asked in the same moment counts as since). An answer taken back lets the earlier one stand again; an option's later no takes its yes away.
 */
export function authorisedAmount(answers: readonly AnswerFact[]): Authorised {
  const standing = standingAnswers(answers);
  const base = standing.filter(isBase).at(-1) ?? null;
  const adds = lastOfEachOption(standing).filter(
    (a) => a.answer === 'yes' && (base === null || (a.askedAt ?? a.at) >= base.at),
  );
  const parts = base === null ? adds : [base, ...adds];
  return {
    amount: sumCents(parts.map((a) => a.amount)),
    taxIn: parts.some((a) => a.taxIn),
    ceiling: base?.about === 'ceiling',
    base,
    adds,
  };
}

const isBase = (a: AnswerFact): boolean =>
  (a.about === 'estimate' && (a.answer === 'yes' || a.answer === 'part')) ||
  (a.about === 'ceiling' && a.answer === 'yes');

function lastOfEachOption(standing: readonly AnswerFact[]): AnswerFact[] {
  const last = new Map<number, AnswerFact>();
  for (const answer of standing) {
    if (answer.about === 'added_work' && answer.question !== null) last.set(answer.question, answer);
  }
  return [...last.values()].sort((a, b) => a.order - b.order);
}

/** The last answer on one line: yes, no, or null when nobody was asked about it. */
export function answerOnLine(answers: readonly AnswerFact[], line: number): 'yes' | 'no' | null {
  let last: 'yes' | 'no' | null = null;
  for (const answer of standingAnswers(answers)) {
    const found = answer.lines.find((l) => l.line === line);
    if (found) last = answer.answer === 'part' ? yesNo(found.yes) : yesNo(answer.answer === 'yes');
  }
  return last;
}

const yesNo = (yes: boolean): 'yes' | 'no' => (yes ? 'yes' : 'no');

/** The authorised amount with the overrun the customer agreed to in writing. */
export const authorisedWithOverrun = (amount: Cents, overrun: BasisPoints): Cents =>
  cents(divideRounded(BigInt(amount) * BigInt(ONE + overrun), BigInt(ONE)));

export type Coverage = Readonly<{
  covered: boolean;
  why: 'answered yes' | 'under the ceiling' | 'answered no' | 'not asked' | 'asked, no answer yet' | 'over the ceiling';
  /** What exposure would be with the line. */
  exposure: Cents;
  /** The most it may be, overrun included. */
  most: Cents;
}>;

/**
 * Whether a line may be started, ordered or sent out.
 *
 * @param exposureWith amounts of the committed lines and this one, with discount, rush, supplies and fees recomputed on
 *   them, and with tax when the authorised amount is meant with tax
 */
export function lineCovered(
  answers: readonly AnswerFact[],
  line: number,
  exposureWith: Cents,
  overrun: BasisPoints,
): Coverage {
  const { amount, ceiling } = authorisedAmount(answers);
  const most = authorisedWithOverrun(amount, overrun);
  const result = (covered: boolean, why: Coverage['why']): Coverage => ({ covered, why, exposure: exposureWith, most });
  const answer = answerOnLine(answers, line);
  if (answer === 'yes') return result(true, 'answered yes');
  if (answer === 'no') return result(false, 'answered no');
  if (!ceiling) return result(false, 'not asked');
  return exposureWith <= most ? result(true, 'under the ceiling') : result(false, 'over the ceiling');
}

/** How far a line has gone, for exposure. */
export type Commitment = Readonly<{
  kind: string;
  /** An operation of it is started or done. */
  started: boolean;
  /** A part is ordered, here or fitted; outside work is out. */
  ordered: boolean;
}>;

/** Whether a line's money is spent: work begun, part ordered, outside work out. Charges typed by a person count at once. */
export const isCommitted = (line: Commitment): boolean =>
  line.kind === 'operation' || line.kind === 'package' || line.kind === 'hourly'
    ? line.started
    : line.kind === 'part' || line.kind === 'sublet' || line.kind === 'core'
      ? line.ordered
      : true;

/** The sentence a bench or counter reads when a line of this amount is not covered. Amounts as plain decimals. */
export function notCoveredWords(coverage: Coverage, line: Cents): string {
  switch (coverage.why) {
    case 'answered no':
      return 'The customer said no to this. Ask again if it changed.';
    case 'asked, no answer yet':
      return 'Not approved yet: the customer was asked and has not answered.';
    case 'over the ceiling':
      return `Not approved yet: ${centsText(line)} would pass the ${centsText(coverage.most)} agreed. Ask the customer.`;
    default:
      return 'Not approved yet: the customer has not been asked about this. Send an estimate or agree a ceiling.';
  }
}

/**
 * What is agreed, in words: "Ceiling 1500.00 before tax, and A1 a 326.72".
 *
 * @param labelOf names an option, for example "A1 a"
 */
export function authorisedWords({ base, adds }: Authorised, labelOf: (option: number) => string): string {
  const basis = (a: AnswerFact) => (a.taxIn ? 'with tax' : 'before tax');
  const first = base && `${base.about === 'ceiling' ? 'Ceiling' : 'Estimate'} ${centsText(base.amount)} ${basis(base)}`;
  const rest = adds.map((a) => `${labelOf(a.question ?? 0)} ${centsText(a.amount)}`);
  const parts = [...(first ? [first] : []), ...rest];
  return parts.length === 0 ? 'Nothing agreed yet' : parts.join(', and ');
}

/** Whether the customer agreed to more hours than were estimated on a line. */
export const overrunAgreed = (answers: readonly AnswerFact[], line: number): boolean =>
  standingAnswers(answers).findLast((a) => a.about === 'overrun' && a.lines.some((l) => l.line === line))?.answer ===
  'yes';
