/** Graduated rules: where something stands on a measure of time. Nothing else is drawn on a scale. */
import { classes } from './class-names.ts';
import css from './rules.module.css';

const WIDTH = 1330;
const LEFT = 38;
const RIGHT = 1292;
/** Height of one line of what hangs on the day, in pixels. */
const LINE = 98;

/** Minutes after midnight as `8:00` or `now 11:32`. */
const clock = (minute: number): string => `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;

export type Hanging = Readonly<{
  key: string | number;
  /** Minutes after midnight. */
  minute: number;
  content: React.ReactNode;
}>;

/** Where a minute stands on the rule, in hundredths of its width. */
export const placeOnDay = (minute: number, from: number, to: number): number =>
  ((LEFT + ((RIGHT - LEFT) * (Math.min(to, Math.max(from, minute)) - from)) / (to - from)) / WIDTH) * 100;

/** Lays things in as few lines as needed so that none covers another; gives the line of each, in the order given. */
export function spread(places: readonly number[], width: number): number[] {
  const ends: number[] = [];
  return places.map((place) => {
    const free = ends.findIndex((end) => end <= place);
    const line = free === -1 ? ends.length : free;
    ends[line] = place + width;
    return line;
  });
}

/** The day's hours as graduations; what is promised hangs at its minute by the wire hole. `now` is drawn in dye. */
export function DayRule({
  from,
  to,
  now,
  hanging,
}: {
  /** Minutes after midnight. */
  from: number;
  to: number;
  now: number;
  hanging: readonly Hanging[];
}) {
  const x = (minute: number) => (placeOnDay(minute, from, to) / 100) * WIDTH;
  const ticks = Array.from({ length: Math.floor((to - from) / 10) + 1 }, (_, i) => from + i * 10);
  const sorted = hanging.toSorted((a, b) => a.minute - b.minute);
  const lines = spread(
    sorted.map((item) => placeOnDay(item.minute, from, to)),
    11.5,
  );
  const rows = Math.max(1, ...lines.map((line) => line + 1));
  return (
    <div className={css.day}>
      <svg viewBox={`0 0 ${WIDTH} 58`} className={css.scale} aria-hidden="true">
        {ticks.map((minute) => (
          <Graduation key={minute} x={x(minute)} minute={minute} />
        ))}
        <path d={`M${LEFT} 34H${RIGHT}`} stroke="var(--ink)" strokeWidth="2" />
        {sorted.map((item) => (
          <path key={item.key} d={`M${x(item.minute)} 34V58`} stroke="var(--ink)" strokeWidth="1.6" />
        ))}
        {now >= from && now <= to && (
          <>
            <path d={`M${x(now)} 58V14`} stroke="var(--dye-ink)" strokeWidth="3" />
            <path d={`M${x(now) - 8} 14h16l-8 11z`} fill="var(--dye-ink)" />
            <text x={x(now) + 8} y="54" fontWeight="700" fill="var(--dye-ink)">
              now {clock(now)}
            </text>
          </>
        )}
      </svg>
      <ul className={css.hangs} style={{ blockSize: `${rows * LINE}px` }}>
        {sorted.map((item, position) => (
          <li
            key={item.key}
            style={{
              insetInlineStart: `${placeOnDay(item.minute, from, to)}%`,
              insetBlockStart: `${(lines[position] ?? 0) * LINE}px`,
            }}
          >
            {item.content}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Graduation({ x, minute }: { x: number; minute: number }) {
  const hour = minute % 60 === 0;
  const height = hour ? 20 : minute % 30 === 0 ? 13 : 8;
  return (
    <>
      <path d={`M${x} 34v-${height}`} stroke="var(--ink)" strokeWidth={hour ? 1.8 : 1} />
      {hour && (
        <text x={x} y="11" textAnchor="middle">
          {clock(minute)}
        </text>
      )}
    </>
  );
}

/** The states of an agreement as graduations; the present one is ink with a dye pointer, dye itself is no state. */
export function StageRule({ stages, at }: { stages: readonly string[]; at: string }) {
  const present = stages.indexOf(at);
  return (
    <ol className={css.stages} style={{ gridTemplateColumns: `repeat(${stages.length}, 1fr)` }}>
      {stages.map((stage, position) => (
        <li
          key={stage}
          className={classes(position < present && css.was, position === present && css.at)}
          aria-current={position === present ? 'step' : undefined}
        >
          <span>{stage}</span>
        </li>
      ))}
    </ol>
  );
}

/** A point on the rule of days: which column (0 based) and how far through that day, 0 to 1. */
export type DayPoint = Readonly<{ column: number; part: number }>;

/** Days as graduations, the first promise dashed, the promise and now in dye. */
export function PromiseRule({
  days,
  now,
  first,
  promise,
}: {
  /** Names of the open days shown, in order: `Mon 9`. At most eight. */
  days: readonly string[];
  now?: DayPoint | undefined;
  /** Only where the promise was moved. */
  first?: DayPoint | undefined;
  promise?: DayPoint | undefined;
}) {
  const step = 372 / Math.max(1, days.length);
  const x = (point: DayPoint) => 16 + step * (point.column + point.part);
  return (
    <svg viewBox="0 0 404 72" className={css.scale} role="img" aria-label="Days up to the promise">
      {days.map((name, column) => (
        <g key={name}>
          {Array.from({ length: 8 }, (_, i) => i).map((i) => (
            <path
              key={i}
              d={`M${16 + step * (column + i / 8)} 46v-${i === 0 ? 18 : i === 4 ? 11 : 7}`}
              stroke="var(--ink)"
              strokeWidth={i === 0 ? 1.8 : 1}
            />
          ))}
          <text x={16 + step * (column + 0.5)} y="63" textAnchor="middle">
            {name}
          </text>
        </g>
      ))}
      <path d="M16 46H388" stroke="var(--ink)" strokeWidth="2" />
      {first && (
        <>
          <path d={`M${x(first)} 46V12`} stroke="var(--edge)" strokeWidth="2" strokeDasharray="3 3" />
          <text x={x(first) - 4} y="22" textAnchor="end" fill="var(--ink-2)">
            first promise
          </text>
        </>
      )}
      {promise && (
        <>
          <path d={`M${x(promise)} 46V8`} stroke="var(--dye-ink)" strokeWidth="3" />
          <path d={`M${x(promise) - 9} 6h18l-9 13z`} fill="var(--dye-ink)" />
        </>
      )}
      {now && (
        <>
          <path d={`M${x(now)} 46V14`} stroke="var(--dye-ink)" strokeWidth="2" />
          <text x={x(now) + 6} y="22" fontWeight="700" fill="var(--dye-ink)">
            now
          </text>
        </>
      )}
    </svg>
  );
}
