/**
 * Which limit judges: a lead's choice, then the casting's type, then the engine, then what was typed for this job, then the
 * customer's written instruction, then the shop. A customer's figure that gives way is said, never dropped in silence.
 */
import type { Limit, LimitChoice, LimitFor, ResolvedLimit } from './model.ts';

/** Best first. Engine data goes before the customer's wish (the safe way round); a lead may turn it about with a reason. */
const RANK: readonly LimitFor[] = ['casting_type', 'engine_type', 'this_job', 'customer_instruction', 'shop'];

export type Asked = Readonly<{
  quantity: string;
  stage: Limit['stage'];
  side: 'I' | 'E' | null;
  material: string;
}>;

/** @returns the limit in force, or null when none is known. */
export function resolveLimit(
  asked: Asked,
  limits: readonly Limit[],
  choices: readonly LimitChoice[],
): ResolvedLimit | null {
  const ordered = listFitting(asked, limits);
  const choice = choices.findLast((it) => isSame(it, asked));
  const chosen = choice && limits.find((limit) => limit.id === choice.limit);
  const limit = chosen ?? ordered[0];
  if (!limit) return null;
  const customers = ordered.find((it) => it.forWhat === 'customer_instruction' && it.id !== limit.id);
  return {
    limit,
    setAside: customers && limit.forWhat !== 'customer_instruction' && differs(customers, limit) ? customers : null,
    chosen: choice && chosen ? { reason: choice.reason, by: choice.by } : null,
  };
}

/** Every limit that could judge this, in the order they come; those that another one replaced are left out. */
export function listFitting(asked: Asked, limits: readonly Limit[]): Limit[] {
  const replaced = new Set(limits.map((limit) => limit.replaces));
  return limits.filter((limit) => fits(limit, asked) && !replaced.has(limit.id)).toSorted(byRank);
}

const isSame = (it: Pick<LimitChoice, 'quantity' | 'stage' | 'side'>, asked: Asked): boolean =>
  it.quantity === asked.quantity && it.stage === asked.stage && (it.side === 'any' || it.side === asked.side);

const fits = (limit: Limit, asked: Asked): boolean =>
  isSame(limit, asked) && (limit.material === null || limit.material === asked.material);

const differs = (a: Limit, b: Limit): boolean => a.low !== b.low || a.high !== b.high || a.target !== b.target;

/** Rank, then the narrower one: for this casting, this side, this metal, this word, then the latest. */
function byRank(a: Limit, b: Limit): number {
  return (
    RANK.indexOf(a.forWhat) - RANK.indexOf(b.forWhat) ||
    narrow(b.casting !== null) - narrow(a.casting !== null) ||
    narrow(b.side !== 'any') - narrow(a.side !== 'any') ||
    narrow(b.material !== null) - narrow(a.material !== null) ||
    narrow(b.forWord !== undefined) - narrow(a.forWord !== undefined) ||
    (a.from < b.from ? 1 : a.from > b.from ? -1 : b.id - a.id)
  );
}

const narrow = (is: boolean): number => (is ? 1 : 0);
