/** How a half-typed figure would read and judge, asked of the host as it is typed. */
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
 * `preview` is undefined while nothing is typed, for words, and while the host is away. `ask` is the preview of exactly
 * this text: a gauge types faster than the answer to its last digit comes.
 */
export function usePreview(spot: Spot | null, text: string, gauge: Gauge) {
  const client = useClient();
  const input = spot && text.trim() !== '' && !isWords(spot.row) ? previewInput(spot, text, gauge) : null;
  const { data, isPlaceholderData } = useAppQuery('readings/get-preview', input ?? NOTHING, {
    enabled: input !== null,
    keep: true,
  });
  const preview = input ? data : undefined;
  const ask = (): Promise<Preview | undefined> => {
    if (!input) return Promise.resolve(undefined);
    if (preview && !isPlaceholderData) return Promise.resolve(preview);
    // The host away: the figure is kept here and judged when it is back.
    return client.call('readings/get-preview', input).catch(() => undefined);
  };
  return { preview, ask };
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
