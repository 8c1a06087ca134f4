/** The day as a rule: only promises with a time of their own hang on it; the others stand in a list. */
import { DayRule } from '../../../kit/rules.tsx';
import { Empty, Sheet } from '../../../kit/sheet.tsx';
import { Tag } from '../../../kit/tag.tsx';
import type { Home } from '../counter-home.ts';
import css from './day-of-promises.module.css';
import { addressOf, RowEnd } from './home-rows.tsx';

/** Half an hour before the counter opens to an hour after it closes; eight to six on a closed day. */
export const hoursShown = (open: Home['open']): { from: number; to: number } =>
  open ? { from: Math.max(0, open.from - 30), to: Math.min(1440, open.until + 60) } : { from: 450, to: 1080 };

export function DayOfPromises({ home }: { home: Home }) {
  const { from, to } = hoursShown(home.open);
  const hanging = home.promisedToday.rows.filter((row) => row.ownTime);
  if (home.promisedToday.count === 0) {
    return (
      <Sheet title="Promised today">
        <Empty>Nothing is promised today.</Empty>
      </Sheet>
    );
  }
  if (hanging.length === 0) return null;
  return (
    <Sheet title="Promised today" note="at a time of their own">
      <DayRule
        from={from}
        to={to}
        now={home.minute}
        hanging={hanging.map((row) => ({
          key: `${row.ticketNumber}-${row.minute}`,
          minute: row.minute,
          content: (
            <a href={addressOf(row)} data-row="" className={css.hang}>
              {row.tags[0] ? (
                <Tag number={row.tags[0].tag} metal={row.tags[0].metal.class} size="m" />
              ) : (
                <Tag number={row.ticketNumber ?? ''} blank size="m" />
              )}
              <b>{row.customer}</b>
              <RowEnd row={row} words={row.words || row.right} />
              <span>{row.leftWords}</span>
            </a>
          ),
        }))}
      />
    </Sheet>
  );
}
