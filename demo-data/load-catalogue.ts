/** The catalogue of the practice shop: what the program brings, and the shop's own castings, limits, places and gauges. */

import type { EntriesTyped } from '#core/catalogue/contract/entries.ts';
import { blockLimits } from './block-limits.ts';
import { engineLimits } from './engine-limits.ts';
import { gramsOf, lengthOf, priceOf } from './figures.ts';
import { readDemo } from './read-file.ts';
import { type Replay, send } from './replay.ts';
import type { CastingTypesFile, GaugesFile, PlacesFile, RatesFile } from './shapes.ts';

/** Engines, casting types, places, stock. */
export async function loadCastingTypes(replay: Replay): Promise<void> {
  const file = readDemo<CastingTypesFile>('casting-types');
  const rates = readDemo<RatesFile>('rates');
  await send(replay, 'operations/bring-in', {
    engineTypes: file.engineTypes.map((e) => ({
      ...e,
      bankLean: e.bankLean === null ? null : Number(e.bankLean) * 1_000_000,
      faceLean: e.faceLean === null ? null : Number(e.faceLean) * 1_000_000,
      bore: lengthOf(e.bore),
      stroke: lengthOf(e.stroke),
    })) as EntriesTyped['engineTypes'],
    castingTypes: file.castingTypes.map((t) => ({
      code: t.code,
      engineType: t.engineType,
      kind: t.castingKind,
      name: t.name,
      castingNumberPattern: t.castingNumber,
      material: t.material,
      camLayout: t.camLayout,
      fuel: t.fuel,
      private: t.private,
      counts: t.counts,
      guideStyle: t.guideStyle ?? 'insert',
      seatStyle: t.seatStyle ?? 'insert',
      usualWeight: gramsOf(t.weightKg),
      heavyDiesel: t.heavyDiesel,
      waterJacket: t.waterJacket ?? true,
      spots: t.spots.map((s) => ({ ...s, side: s.side === 'none' ? null : s.side })),
      arrival: t.arrivalItems.map((a) => ({
        ...a,
        words: a.words.replaceAll('-', ' '),
        inside: INSIDE.includes(a.words),
      })),
    })) as EntriesTyped['castingTypes'],
    places: readDemo<PlacesFile>('places').places.map((p) => ({
      code: p.code,
      words: p.words,
      purpose: p.purpose,
      maxWeight: p.maxKg === null ? null : gramsOf(p.maxKg),
      onlyMetal: p.onlyMetal,
    })) as EntriesTyped['places'],
    stock: [
      ...rates.parts.map((p) => ({
        code: p.code,
        words: p.words,
        listPrice: priceOf(p.price),
        thickness: null,
        thicknessTyped: null,
        shimUnit: null,
      })),
      ...(['in', 'mm'] as const).flatMap((unit) =>
        rates.shims[unit].map((size) => ({
          code: `shim-${size.replace('.', '-')}-${unit}`,
          words: `spring shim ${size} ${unit}`,
          listPrice: priceOf(unit === 'in' ? '0.90' : '0.80'),
          thickness: lengthOf({ value: size, unit }),
          thicknessTyped: size,
          shimUnit: unit,
        })),
      ),
    ] as EntriesTyped['stock'],
  });
  await loadLimits(replay, file);
}

/** Counted only when the casting is taken apart. */
const INSIDE = ['valves', 'springs', 'retainers', 'locks', 'stem-seals', 'spring-seats', 'inner-springs'];

async function loadLimits(replay: Replay, file: CastingTypesFile): Promise<void> {
  const { types } = await send(replay, 'operations/list-casting-types', {});
  for (const type of file.castingTypes) {
    const castingType = types.find((t) => t.code === type.code)?.id ?? null;
    for (const limit of [...type.limits, ...springLimits(type), ...engineLimits(type), ...blockLimits(type)]) {
      await send(replay, 'limits/add-limit', {
        ...limit,
        for: 'casting_type',
        castingType,
        sourceTag: type.limitSource.tag,
        sourceWords: type.limitSource.words,
        from: type.limitSource.from as never,
      } as never);
    }
  }
}

/** The spring of a type, as targets: heights and loads, solid height, lift, gap at the seal. */
function springLimits(type: CastingTypesFile['castingTypes'][number]) {
  const spring = type.springs;
  if (!spring) return [];
  const unit = spring.installedHeight.unit;
  const aim = (quantity: string, target: string, in_: string) => ({
    quantity,
    stage: 'before' as const,
    side: 'any' as const,
    low: null,
    high: null,
    target,
    unit: in_,
  });
  const [first, second] = spring.loads;
  return [
    ...(first ? [aim('spring-load-1', first.force, spring.forceUnit), aim('spring-height-1', first.at, unit)] : []),
    ...(second ? [aim('spring-load-2', second.force, spring.forceUnit), aim('spring-height-2', second.at, unit)] : []),
    aim('spring-free-length', spring.freeLength, unit),
    aim('solid-height', spring.solidHeight.value, spring.solidHeight.unit),
    aim('valve-lift', spring.lift.value, spring.lift.unit),
    aim('seal-gap', spring.sealGapStatic.value, spring.sealGapStatic.unit),
  ];
}

/** The shop's gauges with their next calibration. */
export async function loadGauges(replay: Replay): Promise<void> {
  for (const gauge of readDemo<GaugesFile>('gauges').gauges) {
    const { tool } = await send(replay, 'tools/add-tool', {
      name: gauge.name,
      kind: gauge.kind,
      workCentre: gauge.workCentre,
      unit: gauge.unit as never,
      rangeLow: gauge.rangeLow,
      rangeHigh: gauge.rangeHigh,
      resolution: gauge.resolution,
      uncertainty: gauge.uncertainty,
    });
    if (gauge.nextDue)
      await send(replay, 'tools/record-check', {
        tool,
        on: '2026-01-05',
        result: 'as certificate',
        nextDue: gauge.nextDue,
      });
  }
}
