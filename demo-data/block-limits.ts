/** Blocks of the practice shop as limits and targets: what bores are bored by, mains and liners judged by. */
import type { CastingTypesFile, Size } from './shapes.ts';

type CastingType = CastingTypesFile['castingTypes'][number];
type Ends = Readonly<{ low?: string; high?: string; target?: string }>;

const line = (quantity: string, stage: 'before' | 'after', unit: string, { low, high, target }: Ends) => ({
  quantity,
  stage,
  side: 'any' as const,
  low: low ?? null,
  high: high ?? null,
  target: target ?? null,
  unit,
});

const aim = (quantity: string, stage: 'before' | 'after', size: Size | null | undefined) =>
  size ? [line(quantity, stage, size.unit, { target: size.value })] : [];

/** Empty for everything but a block. */
export function blockLimits(type: CastingType) {
  if (type.castingKind !== 'block') return [];
  const { cylinders, mains, wetLiner } = type;
  return [
    ...(cylinders
      ? [
          ...aim('bore', 'before', type.bore),
          ...aim('piston-clearance', 'after', cylinders.pistonClearance),
          ...aim('hone-allowance', 'before', cylinders.honeAllowance),
          ...aim('clean-up', 'before', cylinders.cleanUp),
          ...aim('bore-greatest', 'before', cylinders.greatestBore),
        ]
      : []),
    ...aim('main-shell', 'after', mains?.shell),
    ...aim('main-journal', 'after', mains?.journalStandard),
    ...(wetLiner ? linerLimits(wetLiner, type.bore?.unit ?? 'mm') : []),
  ];
}

function linerLimits({ counterbore, flange, protrusion, spread }: NonNullable<CastingType['wetLiner']>, unit: string) {
  const [low, high] = protrusion;
  return [
    line('counterbore-ledge', 'before', unit, { target: counterbore }),
    line('liner-flange', 'before', unit, { target: flange }),
    line('liner-protrusion', 'after', unit, { low, high }),
    line('liner-spread', 'after', unit, { high: spread }),
  ];
}
