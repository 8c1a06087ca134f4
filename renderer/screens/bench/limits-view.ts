/** The limits of a casting as the list shows them. Computes nothing: figures and order are the host's. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { withMark } from '#core/kernel/measure-show.ts';

export type LimitRow = OutputOf<App['limits/list-resolved']>[number];
type Answered = LimitRow['others'][number];

export const keyOf = (limit: Pick<LimitRow, 'quantity' | 'stage' | 'side'>): string =>
  `${limit.quantity}|${limit.stage}|${limit.side}`;

const SIDES = { I: ', intake', E: ', exhaust', any: '' } as const;

/** `margin, intake`; before work is said, after work is the rule. */
export const nameOf = ({ words, side, stage }: Pick<LimitRow, 'words' | 'side' | 'stage'>): string =>
  `${words}${SIDES[side]}${stage === 'before' ? ', before work' : ''}`;

/** `1.690 – 1.710 in, target 1.700`; a figure to reckon with alone has no limits. */
export function figuresOf({ text, targetText, unit }: Pick<Answered, 'text' | 'targetText' | 'unit'>): string {
  if (text === '') return targetText === null ? '' : withMark(targetText, unit);
  const limits = withMark(text, unit);
  return targetText === null ? limits : `${limits}, target ${targetText}`;
}

/** `typed by DK, checked by BL`; empty for what the program brought and nobody touched. */
export function answeredBy({ typedBy, checkedBy }: Pick<Answered, 'typedBy' | 'checkedBy'>): string {
  return [typedBy && `typed by ${typedBy}`, checkedBy && `checked by ${checkedBy}`].filter((words) => words).join(', ');
}

export type LimitGroup = Readonly<{ title: string; limits: readonly LimitRow[] }>;

/** What somebody typed for this casting, engine, customer or job first; then what the shop falls back on. */
export function groupLimits(limits: readonly LimitRow[]): LimitGroup[] {
  const own = limits.filter((limit) => limit.forWhat !== 'shop');
  const shop = limits.filter((limit) => limit.forWhat === 'shop');
  return [
    { title: 'Of this casting, its engine, the customer or this job', limits: own },
    { title: 'Shop defaults', limits: shop.filter((limit) => limit.text !== '') },
    { title: 'Figures the shop reckons with', limits: shop.filter((limit) => limit.text === '') },
  ].filter((group) => group.limits.length > 0);
}
