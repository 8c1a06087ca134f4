/** The lines of a bill by casting, each with its working. */
import { useFormat } from '../../../client/use-shop.ts';
import { Tag } from '../../../kit/tag.tsx';
import { groupByCasting, type InvoiceLine } from '../books-shapes.ts';
import css from './line-table.module.css';

export function LineTable({
  lines,
  titles,
}: {
  lines: readonly InvoiceLine[];
  /** What each casting is, by its id. */
  titles: ReadonlyMap<number, string>;
}) {
  const format = useFormat();
  return (
    <table className={css.table}>
      <thead>
        <tr>
          <th scope="col">Operation</th>
          <th scope="col" className={css.number}>
            Units
          </th>
          <th scope="col" className={css.number}>
            Price
          </th>
          <th scope="col" className={css.number}>
            Amount
          </th>
        </tr>
      </thead>
      {groupByCasting(lines).map((group) => (
        <tbody key={group.castingId ?? 'ticket'}>
          <tr className={css.group}>
            <th scope="rowgroup" colSpan={4}>
              {group.tag === null ? (
                'The ticket as a whole'
              ) : (
                <>
                  <Tag number={group.tag} /> {titles.get(group.castingId ?? 0)}
                </>
              )}
            </th>
          </tr>
          {group.lines.map((line, index) => (
            <tr key={line.id ?? line.lineId ?? `${line.role}-${index}`}>
              <td>
                {line.words}
                {showsWorking(line) && <small>{line.working}</small>}
                {line.credited !== 0 && <small>credited {format.money(line.credited)}</small>}
              </td>
              <td className={css.number}>{line.quantityWords}</td>
              <td className={css.number}>{line.priceWords}</td>
              <td className={css.number}>{format.money(line.amount)}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}

/** The working says more than units and price beside it only where they do not stand there. */
const showsWorking = (line: InvoiceLine): boolean => line.working !== '' && line.working !== line.priceWords;
