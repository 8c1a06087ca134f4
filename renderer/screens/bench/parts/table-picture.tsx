/** A table looked at instead of read: one row as bars between its limits, or a bore cut open. */
import { useState } from 'react';
import { Bars } from '../../../kit/bench-bars.tsx';
import { Profile } from '../../../kit/bench-profile.tsx';
import type { ReadingGroup } from '../../../kit/bench-reading-table.tsx';
import { Button } from '../../../kit/button.tsx';
import { Verdict } from '../../../kit/mark.tsx';
import { useRoom } from '../hooks/use-room.ts';
import { barsOf, firstPicture, type Picture, picturesOf, profileAxes } from '../picture-view.ts';
import { columnKey, limitFor, markOf, type Spot } from '../reading-view.ts';
import { perUnit } from '../unit-sizes.ts';
import css from './table-picture.module.css';

export function TablePicture({
  spot,
  groups,
  onClose,
}: {
  spot: Spot;
  /** The columns on this page. */
  groups: readonly ReadingGroup[];
  onClose: () => void;
}) {
  const pictures = picturesOf(spot);
  const [chosen, setChosen] = useState<string | null>(null);
  const shown = pictures.find((one) => one.key === chosen) ?? firstPicture(spot, pictures);
  return (
    <section className={css.picture} aria-label="Picture">
      <div className={css.choices}>
        <Button onPress={onClose}>Back to readings</Button>
        {pictures.map((one) => (
          <Button key={one.key} pressed={one.key === shown?.key} onPress={() => setChosen(one.key)}>
            {one.words}
          </Button>
        ))}
      </div>
      {!shown && <p className={css.nothing}>Nothing to draw yet. Read something first.</p>}
      {shown?.kind === 'bars' && <Row spot={spot} row={shown.row} groups={groups} />}
      {shown?.kind === 'profile' && <Bore spot={spot} picture={shown} />}
    </section>
  );
}

/** Room of the picture beside the choices, on a wide tablet and on a small one. */
const ROOM = { wide: 1030, small: 806 } as const;

function Row({ spot, row, groups }: { spot: Spot; row: Picture['row']; groups: readonly ReadingGroup[] }) {
  const room = useRoom();
  if (row.unit === null) return null;
  const limits = row.limits.map((limit) => `${limit.side === 'any' ? '' : `${limit.side} `}${limit.text}`).join(', ');
  return (
    <figure className={css.figure}>
      <figcaption>
        <b>{row.words}</b> {limits.trim() ? `${limits} ${row.unitMark}` : 'no limit known'}{' '}
        <small>{row.limits[0]?.source}</small>
      </figcaption>
      <Bars
        bars={barsOf(spot, row, groups)}
        current={columnKey(spot.column)}
        perUnit={perUnit(row.unit)}
        unit={row.unitMark}
        label={row.words}
        width={room > 8 ? ROOM.wide : ROOM.small}
      />
    </figure>
  );
}

function Bore({ spot, picture }: { spot: Spot; picture: Picture }) {
  const { sheet, column } = spot;
  const { row } = picture;
  if (row.unit === null) return null;
  const n = sheet.columns.indexOf(column);
  const limit = limitFor(row, column.side);
  const wanted = sheet.rows.find((one) => one.quantity === `${row.quantity}-wanted`)?.cells[n];
  const computed = sheet.rows.filter((one) => one.derived && one.shown && one.stage === row.stage);
  return (
    <div className={css.bore}>
      <Profile
        axes={profileAxes(spot, row)}
        low={limit?.low ?? null}
        high={limit?.high ?? null}
        target={limit?.target ?? null}
        wanted={wanted?.value ?? null}
        perUnit={perUnit(row.unit)}
        unit={row.unitMark}
        label={`${column.words}, ${picture.words}`}
      />
      <dl className={css.facts} aria-label={`Figures of ${column.words}`}>
        <div>
          <dt>{column.words}</dt>
          <dd className={css.place}>{column.label}</dd>
        </div>
        {computed.map((one) => {
          const cell = one.cells[n];
          const mark = markOf(cell?.verdict ?? null);
          return cell && cell.text !== '' ? (
            <div key={one.key}>
              <dt>
                {one.words} {limitFor(one, column.side)?.text}
              </dt>
              <dd>
                {cell.text} {one.unitMark} {mark && <Verdict mark={mark} words={cell.word} />}
              </dd>
            </div>
          ) : null;
        })}
        {wanted?.text && (
          <div>
            <dt className={css.wanted}>size wanted</dt>
            <dd>
              {wanted.text} {row.unitMark}
            </dd>
          </div>
        )}
        {limit?.targetText && (
          <div>
            <dt className={css.made}>made to</dt>
            <dd>
              {limit.targetText} {row.unitMark}
            </dd>
          </div>
        )}
      </dl>
    </div>
  );
}
