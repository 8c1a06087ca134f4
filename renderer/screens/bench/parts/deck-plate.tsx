/**
 * The face of the casting with what was read on it: height bands under the casting's own lines, straightedge lines dashed, a
 * touchable box a point. Words are never mirrored.
 */
import { useMemo } from 'react';
import { drawCasting } from '#core/drawing/draw-casting.ts';
import type { DrawnType, DrawnView } from '#core/drawing/drawn-type.ts';
import { FRONT, frontAbove, platesOf } from '#core/drawing/plates.ts';
import { contourLine, type Frame, levelsBetween, reliefBands } from '#core/drawing/relief.ts';
import type { Drawing, Shape } from '#core/drawing/shape.ts';
import { DrawnShape } from '../../../kit/casting-drawing.tsx';
import { classes } from '../../../kit/class-names.ts';
import type { Seen } from '../deck-view.ts';
import css from './deck-plate.module.css';

/** A box on the face. */
export type PlateBox = Readonly<{
  /** Row of the sheet that it types into. */
  key: string;
  /** Read aloud: `column 3, row 2, −52, touches the lower plane`. */
  label: string;
  text: string;
  seen: Seen;
  touch: 'upper' | 'lower' | null;
  /** Kept on this tablet and not yet sent. */
  waiting: boolean;
}>;

/** A line where the straightedge lies. */
export type PlateLine = Readonly<{ key: string; from: Seen; to: Seen }>;

export type Relief = Readonly<{
  columns: number;
  /** Row by row as seen, above the lower plane; empty: none to draw. */
  heights: readonly (number | null)[];
  /** One step of the dial in the unit of the heights. */
  step: number;
  /** `tenths of a thou` */
  stepWords: string;
}>;

export type DeckPlateProps = Readonly<{
  type: DrawnType;
  view: DrawnView;
  /** Which of the plates of the drawing, from the top: the decks of a V block. */
  plate: number;
  turned: boolean;
  label: string;
  /** The side that lies above, said where the drawing does not name it: `valley side`. */
  upper: string;
  boxes: readonly PlateBox[];
  lines: readonly PlateLine[];
  relief: Relief | null;
  /** Boxes stand closer than the points of a grid. */
  small: boolean;
  /** No room for figures: a dot a point, and a box where the hand is. */
  dots: boolean;
  current: string | null;
  onChoose: (key: string) => void;
}>;

/** Points keep off the edge of the plate as the dial does. */
const EDGE = { x: 0.075, y: 0.14 } as const;

export function DeckPlate(props: DeckPlateProps) {
  const { type, view, turned, boxes, lines, relief } = props;
  const drawing = useMemo(() => drawCasting(type, { view, turned }), [type, view, turned]);
  const { body, grid, shown, alone, unnamed } = useMemo(
    () => layOut(drawing, props.plate, turned),
    [drawing, props.plate, turned],
  );
  const at = ({ x, y }: Seen) => ({ x: grid.left + grid.width * x, y: grid.top + grid.height * y });
  return (
    <div className={css.room}>
      <div className={css.plate} style={{ '--ratio': shown.width / shown.height } as React.CSSProperties}>
        <svg
          viewBox={`${shown.left} ${shown.top} ${shown.width} ${shown.height}`}
          className={css.svg}
          role="img"
          aria-label={`${props.label}, ${drawing.caption}`}
        >
          <Face drawing={drawing} body={body} shown={shown} alone={alone}>
            {relief && relief.heights.length > 0 && <Bands relief={relief} frame={grid} />}
          </Face>
          {!alone && <Shapes shapes={frontAbove(body, turned)} />}
          {unnamed && (
            <DrawnShape
              shape={{ ...UPPER, x: body.left + body.width / 2, y: body.top - 150, words: props.upper.toUpperCase() }}
            />
          )}
          {lines.map((line) => {
            const [from, to] = [at(line.from), at(line.to)];
            return <path key={line.key} d={`M${from.x} ${from.y}L${to.x} ${to.y}`} className={css.edge} />;
          })}
        </svg>
        <fieldset
          className={classes(css.boxes, props.dots && css.dots)}
          style={roomFor(boxes, grid, shown, relief !== null)}
          aria-label="Places on the face"
        >
          {boxes.map((box) => (
            <button
              key={box.key}
              type="button"
              aria-label={box.label}
              aria-current={box.key === props.current ? 'true' : undefined}
              className={classes(
                css.box,
                props.small && css.small,
                box.touch && css[box.touch],
                box.key === props.current && css.at,
                box.text === '' && css.blank,
                box.waiting && css.waiting,
              )}
              style={percentOf(at(box.seen), shown)}
              onClick={() => props.onChoose(box.key)}
            >
              <span>{box.text}</span>
            </button>
          ))}
        </fieldset>
      </div>
    </div>
  );
}

/** How large a box may be so that it leaves its neighbours free, and the relief to be seen: shares of the drawing. */
function roomFor(boxes: readonly PlateBox[], grid: Frame, shown: Frame, relief: boolean): React.CSSProperties {
  const share = relief ? 0.62 : 0.9;
  const between = (places: readonly number[], size: number) => size / Math.max(new Set(places).size - 1, 1);
  const wide =
    between(
      boxes.map((box) => box.seen.x),
      grid.width,
    ) / shown.width;
  const high =
    between(
      boxes.map((box) => box.seen.y),
      grid.height,
    ) / shown.height;
  return { '--wide': 100 * share * wide, '--high': 100 * share * high } as React.CSSProperties;
}

/**
 * The plate in question, the frame of its outermost points, and the part of the drawing that is shown. `alone`: there is no
 * other plate; `unnamed`: nothing says which side lies above.
 */
function layOut(drawing: Drawing, plate: number, turned: boolean) {
  const plates = turned ? platesOf(drawing).reverse() : platesOf(drawing);
  const body = plates[plate] ?? plates[0] ?? { left: 0, top: 0, width: drawing.width, height: drawing.height };
  const grid = {
    left: body.left + body.width * EDGE.x,
    top: body.top + body.height * EDGE.y,
    width: body.width * (1 - 2 * EDGE.x),
    height: body.height * (1 - 2 * EDGE.y),
  };
  const alone = plates.length <= 1;
  const above = drawing.shapes.some((shape) => shape.kind === 'text' && shape.words !== FRONT && isAbove(shape, body));
  return { body, grid, shown: cropOf(drawing, body, alone), alone, unnamed: !alone || !above };
}

/** Room for the words above the plate, and for those below it where there are any. */
const [ABOVE, BELOW, BARE] = [500, 520, 140] as const;

/** Only the deck in question with the words around it; beside another bank FRONT alone is said, above it. */
function cropOf(drawing: Drawing, { top, height }: Frame, alone: boolean): Frame {
  const words = drawing.shapes.filter((shape) => shape.kind === 'text').map(yOf);
  const foot = top + height;
  const below = alone && words.some((y) => y > foot && y < foot + BELOW) ? BELOW : BARE;
  return { left: 0, top: top - ABOVE, width: drawing.width, height: height + ABOVE + below };
}

/** The words above a plate. */
const UPPER = { kind: 'text', role: 'label', size: 340, anchor: 'middle' } as const;

/** The casting itself: its outline, what lies on it, then its other lines drawn quietly. */
function Face({
  drawing,
  body,
  shown,
  alone,
  children,
}: {
  drawing: Drawing;
  body: Frame;
  shown: Frame;
  alone: boolean;
  children: React.ReactNode;
}) {
  // Labels on the plate give way to figures; beside another bank the words around it may be that one's.
  const isKept = (shape: Shape) => alone || shape.role !== 'label' || isOn(shape, body);
  const shapes = drawing.shapes.filter(
    (shape) => isIn(shape, shown) && isKept(shape) && !(shape.kind === 'text' && isOn(shape, body)),
  );
  const ground = (shape: Shape) => shape.role === 'body';
  return (
    <>
      <Shapes shapes={shapes.filter(ground)} />
      {children}
      <g className={css.quiet}>
        <Shapes shapes={shapes.filter((shape) => !ground(shape) && shape.kind !== 'text')} />
      </g>
      <Shapes shapes={shapes.filter((shape) => shape.kind === 'text')} />
    </>
  );
}

const Shapes = ({ shapes }: { shapes: readonly Shape[] }) =>
  shapes.map((shape, position) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a shape is its place in the drawing's order.
    <DrawnShape key={position} shape={shape} />
  ));

const yOf = (shape: Shape): number => {
  if (shape.kind === 'line') return shape.y1;
  return shape.kind === 'path' ? Number(/^M-?\d+ (-?\d+)/.exec(shape.d)?.[1] ?? 0) : shape.y;
};
const isIn = (shape: Shape, { top, height }: Frame): boolean => yOf(shape) >= top && yOf(shape) <= top + height;
const isAbove = (shape: Shape, { top }: Frame): boolean => yOf(shape) < top && yOf(shape) > top - ABOVE;
const isOn = (shape: Shape, { top, height }: Frame): boolean => yOf(shape) > top && yOf(shape) < top + height;

/** Names of the bands' looks from low to high: ink for hollows, dye for what stands high, as a blued plate marks it. */
const LOOKS = ['low3', 'low2', 'low1', 'mid', 'high1', 'high2'] as const;

/** The look of band `n` of `count`, spread over all looks. */
const lookOf = (n: number, count: number): string =>
  css[LOOKS[count === 1 ? 3 : Math.round((n * (LOOKS.length - 1)) / (count - 1))] ?? 'mid'] ?? '';

/** Levels in whole steps of the dial from the lower plane up. */
const levelsOf = ({ heights, step }: Relief): number[] =>
  levelsBetween(0, Math.max(0, ...heights.filter((height) => height !== null)), step);

function Bands({ relief, frame }: { relief: Relief; frame: Frame }) {
  const { bands, contours } = useMemo(() => {
    const levels = levelsOf(relief);
    return {
      bands: reliefBands(relief, levels, frame),
      contours: levels.slice(1, -1).map((level) => ({ level, d: contourLine(relief, level, frame) })),
    };
  }, [relief, frame]);
  return (
    <g className={css.relief}>
      {bands.map((band, n) => (
        <path key={band.from} d={band.d} className={lookOf(n, bands.length)} />
      ))}
      {contours.map(({ level, d }) => (
        <path key={level} d={d} className={css.contour} />
      ))}
    </g>
  );
}

/** What the bands mean: one graduated strip, heights above the lower plane in steps of the dial, the highest on top. */
export function ReliefScale({ relief }: { relief: Relief }) {
  const levels = levelsOf(relief);
  const count = levels.length - 1;
  return (
    <div className={css.scale}>
      <p className={css.bands}>
        {levels.slice(1).map((level, n) => (
          <span key={level} className={css.band}>
            <i className={lookOf(n, count)} />
            <b>{Math.round(level / relief.step)}</b>
          </span>
        ))}
        <b className={css.zero}>0</b>
      </p>
      <small>{relief.stepWords} above the lowest</small>
    </div>
  );
}

const percentOf = ({ x, y }: Seen, shown: Frame): React.CSSProperties => ({
  left: `${((x - shown.left) / shown.width) * 100}%`,
  top: `${((y - shown.top) / shown.height) * 100}%`,
});
