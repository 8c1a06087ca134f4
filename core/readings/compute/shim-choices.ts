/** Every stack that could go under one spring, best first, with what each would make. */
import type { SpotId } from '../../kernel/ids.ts';
import { showValue, withMark } from '../../kernel/measure-show.ts';
import { type UnitCode, usualUnit } from '../../kernel/measure-units.ts';
import { STEPS_TOO_TALL, shortOrTall, stepsTooShort } from './advice.ts';
import { openBench } from './bench.ts';
import { shimTaskOf } from './formulas/springs.ts';
import type { Facts } from './model.ts';
import { showComputed } from './row-units.ts';
import type { ShimChoices } from './sheet-model.ts';
import { listShimChoices, stackText } from './shims.ts';

/** @returns null when the casting has no such valve. */
export function shimChoicesOf(facts: Facts, id: SpotId): ShimChoices | null {
  const bench = openBench(facts);
  const spot = facts.spots.find((it) => it.id === id && it.kind === 'valve');
  if (!spot) return null;
  const look = bench.look({ spot, stage: 'after' });
  const task = shimTaskOf(look);
  if (!task) return { label: spot.label, best: null, candidates: [], advice: [] };
  const limit = bench.limit('height-with-shim', 'after', spot.side)?.limit;
  const { stock, target, loadAt } = task;
  const unit: UnitCode = stock.unit;
  const force = usualUnit('force', unit === 'in' ? 'inch' : 'metric') ?? 'N';
  const choices = listShimChoices(task);
  const decimals = unit === 'in' ? 3 : 2;
  const loadText = (height: number) => {
    const load = loadAt?.(height) ?? null;
    return load === null ? null : withMark(showValue(load, force, force === 'lbf' ? 1 : 0), force);
  };
  const best = choices[0]?.stack.thicknesses ?? [];
  const reach = Math.min(
    limit?.low == null ? Number.POSITIVE_INFINITY : target - limit.low,
    limit?.high == null ? Number.POSITIVE_INFINITY : limit.high - target,
  );
  const which = Number.isFinite(reach) ? shortOrTall(task.height - target, stock.maxStack, reach) : null;
  return {
    label: spot.label,
    best: { text: stackText(best, stock), typed: stackText(best, stock, '+'), thicknesses: best },
    candidates: choices.map((choice) => ({
      text: stackText(choice.stack.thicknesses, stock),
      heightText: showComputed(choice.height, unit, decimals),
      errorText: showValue(choice.error, unit, decimals, { sign: true }),
      loadText: loadText(choice.height),
      within: isWithin(choice.height, limit?.low ?? null, limit?.high ?? null),
    })),
    advice: which === 'too short' ? stepsTooShort(facts.casting.material === 'aluminium') : which ? STEPS_TOO_TALL : [],
  };
}

/** A height without limits is within nothing. */
const isWithin = (height: number, low: number | null, high: number | null): boolean =>
  (low !== null || high !== null) && (low === null || height >= low) && (high === null || height <= high);
