/** The limits of one casting as a list: what judges each quantity, and what a lead could take instead. */
import type { LimitId } from '../../kernel/ids.ts';
import type { LimitAnswered, LimitInForce } from '../contract/limits.ts';
import type { Bench } from './bench.ts';
import { showLimit } from './limit-words.ts';
import type { Facts, Limit } from './model.ts';
import { listFitting } from './resolve-limit.ts';

/** Initials of who typed and who checked a limit; empty for nobody. */
export type Answering = Readonly<{ typedBy: string; checkedBy: string }>;
export const NOBODY: Answering = { typedBy: '', checkedBy: '' };

/** One entry for both sides, or one a side where they are judged differently; quantities without any limit are left out. */
export function listInForce(
  facts: Pick<Facts, 'quantities' | 'limits' | 'casting'>,
  limitOf: Bench['limit'],
  answering: (id: LimitId) => Answering,
): LimitInForce[] {
  const answered = (limit: Limit): LimitAnswered => ({
    ...showLimit({ limit, setAside: null, chosen: null }, limit.side),
    ...answering(limit.id),
  });
  return facts.quantities.flatMap(({ code, words }) =>
    (['before', 'after'] as const).flatMap((stage) => {
      const [intake, exhaust] = [limitOf(code, stage, 'I'), limitOf(code, stage, 'E')];
      const isOne = intake?.limit.id === exhaust?.limit.id;
      const sides = isOne
        ? ([['any', intake]] as const)
        : ([
            ['I', intake],
            ['E', exhaust],
          ] as const);
      return sides.flatMap(([side, resolved]) => {
        // What is judged by the limit of another quantity stands there once.
        if (resolved?.limit.quantity !== code) return [];
        const asked = { quantity: code, stage, side: side === 'any' ? null : side, material: facts.casting.material };
        const others = listFitting(asked, facts.limits).filter((it) => it.id !== resolved.limit.id);
        return [
          {
            ...showLimit(resolved, side),
            ...answering(resolved.limit.id),
            quantity: code,
            words,
            stage,
            others: others.map(answered),
          },
        ];
      });
    }),
  );
}
