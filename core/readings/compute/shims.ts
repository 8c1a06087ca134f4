/**
 * Which shims go under a spring: every stack the shop can make is tried, none is guessed.
 *
 * Order: smallest error; then fewer shims; then the smaller seat-load error; then the lower height (the higher load).
 * Stock sizes and the greatest stack are the shop's; that a stack has an end is published (TM 5-3810-289-34: at most 1/16 in).
 */

import { showExact } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { ShimStock } from './model.ts';

/** One stack, thinnest shim first; empty is no shim. */
export type Stack = Readonly<{ thicknesses: readonly number[]; sum: number }>;

export type ShimChoice = Readonly<{
  stack: Stack;
  height: number;
  /** Height less target. */
  error: number;
  /** Load at the height less load at the target; null when the spring is not known. */
  loadError: number | null;
}>;

export type ShimTask = Readonly<{
  /** On what the new shims will lie: see height.ts. */
  height: number;
  target: number;
  stock: ShimStock;
  /** Load at a height, null where it is not known. */
  loadAt?: (height: number) => number | null;
}>;

/** Every stack within the greatest thickness, each sum and number of shims once. */
export function listStacks(stock: ShimStock): Stack[] {
  const sizes = stock.thicknesses.map((it) => it.thickness).toSorted((a, b) => a - b);
  const stacks = new Map<string, Stack>();
  const grow = (from: number, thicknesses: readonly number[], sum: number): void => {
    const key = `${sum}/${thicknesses.length}`;
    if (!stacks.has(key)) stacks.set(key, { thicknesses, sum });
    for (const [index, size] of sizes.entries()) {
      if (index < from || size <= 0 || sum + size > stock.maxStack) continue;
      grow(index, [...thicknesses, size], sum + size);
    }
  };
  grow(0, [], 0);
  return [...stacks.values()];
}

/** All stacks with what they would make, best first. Never empty: no shim is a stack too. */
export function listShimChoices({ height, target, stock, loadAt }: ShimTask): ShimChoice[] {
  const wanted = loadAt?.(target) ?? null;
  const choices = listStacks(stock).map((stack): ShimChoice => {
    const made = height - stack.sum;
    const load = wanted === null ? null : (loadAt?.(made) ?? null);
    return {
      stack,
      height: made,
      error: made - target,
      loadError: wanted === null || load === null ? null : load - wanted,
    };
  });
  return choices.toSorted(better);
}

function better(a: ShimChoice, b: ShimChoice): number {
  return (
    Math.abs(a.error) - Math.abs(b.error) ||
    a.stack.thicknesses.length - b.stack.thicknesses.length ||
    sizeOf(a.loadError) - sizeOf(b.loadError) ||
    a.height - b.height
  );
}

/** Without a known load the comparison falls through to the height. */
const sizeOf = (loadError: number | null): number => (loadError === null ? 0 : Math.abs(loadError));

/** The stack to fit. */
export function chooseShims(task: ShimTask): ShimChoice {
  const [best] = listShimChoices(task);
  if (!best) throw new RangeError('chooseShims: no stack at all');
  return best;
}

/** `none`, `0.5`, `0.5 + 1.0`: as the shop writes its sizes. */
export function stackText(thicknesses: readonly number[], stock: ShimStock, between = ' + '): string {
  if (thicknesses.length === 0) return 'none';
  return thicknesses.map((thickness) => sizeText(thickness, stock)).join(between);
}

/** One size as the shop writes it. */
export const sizeText = (thickness: number, stock: ShimStock): string =>
  stock.thicknesses.find((it) => it.thickness === thickness)?.text ?? showExact(thickness, stock.unit, 1);

/**
 * Shims as written: `none`, `0.5+1.0`, `2 x 0.015`, each a size the shop has.
 *
 * @returns the thicknesses, thinnest first, or null when the text is something else.
 */
export function readStack(text: string, stocks: readonly ShimStock[]): readonly number[] | null {
  const clean = text.trim().toLowerCase();
  if (clean === 'none' || clean === '0') return [];
  for (const stock of stocks) {
    const parts = clean.split('+').map((part) => readPart(part.trim(), stock));
    if (parts.every((part) => part !== null)) return parts.flat().toSorted((a, b) => a - b);
  }
  return null;
}

function readPart(part: string, stock: ShimStock): number[] | null {
  const found = /^(?:(\d)\s*[x×]\s*)?0?([.,]?\d[\d.,]*)\s*(in|mm|")?$/u.exec(part);
  if (!found) return null;
  const mark: UnitCode | undefined = found[3] === undefined ? undefined : found[3] === 'mm' ? 'mm' : 'in';
  if (mark && mark !== stock.unit) return null;
  const plain = (size: string) =>
    size
      .replace(',', '.')
      .replace(/^0(?=\.)/, '')
      .replace(/\.?0+$/, '');
  const size = stock.thicknesses.find((it) => plain(it.text) === plain(found[2] ?? ''));
  return size ? Array.from({ length: Number(found[1] ?? 1) }, () => size.thickness) : null;
}

/** How many of each size to fetch, thinnest first. */
export function pickList(stacks: readonly (readonly number[])[], stock: ShimStock) {
  const counts = new Map<number, number>();
  for (const thickness of stacks.flat()) counts.set(thickness, (counts.get(thickness) ?? 0) + 1);
  return [...counts]
    .toSorted(([a], [b]) => a - b)
    .map(([thickness, count]) => ({ thickness, text: sizeText(thickness, stock), count }));
}
