/** The drawing of a casting with its condition balloons, from the same data as the screen. */
import { engineLabel } from '../../catalogue/compute/spot-labels.ts';
import type { ReadDb } from '../../db/query.ts';
import { drawCasting } from '../../drawing/draw-casting.ts';
import { DRAWN_VIEWS, type DrawnSpot, type DrawnType } from '../../drawing/drawn-type.ts';
import type { Drawing } from '../../drawing/shape.ts';
import type { PrintedCasting } from './castings.ts';

type Mark = Readonly<{ no: string; view: string; x_bp: number | null; y_bp: number | null }>;

/** The casting as it lies, with these marks; the view is that of the first mark. */
export function drawPrinted(db: ReadDb, casting: PrintedCasting, marks: readonly Mark[]): Drawing {
  const placed = marks.filter(({ no }) => no !== '');
  const view = DRAWN_VIEWS.find((name) => name === placed[0]?.view);
  const balloons = placed.flatMap(({ no, x_bp: x, y_bp: y, view: seenOn }) =>
    x === null || y === null || seenOn !== (placed[0]?.view ?? seenOn) ? [] : [{ label: no, x, y }],
  );
  return drawCasting(drawnType(db, casting), { view, balloons });
}

type Spot = Readonly<{ kind: string; label: string; cylinder: number | null }>;

/** The casting with a lettered ring at each place of a finding. */
export function drawFinding(db: ReadDb, casting: PrintedCasting, spots: readonly Spot[]): Drawing {
  const type = drawnType(db, casting);
  const plain = drawCasting(type);
  const balloons = spots.flatMap((spot, index) => {
    const label = engineLabel(spot, casting, type.numbering);
    const place = plain.spots.find((one) => one.kind === spot.kind && one.label === label);
    if (!place) return [];
    const at = { x: (place.x * FULL) / plain.width, y: (place.y * FULL) / plain.height };
    return [{ label: String.fromCharCode(65 + index), x: Math.round(at.x), y: Math.round(at.y) }];
  });
  return drawCasting(type, { balloons });
}

/** Marks are kept in ten thousandths of the picture. */
const FULL = 10_000;

function drawnType(db: ReadDb, casting: PrintedCasting): DrawnType & Readonly<{ numbering: string | null }> {
  const type = db.one(
    db.q
      .selectFrom('casting_type as t')
      .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .selectAll('t')
      .select('e.numbering')
      .where('t.id', '=', casting.casting_type_id),
  );
  const spots = db.all(
    db.q
      .selectFrom('spot')
      .select(['kind', 'label', 'bench_order as benchOrder', 'row', 'bank', 'cylinder', 'side'])
      .where('casting_type_id', '=', casting.casting_type_id)
      .orderBy('bench_order'),
  );
  return {
    kind: casting.kind,
    counts: {
      cylinders: type?.cylinders,
      mains: type?.mains,
      pins: type?.pins,
      rods: type?.rods,
      sleeves: type?.sleeves,
      camshafts: type?.camshafts,
      cam_journals: type?.cam_journals,
    },
    spots: spots.map(
      (spot): DrawnSpot => ({
        ...spot,
        label: engineLabel(spot, casting, type?.numbering ?? null),
        side: spot.side ?? 'none',
      }),
    ),
    waterJacket: type?.water_jacket === 1,
    numbering: type?.numbering ?? null,
  };
}
