/**
 * The tables of the bench: which quantities stand below each other for one kind of casting. Data only.
 *
 * A row that is not shown at first can be switched on for one casting. Order follows the hand: what is read first stands
 * first. Common practice, no source.
 */
import type { SpotKind } from './quantities.ts';

export type Stage = 'before' | 'after';

export type BenchRow = Readonly<{ quantity: string; point: string | null; stage: Stage; shown: boolean }>;

export type BenchTable = Readonly<{
  code: string;
  words: string;
  castingKind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  /** The places across; null for a list of figures read once. */
  spotKind: SpotKind | null;
  /** Code of the operation whose screen opens with this table; null when it has none of its own. */
  operation: string | null;
  rows: readonly BenchRow[];
}>;

const at =
  (stage: Stage, shown = true) =>
  (quantity: string, point: string | null = null): BenchRow => ({ quantity, point, stage, shown });
const before = at('before');
const after = at('after');
const hiddenBefore = at('before', false);
const hiddenAfter = at('after', false);

/** Every bench table of the first catalogue. */
export const BENCH_TABLES: readonly BenchTable[] = [
  {
    code: 'heights',
    words: 'Installed height',
    castingKind: 'head',
    spotKind: 'valve',
    operation: 'installed-height',
    rows: [
      before('installed-height'),
      after('shims-fitted'),
      after('height-with-shim'),
      after('seat-load'),
      after('open-load'),
      after('coil-bind-clearance'),
      after('seal-clearance'),
      hiddenAfter('spring-strength'),
      hiddenAfter('greatest-lift'),
      hiddenBefore('seal-gap'),
      hiddenBefore('cup-thickness'),
      hiddenBefore('old-shim'),
      hiddenAfter('installed-height'),
    ],
  },
  {
    code: 'springs',
    words: 'Springs',
    castingKind: 'head',
    spotKind: 'valve',
    operation: 'spring-test',
    rows: [
      after('spring-load-1'),
      after('spring-load-2'),
      after('spring-strength'),
      after('spring-rate'),
      after('spring-free-length'),
      after('spring-squareness'),
      hiddenAfter('spring-height-1'),
      hiddenAfter('spring-height-2'),
      hiddenAfter('solid-height'),
    ],
  },
  {
    code: 'guides',
    words: 'Guides and stems',
    castingKind: 'head',
    spotKind: 'valve',
    operation: 'guide-check',
    rows: [
      after('guide-id', 'top'),
      after('guide-id', 'mid'),
      after('guide-id', 'bot'),
      hiddenAfter('guide-id', 'top-y'),
      hiddenAfter('guide-id', 'mid-y'),
      hiddenAfter('guide-id', 'bot-y'),
      after('stem'),
      after('guide-clearance'),
      hiddenAfter('bell-mouth'),
      hiddenBefore('guide-clearance'),
    ],
  },
  {
    code: 'seats',
    words: 'Seats and valves',
    castingKind: 'head',
    spotKind: 'valve',
    operation: 'seat-cut',
    rows: [
      after('seat-angle'),
      after('seat-width'),
      after('seat-runout'),
      after('margin'),
      after('face-runout'),
      after('tip-height'),
      after('tip-removed'),
      hiddenAfter('recession'),
    ],
  },
  {
    code: 'vacuum',
    words: 'Vacuum test',
    castingKind: 'head',
    spotKind: 'valve',
    operation: 'vacuum-test',
    rows: [after('vacuum-start'), after('vacuum-end'), after('vacuum-hold')],
  },
  {
    code: 'surface',
    words: 'Surfacing',
    castingKind: 'head',
    spotKind: null,
    operation: 'surface-head',
    rows: [
      before('thickness'),
      before('deck-flatness'),
      before('cam-line'),
      after('thickness'),
      after('stock-removed'),
      after('thickness-left'),
      after('deck-flatness'),
      after('finish-ra'),
      hiddenAfter('face-removed'),
    ],
  },
  {
    code: 'chambers',
    words: 'Chambers',
    castingKind: 'head',
    spotKind: 'chamber',
    operation: 'chamber-cc',
    rows: [after('chamber-volume')],
  },
  {
    code: 'cam-line',
    words: 'Cam line',
    castingKind: 'head',
    spotKind: null,
    operation: 'cam-bore-check',
    rows: [after('cam-line')],
  },
  {
    code: 'cam-bores',
    words: 'Cam bores',
    castingKind: 'head',
    spotKind: 'cam_journal',
    operation: null,
    rows: [after('cam-bore-size')],
  },
  {
    code: 'bores',
    words: 'Bores',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: 'measure-block',
    rows: [
      ...(['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'] as const).map((point) => before('bore', point)),
      before('bore-taper'),
      before('bore-out-of-round'),
      before('bore-wear'),
      before('piston-size'),
      before('bore-wanted'),
      ...(['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'] as const).map((point) => after('bore', point)),
      after('bore-taper'),
      after('bore-out-of-round'),
      after('piston-clearance'),
    ],
  },
  {
    code: 'mains',
    words: 'Main bores',
    castingKind: 'block',
    spotKind: 'main',
    operation: 'main-line-check',
    rows: (['0', '+60', '-60'] as const).flatMap((point) => [
      before('main-size', point),
      hiddenAfter('main-size', point),
    ]),
  },
  {
    code: 'decks',
    words: 'Deck height',
    castingKind: 'block',
    spotKind: 'deck_corner',
    operation: 'deck-block',
    rows: [before('deck-height'), after('deck-height')],
  },
];

/** A bench table by its code; undefined when there is none. */
export const findBenchTable = (code: string): BenchTable | undefined => BENCH_TABLES.find((it) => it.code === code);
