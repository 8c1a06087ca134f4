/** Rows of the counter's first page. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { askedAddress, customerAddress, releaseAddress, ticketAddress } from '../../../kit/addresses.ts';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Asked, Hold, Late } from '../../../kit/state.tsx';
import { Tag } from '../../../kit/tag.tsx';
import css from './home-rows.module.css';

export type HomeRow = OutputOf<App['home/get-counter']>['ringBack']['rows'][number];

/** Where a row leads, undefined when it leads nowhere yet. */
export function addressOf(row: HomeRow): string | undefined {
  if (row.target.screen === 'customer' && row.target.customerId !== null) return customerAddress(row.target.customerId);
  if (row.ticketNumber === null) return undefined;
  if (row.target.screen === 'added-work' && row.target.focus !== null) {
    return askedAddress(row.ticketNumber, row.target.focus);
  }
  return row.target.screen === 'release' ? releaseAddress(row.ticketNumber) : ticketAddress(row.ticketNumber);
}

export function HomeRows<R extends HomeRow>({
  label,
  rows,
  end,
}: {
  label: string;
  rows: readonly R[];
  /** First line at the end, in place of the row's own words, which then follow small. */
  end?: (row: R) => string;
}) {
  return (
    <Rows label={label}>
      {rows.map((row) => (
        <Row
          key={`${row.ticketNumber}-${row.target.screen}-${row.target.focus}-${row.words}`}
          href={addressOf(row)}
          lead={<RowTags row={row} />}
          title={
            <>
              <b>{row.customer}</b>
              {row.person && `, ${row.person}`}
            </>
          }
          note={
            <>
              {row.words} {row.phone && <span className={css.phone}>{row.phone}</span>}
            </>
          }
          end={<RowEnd row={row} words={end ? end(row) : row.right} />}
          endNote={end && row.right !== end(row) ? row.right : undefined}
        />
      ))}
    </Rows>
  );
}

function RowTags({ row }: { row: HomeRow }) {
  const first = row.tags[0];
  if (!first) return null;
  const more = row.tags.length - 1 + row.moreTags;
  return (
    <span className={css.tags}>
      <Tag number={first.tag} metal={first.metal.class} />
      {more > 0 && <small>and {more} more</small>}
    </span>
  );
}

/** The words at the end in the tone the host gave: hold in paint, close in its colour, ask underlined. */
export function RowEnd({ row, words }: { row: HomeRow; words: string }) {
  if (words === '') return null;
  if (words === 'tell them') return <Asked>{words}</Asked>;
  if (row.tone === 'hold') return <Hold>{words}</Hold>;
  if (row.tone === 'close') return <Late>{words}</Late>;
  return <span className={row.tone === 'good' ? css.good : undefined}>{words}</span>;
}
