/** A small sheet of bores as the host answers it: two cylinders, both stages, three levels in two axes. */
import type { Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { cellOf, rowOf, sheetOf } from './sheets.ts';

const LEVELS = ['top', 'middle', 'bottom'] as const;
const AXES = ['thrust', 'pin axis'] as const;
/** First cylinder of the first engine that is bored in the shop's practice: from the top down, thrust then pin axis. */
const READ = ['3.9562', '3.9538', '3.9512', '3.9535', '3.9522', '3.9508'] as const;

const inch = (typed: string | null, id: number) => ({
  ...cellOf(typed, id),
  value: typed === null ? null : Math.round(Number(typed) * 25_400_000),
});

const bore = (stage: 'before' | 'after', n: number): SheetRow => {
  const [axis, level] = [AXES[Math.floor(n / 3)], LEVELS[n % 3]];
  const read = stage === 'before' ? (READ[n] ?? null) : null;
  return rowOf('bore', 'bore', [inch(read, 10 + n), inch(null, 30 + n)], {
    key: `bore|p${n}|${stage}`,
    stage,
    point: `p${n}`,
    pointWords: `${axis}, ${level}`,
    unit: 'in',
    unitMark: 'in',
    limits: [],
  });
};

const computed = (quantity: string, words: string, text: string, more: Partial<SheetRow> = {}): SheetRow =>
  rowOf(quantity, words, [inch(text, 50), inch(null, 51)], { derived: true, unit: 'in', unitMark: 'in', ...more });

/** `more` takes the place of what the sheet has. */
export function boresOf(more: Partial<Sheet> = {}): Sheet {
  const plain = sheetOf([cellOf(null)]);
  const columns = ['1', '2'].map((label, n) => ({
    ...(plain.columns[0] as Sheet['columns'][number]),
    spot: (n + 1) as never,
    label,
    words: `cylinder ${label}`,
    group: '',
    side: null,
    cylinder: n + 1,
    row: 1,
    benchOrder: n + 1,
  }));
  const before = READ.map((_, n) => bore('before', n));
  const after = READ.map((_, n) => bore('after', n));
  const rows = [
    ...before,
    computed('bore-taper', 'taper', '0.0050'),
    rowOf('piston-size', 'piston', [inch(null, 60), inch(null, 61)], { unit: 'in', unitMark: 'in', limits: [] }),
    rowOf('bore-wanted', 'size wanted', [inch('3.9700', 62), inch(null, 63)], {
      unit: 'in',
      unitMark: 'in',
      limits: [],
    }),
    ...after,
    computed('bore-taper', 'taper', '0.0002', { key: 'bore-taper||after', stage: 'after' }),
  ];
  return {
    ...plain,
    table: { code: 'bores', words: 'Bores', spotKind: 'cylinder' },
    columns,
    rows,
    ...more,
  };
}
