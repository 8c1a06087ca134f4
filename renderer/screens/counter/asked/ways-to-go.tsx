/** The ways to go with the same lines at the same height, so that they compare; both stops stand beside them. */
import { useId, useState } from 'react';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { classes } from '../../../kit/class-names.ts';
import { Sheet } from '../../../kit/sheet.tsx';
import type { Question, Way } from './question.ts';
import css from './ways-to-go.module.css';

const isStop = (way: Way): boolean => way.kind === 'stop_casting' || way.kind === 'stop_all';

/** Ways may be chosen for the answer while they are open. */
export function WaysToGo({
  question,
  chosen,
  onChoose,
}: {
  question: Question;
  chosen: Way | undefined;
  onChoose: (id: number) => void;
}) {
  const format = useFormat();
  const group = useId();
  const [working, setWorking] = useState<'stop_casting' | 'stop_all' | null>(null);
  return (
    <Sheet title="Ways to go" end="prices before tax" scroll>
      <div className={css.ways} role="radiogroup" aria-label="Ways to go">
        {question.options.map((way) => (
          <article key={way.letter} className={classes(way === chosen && css.chosen, isStop(way) && css.stop)}>
            <label className={css.head}>
              <input
                type="radio"
                name={group}
                checked={way === chosen}
                disabled={way.id === null || way.answer !== null}
                onChange={() => way.id !== null && onChoose(way.id)}
              />
              <b>{way.letter}</b>
              <span>{way.words}</span>
            </label>
            <ul>
              {way.lines.map((line) => (
                <li key={`${line.words}-${line.working}`}>
                  {line.words}
                  {line.quantityWords !== '1' && `, ${line.quantityWords}`}
                </li>
              ))}
              {isStop(way) && <li>Charged for what is done and ordered only</li>}
            </ul>
            <Sums way={way} totalBefore={question.totalBefore} />
            <div className={css.tail}>
              {way.ifDeclinedWords}
              {way.answer && <p className={css.answer}>answered: {way.answer}</p>}
            </div>
            {isStop(way) && (
              <Button
                pressed={working === way.kind}
                onPress={() =>
                  setWorking(working === way.kind ? null : way.kind === 'stop_all' ? 'stop_all' : 'stop_casting')
                }
              >
                How it is made
              </Button>
            )}
          </article>
        ))}
      </div>
      {working && <StopWorking stop={working === 'stop_all' ? question.stopAll : question.stopCasting} />}
      <div className={css.sum}>
        <span>
          {question.ceiling ? 'Ceiling' : 'Authorised'} <b>{format.money(question.authorised)}</b>
          {question.authorisedTaxIn && ' tax in'}
        </span>
        {chosen && chosen.pastCeiling !== null && chosen.pastCeiling > 0 && (
          <span className={css.past}>
            with {chosen.letter} past by {format.money(chosen.pastCeiling)}
          </span>
        )}
        <span>
          Asked <b>{format.at(question.askedAt)}</b>
        </span>
      </div>
    </Sheet>
  );
}

function Sums({ way, totalBefore }: { way: Way; totalBefore: number }) {
  const format = useFormat();
  const rows: readonly (readonly [string, string])[] = isStop(way)
    ? [
        ['To pay', format.money(way.newTotal)],
        ['Of', format.money(totalBefore)],
        ['With tax', format.money(way.newTotalWithTax)],
      ]
    : [
        ['Extra', format.money(way.extra)],
        ['New total', format.money(way.newTotal)],
        ['Days more', way.daysMore === 0 ? 'none' : String(way.daysMore)],
      ];
  return (
    <dl>
      {rows.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** How "to pay if stopped" is made of what is done and ordered so far. */
function StopWorking({ stop }: { stop: Question['stopAll'] }) {
  const format = useFormat();
  return (
    <table className={css.working}>
      <caption>To pay if stopped</caption>
      <tbody>
        {stop.lines.map((line) => (
          <tr key={`${line.tag}-${line.words}-${line.working}`}>
            <td>{line.tag}</td>
            <td>{line.words}</td>
            <td>{line.working}</td>
            <td className={css.figure}>{format.money(line.amount)}</td>
          </tr>
        ))}
        {stop.bill.derived.map((line) => (
          <tr key={`${line.role}-${line.words}`}>
            <td />
            <td>{line.words}</td>
            <td>{line.working}</td>
            <td className={css.figure}>{format.money(line.amount)}</td>
          </tr>
        ))}
        <tr>
          <td />
          <td colSpan={2}>
            <b>Before tax</b>
          </td>
          <td className={css.figure}>
            <b>{format.money(stop.bill.figures.beforeTax)}</b>
          </td>
        </tr>
      </tbody>
    </table>
  );
}
