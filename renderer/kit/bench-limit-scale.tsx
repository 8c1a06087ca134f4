/** A reading between its limits, as on a micrometer sleeve. Measured things only. */
import { useId } from 'react';
import css from './bench-limit-scale.module.css';
import { layScale, type Scale, type ScaleInput } from './bench-scale.ts';
import { classes } from './class-names.ts';

export type LimitScaleProps = ScaleInput &
  Readonly<{
    /** Colour of the pointer: the verdict of the value. Undefined while there is none. */
    verdict?: 'pass' | 'fail' | 'close' | 'blank' | undefined;
    /** What the scale says in words, for a screen reader. */
    words: string;
  }>;

const WIDTH = 738;
const [LEFT, RIGHT] = [24, 714];
const BASE = 62;

export function LimitScale(props: LimitScaleProps) {
  const scale = layScale(props);
  const lining = useId();
  if (!scale) return null;
  const x = (value: number): number => LEFT + (RIGHT - LEFT) * scale.place(value);
  const { low, high, target, value } = props;
  return (
    <svg viewBox={`0 0 ${WIDTH} 92`} className={css.scale} role="img" aria-label={props.words}>
      <defs>
        <pattern id={lining} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0v7" className={css.lining} />
        </pattern>
      </defs>
      {low !== null && <rect x={LEFT} y="36" width={x(low) - LEFT} height="26" fill={`url(#${lining})`} />}
      {high !== null && <rect x={x(high)} y="36" width={RIGHT - x(high)} height="26" fill={`url(#${lining})`} />}
      <Graduations scale={scale} perUnit={props.perUnit} x={x} />
      <path d={`M${LEFT} ${BASE}H${RIGHT}`} className={css.base} />
      {[low, high].map(
        (limit, n) =>
          limit !== null && <path key={n === 0 ? 'low' : 'high'} d={`M${x(limit)} 70V8`} className={css.limit} />,
      )}
      {target !== null && <path d={`M${x(target)} ${BASE}V30`} className={css.target} />}
      {value !== null && <Pointer x={x(value)} verdict={props.verdict} />}
    </svg>
  );
}

function Graduations({ scale, perUnit, x }: { scale: Scale; perUnit: number; x: (value: number) => number }) {
  // A label is about 60 px wide: leave out every other where they would touch.
  const labels = scale.ticks.filter((tick) => tick.size === 'label');
  const every = Math.ceil((labels.length * 74) / (RIGHT - LEFT));
  return (
    <>
      {scale.ticks.map((tick) => (
        <path key={tick.value} d={`M${x(tick.value)} ${BASE}v${HEIGHT[tick.size]}`} className={css[tick.size]} />
      ))}
      {labels
        .filter((_, n) => n % every === 0)
        .map((tick) => (
          <text key={tick.value} x={x(tick.value)} y="86" textAnchor="middle" className={css.words}>
            {(tick.value / perUnit).toFixed(scale.decimals)}
          </text>
        ))}
    </>
  );
}

const HEIGHT = { label: -18, mid: -12, small: -7 } as const;

function Pointer({ x, verdict }: { x: number; verdict: LimitScaleProps['verdict'] }) {
  return (
    <g className={classes(css.pointer, css[verdict ?? 'blank'])} style={{ transform: `translateX(${x}px)` }}>
      <path d="M0 60l-9-20h18z" className={css.head} />
      <path d="M0 42V6" className={css.shaft} />
    </g>
  );
}
