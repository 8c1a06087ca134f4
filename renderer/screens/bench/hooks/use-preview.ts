/** How a half-typed figure would read and judge, asked of the host as it is typed. */
import { useRef } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { ReadOn } from '#core/readings/compute/model.ts';
import { useAppQuery, useClient } from '../../../client/use-app.ts';
import type { Preview } from '../bench-casting.ts';
import { isWords, type Spot } from '../reading-view.ts';

export type Gauge = Readonly<{ tool: number | null; readOn: ReadOn | null }>;

/** Never sent: the query stays shut while nothing is typed. */
const NOTHING = { casting: 1, table: '-', quantity: '-', stage: 'before', typed: '' } as const;

/**
 * `preview` is undefined while nothing is typed, for words, and while the host is away; between two keys it is the one
 * before of the same place, never of another. `fresh` is the preview of exactly this text, `ask` fetches it.
 */
export function usePreview(spot: Spot | null, text: string, gauge: Gauge) {
  const client = useClient();
  const input = spot && text.trim() !== '' && !isWords(spot.row) ? previewInput(spot, text, gauge) : null;
  const { data, isFetching } = useAppQuery('readings/get-preview', input ?? NOTHING, { enabled: input !== null });
  const place = input ? `${input.quantity}|${input.spot}|${input.point}|${input.stage}` : '';
  const before = useRef<{ place: string; preview: Preview } | null>(null);
  const fresh = input ? data : undefined;
  if (fresh) before.current = { place, preview: fresh };
  const same = isFetching && before.current?.place === place ? before.current.preview : undefined;
  const ask = (): Promise<Preview | undefined> =>
    // The host away: the figure is kept here and judged when it is back.
    input ? client.call('readings/get-preview', input).catch(() => undefined) : Promise.resolve(undefined);
  return { preview: fresh ?? (input ? same : undefined), fresh, ask };
}

const previewInput = (spot: Spot, typed: string, gauge: Gauge): InputOf<App['readings/get-preview']> => ({
  casting: spot.sheet.casting.id,
  table: spot.sheet.table.code,
  quantity: spot.row.quantity,
  spot: spot.column.spot,
  point: spot.row.point,
  stage: spot.row.stage,
  typed,
  unit: spot.row.unit,
  tool: gauge.tool,
  readOn: spot.row.quantity === 'installed-height' ? gauge.readOn : null,
});
