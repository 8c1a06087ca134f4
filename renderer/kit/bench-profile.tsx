/** A bore cut open and drawn far too wide where it is worn: one axis at the left wall, the other at the right. */
import { useId } from 'react';
import { layBars } from './bars-scale.ts';
import css from './bench-profile.module.css';
import { classes } from './class-names.ts';

/** Readings along one axis, from the top of the bore down. */
export type ProfileAxis = Readonly<{
  words: string;
  points: readonly Readonly<{ words: string; value: number | null; text: string }>[];
}>;

export type ProfileProps = Readonly<{
  axes: readonly ProfileAxis[];
  low: number | null;
  high: number | null;
  /** The size it was made to: dashed. */
  target: number | null;
  /** The size it is to be made to; null while nothing is chosen. */
  wanted: number | null;
  perUnit: number;
  unit: string;
  label: string;
}>;

const [WIDTH, HEIGHT] = [640, 226];
const [TOP, BOTTOM] = [30, 186];
const MIDDLE = WIDTH / 2;
/** The wall moves between these distances from the middle. */
const [NARROW, FAR] = [142, 296];
/** Half the room of the words of a level on the centre line, by their letters. */
const LETTER = 3.9;

export function Profile({ axes, low, high, target, wanted, perUnit, unit, label }: ProfileProps) {
  const lining = useId();
  const values = axes.flatMap((axis) => axis.points.map(({ value }) => ({ value, low, high, target })));
  const scale = layBars(
    [...values, ...(wanted === null ? [] : [{ value: wanted, low: null, high: null, target: null }])],
    perUnit,
  );
  if (!scale) return null;
  const reach = (value: number): number => NARROW + (FAR - NARROW) * scale.place(value);
  const levels = axes[0]?.points.map((point) => point.words) ?? [];
  const beside = 8 + LETTER * Math.max(0, ...levels.map((level) => level.length));
  const lines = [
    { key: 'low', value: low, line: css.limit },
    { key: 'high', value: high, line: css.limit },
    { key: 'target', value: target, line: css.target },
    { key: 'wanted', value: wanted, line: css.wanted },
  ];
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={css.profile} role="img" aria-label={`${label}: ${spoken(axes)}`}>
      <defs>
        <pattern id={lining} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0v7" className={css.lining} />
        </pattern>
      </defs>
      <path d={`M${MIDDLE} ${TOP - 14}V${BOTTOM + 6}`} className={css.centre} />
      {axes.slice(0, 2).map((axis, n) => {
        const way = n === 0 ? -1 : 1;
        return (
          <g key={axis.words}>
            <Wall axis={axis} way={way} reach={reach} lining={lining} beside={beside} />
            {lines.map(
              ({ key, value, line }) =>
                value !== null && (
                  <path key={key} d={`M${MIDDLE + way * reach(value)} ${TOP - 8}V${BOTTOM + 8}`} className={line} />
                ),
            )}
            <text x={MIDDLE + way * beside} y={16} textAnchor={n === 0 ? 'end' : 'start'} className={css.axis}>
              {axis.words}
            </text>
            {scale.ticks.map(({ at, text }) => (
              <g key={text}>
                <path d={`M${MIDDLE + way * (NARROW + (FAR - NARROW) * at)} ${BOTTOM + 8}v8`} className={css.tick} />
                <text
                  x={MIDDLE + way * (NARROW + (FAR - NARROW) * at)}
                  y={BOTTOM + 32}
                  textAnchor="middle"
                  className={css.scale}
                >
                  {text}
                </text>
              </g>
            ))}
          </g>
        );
      })}
      {levels.map((level, n) => (
        <text key={level} x={MIDDLE} y={levelAt(n, levels.length) + 5} textAnchor="middle" className={css.level}>
          {level}
        </text>
      ))}
      <text x={MIDDLE} y={BOTTOM + 32} textAnchor="middle" className={css.scale}>
        {unit}, drawn wide
      </text>
    </svg>
  );
}

/** Levels stand at even distances: how deep they really lie is not known here. */
const levelAt = (n: number, count: number): number => TOP + (n * (BOTTOM - TOP)) / Math.max(1, count - 1);

const spoken = (axes: readonly ProfileAxis[]): string =>
  axes
    .map((axis) => `${axis.words} ${axis.points.map((at) => `${at.words} ${at.text || 'not measured'}`).join(', ')}`)
    .join('; ');

function Wall({
  axis,
  way,
  reach,
  lining,
  beside,
}: {
  axis: ProfileAxis;
  way: 1 | -1;
  reach: (value: number) => number;
  lining: string;
  /** Distance of the figures from the middle. */
  beside: number;
}) {
  const y = (n: number): number => levelAt(n, axis.points.length);
  const read = axis.points.flatMap((point, n) =>
    point.value === null ? [] : [{ ...point, x: MIDDLE + way * reach(point.value), y: y(n) }],
  );
  const [first, last] = [read[0], read.at(-1)];
  const edge = MIDDLE + way * (MIDDLE - 2);
  const line = read
    .map((at) => `L${at.x} ${at.y}`)
    .join('')
    .slice(1);
  return (
    <>
      {first && last && (
        <path
          d={`M${edge} ${TOP - 8}L${first.x} ${TOP - 8}L${line}L${last.x} ${BOTTOM + 8}L${edge} ${BOTTOM + 8}z`}
          fill={`url(#${lining})`}
        />
      )}
      {first && last && <path d={`M${first.x} ${TOP - 8}L${line}L${last.x} ${BOTTOM + 8}`} className={css.wall} />}
      {axis.points.map((point, n) => {
        const at = read.find((one) => one.words === point.words);
        return (
          <g key={point.words}>
            {at && <circle cx={at.x} cy={at.y} r="5" className={css.point} />}
            <text
              x={MIDDLE + way * beside}
              y={y(n) + 6}
              textAnchor={way === -1 ? 'end' : 'start'}
              className={classes(css.figure, !at && css.blank)}
            >
              {at ? at.text : 'not read'}
            </text>
          </g>
        );
      })}
    </>
  );
}
