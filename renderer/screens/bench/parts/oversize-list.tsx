/** The sizes of the list, one a row: piston, bore to, hone to, and what each rule says, with its mark. */
import type { OversizeChoice, OversizeRule, OversizeVerdict } from '#core/readings/compute/oversize-model.ts';
import { classes } from '../../../kit/class-names.ts';
import { Verdict } from '../../../kit/mark.tsx';
import { oversizeMark, sizeText } from '../oversize-view.ts';
import css from './oversize-list.module.css';

export function OversizeList({
  choice,
  chosen,
  onChoose,
  rule,
  onRule,
}: {
  choice: OversizeChoice;
  /** Code of the row chosen. */
  chosen: string | null;
  onChoose: (code: string) => void;
  /** The rule gone by; null while the two do not agree and nobody chose. */
  rule: OversizeRule | null;
  onRule: (rule: OversizeRule) => void;
}) {
  return (
    <div className={css.scroll}>
      {choice.missing.map((sentence) => (
        <p key={sentence} className={css.missing}>
          {sentence}
        </p>
      ))}
      {choice.candidates.length > 0 && (
        <table className={css.table}>
          <caption className={css.spoken}>Sizes by both rules, {choice.unit}</caption>
          <thead>
            <tr>
              <th scope="col">Over</th>
              <th scope="col">Piston</th>
              <th scope="col">Bore to</th>
              <th scope="col">Hone to finish</th>
              {choice.rules.map((one) => (
                <th key={one.rule} scope="col" className={css.ruleHead}>
                  <button
                    type="button"
                    className={classes(css.rule, one.rule === rule && css.on)}
                    aria-pressed={one.rule === rule}
                    onClick={() => onRule(one.rule)}
                  >
                    {one.words}
                    <small>{one.need ? `needs ${one.need.text}` : one.why}</small>
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {choice.candidates.map((one) => (
              <tr key={one.code} className={classes(one.code === chosen && css.chosen)}>
                <th scope="row">
                  <button type="button" aria-pressed={one.code === chosen} onClick={() => onChoose(one.code)}>
                    {one.over}
                  </button>
                </th>
                <td>
                  {one.piston?.text}
                  {!one.measured && <small>{one.pistonWords}</small>}
                </td>
                <td>{sizeText(one.boring)}</td>
                <td className={css.finish}>{sizeText(one.finished)}</td>
                <Said verdict={one.centred} chosen={rule === 'centred'} />
                <Said verdict={one.original} chosen={rule === 'original'} />
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className={css.figures}>
        {choice.figures.map((one) => (
          <span key={one.quantity}>
            {one.words} <b>{one.size?.text ?? 'not known'}</b>
            {one.size && <small> {one.source}</small>}
          </span>
        ))}
      </p>
    </div>
  );
}

function Said({ verdict, chosen }: { verdict: OversizeVerdict; chosen: boolean }) {
  return (
    <td className={classes(css.said, chosen && css.by)}>
      <Verdict mark={oversizeMark(verdict)} words={verdict.words} />
    </td>
  );
}
