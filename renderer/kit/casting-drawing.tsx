/** A casting's drawing on screen: dumb about castings, it draws shapes, and says which place was touched. */
import { type KeyboardEvent, type MouseEvent, memo, useMemo, useRef, useState } from 'react';
import { turnPlace } from '#core/drawing/balloons.ts';
import { type DrawOptions, drawCasting } from '#core/drawing/draw-casting.ts';
import type { DrawnType } from '#core/drawing/drawn-type.ts';
import { DASH, type Drawing, LINE_STYLES, LINE_WIDTHS, type Shape, type SpotPlace } from '#core/drawing/shape.ts';
import css from './casting-drawing.module.css';
import { classes } from './class-names.ts';
import { nextRow } from './rows.tsx';

/** A place on the drawing as it lies unturned, ten thousandths of its width and height; `spot` if one was meant. */
export type TouchedPlace = Readonly<{ x: number; y: number; spot: SpotPlace | null }>;

export type CastingDrawingProps = Readonly<{
  type: DrawnType;
  options?: DrawOptions;
  /** Said to a screen reader, for example `Head 30918`. */
  label: string;
  /** Key of the spot the hand is at: drawn in dye wash. */
  current?: string | undefined;
  /** Without it the drawing is only looked at. A touch gives the exact place, the keyboard the middle of a spot. */
  onPlace?: ((place: TouchedPlace) => void) | undefined;
  /** Under the drawing, after the sentence that says how it lies. */
  caption?: React.ReactNode;
  /** Words of the casting's own position, no caption at all. */
  bare?: boolean;
}>;

const FULL = 10_000;

export function CastingDrawing({
  type,
  options = {},
  label,
  current,
  onPlace,
  caption,
  bare = false,
}: CastingDrawingProps) {
  const { view, turned, balloons, frontWords } = options;
  const drawing = useMemo(
    () => drawCasting(type, { view, turned, balloons, frontWords }),
    [type, view, turned, balloons, frontWords],
  );
  return (
    <figure className={css.figure}>
      <div className={css.plate}>
        <Plate drawing={drawing} label={`${label}, ${drawing.caption}`} current={current} />
        {onPlace && <Touch drawing={drawing} turned={turned === true} onPlace={onPlace} />}
      </div>
      {!bare && (
        <figcaption className={css.caption}>
          {drawing.caption}
          {caption && <>. {caption}</>}
        </figcaption>
      )}
    </figure>
  );
}

const Plate = memo(function Plate({
  drawing,
  label,
  current,
}: {
  drawing: Drawing;
  label: string;
  current: string | undefined;
}) {
  return (
    <svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} className={css.svg} role="img" aria-label={label}>
      {drawing.shapes.map((shape, position) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a shape is its place in the drawing's order.
        <DrawnShape key={position} shape={shape} current={current} />
      ))}
    </svg>
  );
});

/** One shape in the drawing's own lines, inside an `svg` of the plate's units. */
export function DrawnShape({ shape, current }: { shape: Shape; current?: string | undefined }) {
  const at = shape.spot !== undefined && shape.spot === current && !shape.fine && shape.kind !== 'text';
  if (shape.kind === 'text') {
    return (
      <text
        x={shape.x}
        y={shape.y}
        fontSize={shape.size}
        textAnchor={shape.anchor}
        className={classes(css.words, shape.role === 'mark' && css.onPaint, shape.bold && css.bold)}
      >
        {shape.words}
      </text>
    );
  }
  const style = LINE_STYLES[shape.role];
  const line = {
    className: classes(css.line, css[fillOf(shape)], at && css.at),
    strokeWidth: LINE_WIDTHS.px[shape.fine ? 0 : style.weight],
    strokeDasharray: shape.dashed ? DASH.join(' ') : undefined,
  };
  if (shape.kind === 'circle') return <circle cx={shape.x} cy={shape.y} r={shape.r} {...line} />;
  if (shape.kind === 'path') return <path d={shape.d} {...line} />;
  return <line x1={shape.x1} y1={shape.y1} x2={shape.x2} y2={shape.y2} {...line} />;
}

function fillOf(shape: Shape): 'solid' | 'none' | 'sheet' | 'paint' {
  if (shape.solid) return 'solid';
  if (shape.fine || shape.kind === 'line' || (shape.kind === 'path' && !shape.closed)) return 'none';
  return LINE_STYLES[shape.role].fill;
}

/** Buttons over the drawing: one for the whole plate, one a spot. One stop for Tab, arrows go from spot to spot. */
function Touch({
  drawing,
  turned,
  onPlace,
}: {
  drawing: Drawing;
  turned: boolean;
  onPlace: (place: TouchedPlace) => void;
}) {
  const area = useRef<HTMLFieldSetElement>(null);
  const [stop, setStop] = useState(0);

  function touch(event: MouseEvent<HTMLButtonElement>, spot: SpotPlace | null) {
    onPlace(placeOf(event, area.current?.getBoundingClientRect(), drawing, spot, turned));
  }
  function move(event: KeyboardEvent<HTMLFieldSetElement>) {
    const key = { ArrowRight: 'ArrowDown', ArrowLeft: 'ArrowUp' }[event.key] ?? event.key;
    const next = nextRow(key, stop, drawing.spots.length);
    if (next === null) return;
    event.preventDefault();
    setStop(next);
    area.current?.querySelectorAll<HTMLButtonElement>('[data-spot]')[next]?.focus();
  }

  return (
    <fieldset ref={area} className={css.touch} onKeyDown={move} aria-label="Places on the drawing">
      <button
        type="button"
        className={css.whole}
        aria-label="Mark the middle of the drawing"
        tabIndex={drawing.spots.length === 0 ? 0 : -1}
        onClick={(event) => touch(event, null)}
      />
      {drawing.spots.map((spot, n) => (
        <button
          key={spot.key}
          type="button"
          data-spot=""
          className={css.spot}
          style={boxOf(spot, drawing)}
          aria-label={`${spot.kind.replace('_', ' ')} ${spot.label}`}
          tabIndex={n === stop ? 0 : -1}
          onFocus={() => setStop(n)}
          onClick={(event) => touch(event, spot)}
        />
      ))}
    </fieldset>
  );
}

const percent = (part: number, whole: number): string => `${(100 * part) / whole}%`;
const boxOf = (spot: SpotPlace, { width, height }: Drawing) => ({
  left: percent(spot.x - spot.r, width),
  top: percent(spot.y - spot.r, height),
  width: percent(2 * spot.r, width),
  height: percent(2 * spot.r, height),
});

/** The place a press meant: under the finger, or the spot's middle when it came from the keyboard (`detail` 0). */
export function placeOf(
  press: Readonly<{ detail: number; clientX: number; clientY: number }>,
  area: Readonly<{ left: number; top: number; width: number; height: number }> | undefined,
  drawing: Readonly<{ width: number; height: number }>,
  spot: SpotPlace | null,
  turned: boolean,
): TouchedPlace {
  const middle = spot ?? { x: drawing.width / 2, y: drawing.height / 2 };
  const keyboard = press.detail === 0 || !area || area.width === 0 || area.height === 0;
  const x = keyboard ? (FULL * middle.x) / drawing.width : (FULL * (press.clientX - area.left)) / area.width;
  const y = keyboard ? (FULL * middle.y) / drawing.height : (FULL * (press.clientY - area.top)) / area.height;
  const whole = (value: number): number => Math.min(FULL, Math.max(0, Math.round(value)));
  return { ...turnPlace(whole(x), whole(y), turned), spot };
}
