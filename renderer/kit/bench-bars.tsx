/** One row of readings as bars side by side between their limit lines: measured things only. */
import { useId } from 'react';
import { type BarFigure, type BarsScale, layBars } from './bars-scale.ts';
import css from './bench-bars.module.css';
import { classes } from './class-names.ts';
import type { Mark } from './mark.tsx';

export type Bar = BarFigure &
  Readonly<{
    key: string;
    label: string;
    /** The figure as it stands in the table; empty when not measured. */
    text: string;
    mark: Mark | null;
    /** `too tall`; shown where it does not pass. */
    words: string;
    /** Another side or bank begins here. */
    starts: boolean;
  }>;

export type BarsProps = Readonly<{
  bars: readonly Bar[];
  /** Key of the bar the hand is at. */
  current: string;
  perUnit: number;
  unit: string;
  /** What the picture shows, for a screen reader. */
  label: string;
  /** Room for it, in px. */
  width: number;
}>;

const LEFT = 62;
const [TOP, BASE] = [26, 176];
const HEIGHT = 226;

export function Bars({ bars, current, perUnit, unit, label, width }: BarsProps) {
  const lining = useId();
  const scale = layBars(bars, perUnit);
  if (!scale) return null;
  const wide = (width - LEFT - 4) / Math.max(1, bars.length);
  const y = (value: number): number => BASE - (BASE - TOP) * scale.place(value);
  return (
    <svg viewBox={`0 0 ${width} ${HEIGHT}`} className={css.bars} role="img" aria-label={`${label}: ${spoken(bars)}`}>
      <defs>
        <pattern id={lining} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0v7" className={css.lining} />
        </pattern>
      </defs>
      <Ticks scale={scale} unit={unit} />
      {bars.map((bar, n) => (
        <g key={bar.key} transform={`translate(${LEFT + n * wide} 0)`}>
          {bar.key === current && <rect y="0" width={wide} height={HEIGHT} className={css.at} />}
          <Limits bar={bar} wide={wide} y={y} lining={lining} />
          <Figure bar={bar} wide={wide} y={y} cut={bar.value !== null && scale.beyond(bar.value)} />
          {bar.starts && n > 0 && <path d={`M0 0V${HEIGHT}`} className={css.side} />}
        </g>
      ))}
      <path d={`M${LEFT} ${BASE}H${width - 4}`} className={css.base} />
    </svg>
  );
}

/** Every bar in words, from left to right. */
const spoken = (bars: readonly Bar[]): string =>
  bars
    .map((bar) => [bar.label, bar.text || 'not measured', bar.text && bar.words].filter(Boolean).join(' '))
    .join(', ');

function Ticks({ scale, unit }: { scale: BarsScale; unit: string }) {
  return (
    <>
      <text x="4" y="16" className={css.unit}>
        {unit}
      </text>
      {scale.ticks.map(({ at, text }) => {
        const y = BASE - (BASE - TOP) * at;
        return (
          <g key={text}>
            <path d={`M${LEFT - 8} ${y}H${LEFT}`} className={css.tick} />
            <text x={LEFT - 11} y={y + 5} textAnchor="end" className={css.scale}>
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** Section-lined outside, a strong line at each limit, the target dashed. */
function Limits({ bar, wide, y, lining }: { bar: Bar; wide: number; y: (value: number) => number; lining: string }) {
  const { low, high, target } = bar;
  return (
    <>
      {high !== null && (
        <rect y={TOP - 6} width={wide} height={Math.max(0, y(high) - TOP + 6)} fill={`url(#${lining})`} />
      )}
      {low !== null && <rect y={y(low)} width={wide} height={Math.max(0, BASE - y(low))} fill={`url(#${lining})`} />}
      {high !== null && <path d={`M0 ${y(high)}H${wide}`} className={css.limit} />}
      {low !== null && <path d={`M0 ${y(low)}H${wide}`} className={css.limit} />}
      {target !== null && <path d={`M0 ${y(target)}H${wide}`} className={css.target} />}
    </>
  );
}

const COLOUR: Readonly<Record<Mark, 'pass' | 'fail' | 'close' | 'blank'>> = {
  pass: 'pass',
  over: 'fail',
  under: 'fail',
  found: 'fail',
  close: 'close',
  'not-measured': 'blank',
  'no-limit': 'blank',
};

/** `cut`: the figure lies beyond the picture; its bar is drawn broken. */
function Figure({ bar, wide, y, cut }: { bar: Bar; wide: number; y: (value: number) => number; cut: boolean }) {
  const middle = wide / 2;
  const label = (
    <text x={middle} y={BASE + 20} textAnchor="middle" className={css.label}>
      {bar.label}
    </text>
  );
  if (bar.value === null) {
    return (
      <>
        <path
          d={`M${middle - 6} ${BASE - 4}V${TOP + 40}M${middle + 6} ${BASE - 4}V${TOP + 40}`}
          className={css.missing}
        />
        {label}
        <text x={middle} y={BASE + 40} textAnchor="middle" className={classes(css.word, css.blank)}>
          {wide > 90 ? 'not measured' : 'not read'}
        </text>
      </>
    );
  }
  const colour = css[bar.mark ? COLOUR[bar.mark] : 'blank'];
  const top = y(bar.value);
  const half = Math.min(17, wide * 0.24);
  return (
    <>
      <rect
        x={middle - half}
        y={top}
        width={2 * half}
        height={Math.max(0, BASE - top)}
        className={classes(css.bar, colour)}
      />
      {cut && (
        <path
          d={`M${middle - half - 5} ${(top + BASE) / 2 + 6}l${2 * half + 10}-8v8l${-2 * half - 10} 8z`}
          className={css.cut}
        />
      )}
      <g transform={`translate(${middle} ${top})`} className={colour}>
        <Head mark={bar.mark ?? 'no-limit'} />
      </g>
      <text x={middle} y={Math.max(13, top - 13)} textAnchor="middle" className={classes(css.value, colour)}>
        {bar.text}
      </text>
      {label}
      {bar.mark !== 'pass' && (
        <text x={middle} y={BASE + 40} textAnchor="middle" className={classes(css.word, colour)}>
          {bar.words}
        </text>
      )}
    </>
  );
}

/** The sign of the limit mark on top of the bar: a disc within, a triangle that points away outside, a diamond on the line. */
function Head({ mark }: { mark: Mark }) {
  switch (mark) {
    case 'pass':
      return <circle r="7" fill="currentColor" />;
    case 'over':
    case 'found':
      return <path d="M-9 5L0-10 9 5z" fill="currentColor" />;
    case 'under':
      return <path d="M-9-5L0 10 9-5z" fill="currentColor" />;
    case 'close':
      return <path d="M0-9l9 9-9 9-9-9z" className={css.open} />;
    default:
      return <circle r="6.5" className={css.open} />;
  }
}
