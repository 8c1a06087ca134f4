/** Whose face this is, what judges it, its other faces, and what changes the view. */
import type { DeckSurvey, JudgedFigure, StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { Button } from '../../../kit/button.tsx';
import { TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import { Rush } from '../../../kit/state.tsx';
import { Tag } from '../../../kit/tag.tsx';
import { deckAddress, foundAddress } from '../bench-addresses.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { limitWords } from '../deck-view.ts';
import css from './deck-head.module.css';

export function DeckHead({
  bench,
  survey,
  stage,
  turned,
  onTurn,
}: {
  bench: BenchCasting;
  survey: DeckSurvey;
  stage: StageSurvey;
  turned: boolean;
  onTurn: () => void;
}) {
  const thickness = stage.cut?.thickness;
  return (
    <div className={css.top}>
      <Tag number={bench.tag} metal={bench.metal.class} size="l" />
      <span className={css.words}>
        <b>
          {bench.typeWords}, {survey.face.words.toLowerCase()}
        </b>
        <br />
        {bench.customer}, ticket {bench.ticketNumber} {bench.promise?.rush && <Rush />}
      </span>
      {survey.faces.length > 1 && (
        <nav className={css.faces} aria-label="Faces of this casting">
          {survey.faces.map((face) => (
            <a
              key={face.code}
              href={deckAddress(bench.tag, face.code)}
              aria-current={face.code === survey.face.code ? 'page' : undefined}
            >
              {face.words}
              <small>{face.summary}</small>
            </a>
          ))}
        </nav>
      )}
      <div className={css.block}>
        <TitleBlock columns={`repeat(${2 + (thickness ? 1 : 0)}, auto)`}>
          <TitleCell label="Overall">{limitText(stage.flatness, survey)}</TitleCell>
          <TitleCell label="In any span">{limitText(stage.span, survey)}</TitleCell>
          {thickness && <TitleCell label={stage.cut?.thicknessWords || 'Thickness'}>{thickness.text}</TitleCell>}
        </TitleBlock>
      </div>
      <span className={css.acts}>
        <Button pressed={turned} onPress={onTurn}>
          Flip
        </Button>
        <Button kind="found" href={foundAddress(bench.tag)} label="Found something">
          Found
        </Button>
      </span>
    </div>
  );
}

const limitText = ({ limit }: JudgedFigure, { unit, unitMark }: DeckSurvey): string =>
  limit?.text ? `${limitWords(limit, unit)}${limit.unit === unit ? ` ${unitMark}` : ''}` : 'not known';
