import { describe, expect, it } from 'vitest';
import { showExact } from '#core/kernel/measure-show.ts';
import type { UnitCode } from '#core/kernel/measure-units.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { placesOf } from '#tests/kit/worn-block.ts';
import manuals from '#tests/reference/technical-manual-limits.json' with { type: 'json' };

type Row = (typeof manuals.cases)[number] & Readonly<{ low?: string; high?: string; flags?: readonly string[] }>;
/** Readings that make a quantity come to a figure, at one place. */
type Make = (value: number, spot: Spot, unit: UnitCode) => Reading[];

const SPOTS = {
  cylinder: placesOf('cylinder', 1, 1),
  main: placesOf('main', 1, 11),
  journal: placesOf('journal', 1, 21),
  rod: placesOf('rod', 1, 31),
  cam_journal: placesOf('cam_journal', 1, 41),
  lifter: placesOf('lifter', 1, 51),
};
const ALL = Object.values(SPOTS).flat();

const read =
  (quantity: string, point: string | null = null, extra = 0): Make =>
  (value, spot, unit) => [
    readingOf(quantity, showExact(value + extra, unit, unit === 'in' ? 4 : 3), unit, { spot: spot.id, point }),
  ];
/** Four inches, 101.6 mm: whole in both units, and room for a difference. */
const BASE = measureOf('4', 'in');
const both =
  (...makes: readonly Make[]): Make =>
  (...given) =>
    makes.flatMap((make) => make(...given));
const fixed =
  (quantity: string, value: number, point: string | null = null): Make =>
  (_, spot, unit) =>
    read(quantity, point)(value, spot, unit);
const allAt = (quantity: string, points: readonly string[], one: string): Make =>
  both(...points.map((point) => (point === one ? read(quantity, point, BASE) : fixed(quantity, BASE, point))));

const SIX = ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'];
const FOUR = ['front-x', 'front-y', 'rear-x', 'rear-y'];

type Way = Readonly<{ quantity: string; spot: Spot | null; point?: string; make: Make }>;
const at = (kind: keyof typeof SPOTS) => SPOTS[kind][0] as Spot;
const plain = (quantity: string, kind: keyof typeof SPOTS, point?: string): Way => ({
  quantity,
  spot: at(kind),
  ...(point !== undefined && { point }),
  make: read(quantity, point ?? null),
});

/** Which of our quantities a row of a manual is about; undefined: not of a block. */
function wayOf(part: string, quantity: string): Way | undefined {
  const said = `${part}: ${quantity}`;
  return WAYS.find(([pattern]) => pattern.test(said))?.[1];
}

const WAYS: readonly (readonly [RegExp, Way])[] = [
  [
    /^(crank |main |rod |main and rod )journals?.*: taper and out-of-round/,
    { quantity: 'journal-taper', spot: at('journal'), make: allAt('journal-place', FOUR, 'rear-x') },
  ],
  [
    /^(crank |main |rod |main and rod )?(main )?journals?[^:]*: taper$/,
    { quantity: 'journal-taper', spot: at('journal'), make: allAt('journal-place', FOUR, 'rear-x') },
  ],
  [
    /^(main |rod |main and rod )journals?[^:]*: out-of-round/,
    { quantity: 'journal-out-of-round', spot: at('journal'), make: allAt('journal-place', FOUR, 'rear-x') },
  ],
  [/^(crank |crank main |main |rod )journal[^:]*: diameter/, plain('journal-size', 'journal')],
  [
    /^main bearing[^:]*: (oil )?clearance/,
    {
      quantity: 'bearing-clearance',
      spot: at('main'),
      make: both(read('main-size', '0', BASE), fixed('main-shell', BASE / 4), fixed('main-journal', BASE / 2)),
    },
  ],
  [
    /^rod bearing[^:]*: (oil |running )?clearance/,
    {
      quantity: 'rod-clearance',
      spot: at('rod'),
      make: both(read('big-end-place', '0', BASE), fixed('rod-shell', BASE / 4), fixed('pin-journal', BASE / 2)),
    },
  ],
  [
    /^cam (bearing|journal)[^:]*: (oil )?clearance/,
    {
      quantity: 'cam-clearance',
      spot: at('cam_journal'),
      make: both(read('cam-bearing-sizes', null, BASE), fixed('cam-journal-size', BASE)),
    },
  ],
  [/^cam journal: diameter/, plain('cam-journal-size', 'cam_journal')],
  [
    /^(cam bush|cam bushing|camshaft bushing)(?! bore)[^:]*: inside diameter/,
    plain('cam-bearing-sizes', 'cam_journal'),
  ],
  [/^(cam bore|camshaft bushing bore)[^:]*: (inside )?diameter/, plain('cam-tunnel-size', 'cam_journal')],
  [
    /^crankshaft: end play/,
    {
      quantity: 'end-play',
      spot: null,
      make: (value, _, unit) => read('end-play')(value, { id: null } as never, unit),
    },
  ],
  [
    /^camshaft: end (play|clearance|thrust)/,
    {
      quantity: 'cam-end-play',
      spot: null,
      make: (value, _, unit) => read('cam-end-play')(value, { id: null } as never, unit),
    },
  ],
  [/^main bearing bore[^:]*: /, plain('main-size', 'main', '0')],
  [/^main bearing (half|shell): thickness/, plain('main-shell', 'main')],
  [/^crankpin bore of rod: /, plain('big-end-place', 'rod', '0')],
  [/^tappet bore: /, plain('lifter-bore-size', 'lifter')],
  [
    /^(cylinder|cylinder liner|used block bore|block bore): (taper|taper or out-of-round)$/,
    { quantity: 'bore-taper', spot: at('cylinder'), make: allAt('bore', SIX, 'bot-x') },
  ],
  [
    /^(cylinder|liner bore near top): out-of-round/,
    { quantity: 'bore-out-of-round', spot: at('cylinder'), make: allAt('bore', SIX, 'bot-x') },
  ],
  [
    /^cylinder: wear limit/,
    {
      quantity: 'bore-wear',
      spot: at('cylinder'),
      make: both(allAt('bore', SIX, 'top-x'), (_, __, unit) => [
        readingOf('bore-present', showExact(BASE, unit, 4), unit),
      ]),
    },
  ],
  [
    /^(cylinder|cylinder liner|service liner|block bore)[^:]*: (bore|bore diameter|diameter|inside diameter|bore, normal)/,
    plain('bore', 'cylinder', 'top-x'),
  ],
  [
    /^piston( skirt)?: clearance/,
    {
      quantity: 'piston-clearance',
      spot: at('cylinder'),
      make: both(read('bore', 'mid-x', BASE), fixed('piston-size', BASE)),
    },
  ],
  [/^piston( skirt)?[^:]*: diameter/, plain('piston-size', 'cylinder')],
  [/^(top|compression) ring: end gap/, plain('ring-gap-top', 'cylinder')],
  [/^second and oil ring: end gap/, plain('ring-gap-second', 'cylinder')],
  [/^(top|compression) ring: (side clearance|fit)/, plain('ring-side-top', 'cylinder')],
  [/^(second|intermediate) ring: side clearance/, plain('ring-side-second', 'cylinder')],
  [
    /^(liner counterbore|liner counterbore, new): depth$|^liner counterbore: depth, wear/,
    plain('counterbore-ledge', 'cylinder'),
  ],
  [
    /^liner counterbore: depth variation/,
    {
      quantity: 'ledge-level',
      spot: at('cylinder'),
      make: allAt('ledge-place', ['front', 'rear', 'left', 'right'], 'left'),
    },
  ],
  [/^cylinder liner: protrusion/, plain('liner-protrusion', 'cylinder')],
];

const rows = (manuals.cases as readonly Row[]).flatMap((row) => {
  const way = wayOf(row.part, row.quantity);
  // Slips of the manuals: a lower limit above the upper one is refused when it is typed.
  return way && !(row.flags ?? []).includes('low-above-high') ? [{ ...row, way }] : [];
});

/** One tenth of a thou, or a micrometre, outside. */
const stepOf = (unit: UnitCode) => measureOf(unit === 'in' ? '0.0001' : '0.001', unit);

function verdictOf({ way, unit, low, high }: (typeof rows)[number], value: number): string {
  const { quantity, spot, point = null, make } = way;
  const limits = [limitOf(quantity, unit as UnitCode, { low: low ?? null, high: high ?? null })];
  const readings = make(value, spot ?? (ALL[0] as Spot), unit as UnitCode);
  const bench = openBench(factsOf({ spots: ALL, limits, readings }));
  return bench.verdict(quantity, 'after', null, bench.known(quantity, spot, point, 'after')).name;
}

describe('limits of blocks as printed', () => {
  it('there are many of them', () => {
    expect(rows.length).toBeGreaterThan(80);
    expect(new Set(rows.map((row) => row.way.quantity)).size).toBeGreaterThan(20);
  });

  it.each(rows)('$id $part, $quantity: at the limit passes, a step outside fails ($manual, $place)', (row) => {
    const unit = row.unit as UnitCode;
    for (const [text, sign] of [
      [row.low, -1],
      [row.high, 1],
    ] as const) {
      if (text === undefined) continue;
      const limit = measureOf(text, unit);
      const outside = limit + sign * stepOf(unit);

      expect(verdictOf(row, limit)).toBe('pass');
      // Below nothing there is no roundness or taper.
      if (outside >= 0) expect(verdictOf(row, outside)).toBe('fail');
    }
  });
});
