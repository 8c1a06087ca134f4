/** The lines of a bill by casting, each with its working. */
import { useFormat } from '../../../client/use-shop.ts';
import { type Metal, Tag } from '../../../kit/tag.tsx';
import { type Bill, groupByCasting, type InvoiceLine } from '../books-shapes.ts';
import css from './line-table.module.css';

/** What each casting is, by its id. */
export type CastingTitles = ReadonlyMap<number, Readonly<{ words: string; metal: Metal }>>;

export function LineTable({
  lines,
  castings,
  figures,
}: {
  lines: readonly InvoiceLine[];
  castings: CastingTitles;
  /** The sums of labour and parts, as the host made them. */
  figures: Bill['figures'];
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
                  <Tag number={group.tag} metal={castings.get(group.castingId ?? 0)?.metal} />{' '}
                  {castings.get(group.castingId ?? 0)?.words}
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
      <tfoot>
        <tr>
          <th scope="row" colSpan={3}>
            Labour
          </th>
          <td className={css.number}>{format.money(figures.labour)}</td>
        </tr>
        {figures.parts !== 0 && (
          <tr>
            <th scope="row" colSpan={3}>
              Parts
            </th>
            <td className={css.number}>{format.money(figures.parts)}</td>
          </tr>
        )}
      </tfoot>
    </table>
  );
}

/** The working says more than units and price beside it only where they do not stand there. */
const showsWorking = (line: InvoiceLine): boolean => line.working !== '' && line.working !== line.priceWords;
