/** What the survey says: out of flat with its verdict, how much to cut, what to do first. Every figure comes from the host. */
import { useState } from 'react';
import type { UnitCode } from '#core/kernel/measure-units.ts';
import type {
  CutPlan,
  CutWay,
  DeckSurvey,
  JudgedFigure,
  StageSurvey,
} from '#core/readings/compute/deck-survey-model.ts';
import { classes } from '../../../kit/class-names.ts';
import { Verdict } from '../../../kit/mark.tsx';
import { Notice } from '../../../kit/notice.tsx';
import { limitWords } from '../deck-view.ts';
import { colourOf, markOf } from '../reading-view.ts';
import css from './deck-result.module.css';

type Props = Readonly<{ survey: DeckSurvey; stage: StageSurvey }>;

/** The figure of the whole face, then the rules for lines and spans that are known and measured. */
export function OutOfFlat({ survey, stage }: Props) {
  const { flatness } = stage;
  // A shape without a figure is a guess.
  const pattern = flatness.text === '' ? null : stage.pattern;
  const other = stage.stage === 'after' ? survey.before.flatness : null;
  return (
    <section className={css.out} aria-label="Out of flat">
      <p className={css.name}>
        {flatness.words}
        <small>{basisWords(stage)}</small>
      </p>
      <p className={css.big}>
        <b className={css[colourOf(flatness.verdict)]}>
          {flatness.text || '–'}
          {flatness.text && <small> {survey.unitMark}</small>}
        </b>
        {pattern && <strong>{pattern.word.toUpperCase()}</strong>}
      </p>
      <Judged judged={flatness} unit={survey.unit} />
      {(
        [
          ['along', stage.along],
          ['across', stage.across],
          ['in any span', stage.span],
        ] as const
      )
        .filter(([, one]) => one.text !== '' && one.limit !== null)
        .map(([where, one]) => (
          <Judged key={where} judged={one} unit={survey.unit} where={where} />
        ))}
      {pattern?.because && <p className={classes(css.small, css.because)}>{pattern.because}</p>}
      {other && other.text !== '' && (
        <p className={css.small}>
          Before work: <b>{other.text}</b>, {other.word}
        </p>
      )}
    </section>
  );
}

/** What the figure was made from, and how much of the grid is read. */
const basisWords = ({ basis, readWords }: StageSurvey): string =>
  basis === 'grid' ? `two closest planes, ${readWords}` : basis === 'none' ? readWords : BASIS[basis];

const BASIS = {
  straightedge: 'worst straightedge gap',
  typed: 'as typed in the table',
} as const;

/** Mark, word and limit. `where`: with its figure, which stands nowhere else. */
function Judged({ judged, unit, where }: { judged: JudgedFigure; unit: UnitCode; where?: string }) {
  const mark = markOf(judged.verdict);
  const { limit } = judged;
  const plain = where === undefined;
  const text = limitWords(limit, unit);
  return (
    <div className={css.judged}>
      <p>
        {mark && <Verdict mark={mark} words={judged.word} />} {plain ? text : <b>{judged.text}</b>}
        {!plain && ` ${where}, ${text}`}
      </p>
      {plain && limit && <p className={css.small}>{[limit.source, ...limit.notes].join(', ')}</p>}
      {judged.decision && (
        <p className={css.small}>
          <b>{judged.decision.accepted ? 'accepted' : 'refused'}</b> by {judged.decision.by}: {judged.decision.words}
        </p>
      )}
      {[...new Set(judged.marks)].map((one) => (
        <p key={one} className={css.small}>
          {one}
        </p>
      ))}
    </div>
  );
}

/** Three ways to level the casting on the machine; the chosen one says what is left after it. */
export function HowMuchToCut({ cut, survey }: { cut: CutPlan; survey: DeckSurvey }) {
  const [chosen, setChosen] = useState<CutWay['code'] | null>(null);
  const way = cut.ways.find((one) => one.code === chosen) ?? cut.ways[0];
  return (
    <section className={css.cut} aria-label="How much to cut">
      <h2>
        How much to cut <small>{survey.unitMark}</small>
      </h2>
      <table>
        <tbody>
          {cut.ways.map((one) => (
            <tr key={one.code} className={classes(one === way && css.now)}>
              <th scope="row">
                <button type="button" aria-pressed={one === way} onClick={() => setChosen(one.code)}>
                  {one.words}
                </button>
              </th>
              <td>{one.cut.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {way && <WayFigures cut={cut} way={way} unit={survey.unit} />}
      {[...cut.leftOut, ...cut.earlier].map((words) => (
        <p key={words} className={css.small}>
          {words}
        </p>
      ))}
    </section>
  );
}

/** What the cut of a way is made of, and what it leaves. */
function WayFigures({ cut, way, unit }: { cut: CutPlan; way: CutWay; unit: UnitCode }) {
  const { left, total } = way;
  return (
    <div className={css.made}>
      <p className={css.small}>
        <b>{way.decidedBy === 'pit' ? cut.pit?.text : way.cleanUp.text}</b>{' '}
        {way.decidedBy === 'pit' ? 'deepest pit' : 'cleans up everywhere'} + <b>{cut.finish.text}</b> for finish
      </p>
      {(left || total) && (
        <dl>
          {left && (
            <Made words="Left after it" judged={left} unit={unit}>
              {left.text}
            </Made>
          )}
          {total && (
            <Made words={total.words} judged={total} unit={unit}>
              {total.text}
            </Made>
          )}
        </dl>
      )}
      {!left && cut.thicknessWords && <p className={css.small}>{cut.thicknessWords}</p>}
    </div>
  );
}

function Made({
  words,
  judged,
  unit,
  children,
}: {
  words: string;
  judged: JudgedFigure;
  unit: UnitCode;
  children: React.ReactNode;
}) {
  const mark = markOf(judged.verdict);
  return (
    <div>
      <dt>{words}</dt>
      <dd>
        <b>{children}</b>
        {mark && (
          <span className={css.beside}>
            <Verdict mark={mark} words={judged.word} />
          </span>
        )}
        <small className={css.small}>{limitWords(judged.limit, unit)}</small>
      </dd>
    </div>
  );
}

/** What hands do first; the most urgent sentence leads. */
export function Advice({ stage, acts }: { stage: StageSurvey; acts: React.ReactNode }) {
  const [first, ...rest] = stage.advice;
  if (first === undefined) return acts;
  return (
    <Notice kind="ask" acts={acts}>
      <p className={css.first}>{first}</p>
      {rest.map((words) => (
        <p key={words} className={css.small}>
          {words}
        </p>
      ))}
    </Notice>
  );
}
