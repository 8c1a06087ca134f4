/** A survey that has been read: the face with its relief, a section, the straightedge gaps; beside it what follows. */
import type { DeckSurvey, StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { ONCE, rowKey } from '../deck-view.ts';
import type { DeckChoice } from '../hooks/use-deck-survey.ts';
import type { JustTyped } from '../hooks/use-just-typed.ts';
import { colourOf, placeOf } from '../reading-view.ts';
import { DeckActs } from './deck-acts.tsx';
import { EdgeList, SectionList, sectionShown } from './deck-lines.tsx';
import { Advice, HowMuchToCut, OutOfFlat } from './deck-result.tsx';
import { DeckSection } from './deck-section.tsx';
import css from './deck-surveyed.module.css';

export function DeckReport({
  bench,
  survey,
  stage,
  choice,
  bar,
  drawing,
  just,
  section,
  onSection,
  onPlace,
}: {
  bench: BenchCasting;
  survey: DeckSurvey;
  stage: StageSurvey;
  choice: DeckChoice;
  bar: React.ReactNode;
  drawing: React.ReactNode;
  just: JustTyped;
  section: string | null;
  onSection: (code: string) => void;
  /** Type at this row again. */
  onPlace: (row: string) => void;
}) {
  const shown = sectionShown(stage, section);
  const gap = (code: string) => rowKey(survey.face.quantities.gap, code, stage.stage);
  return (
    <div className={css.report}>
      <section className={css.sheet} aria-label={`${survey.face.words}, readings`}>
        {bar}
        <div className={css.face}>{drawing}</div>
        {choice.part === 'edge' ? (
          <div className={css.below}>
            <EdgeList
              lines={stage.lines}
              current={null}
              textOf={(line) =>
                just.at(placeOf(survey.casting.id, { key: gap(line.code) }, ONCE))?.text ?? line.cell.text
              }
              onChoose={(line) => onPlace(gap(line.code))}
            />
          </div>
        ) : (
          <>
            {shown && (
              <div className={css.section}>
                <h2>
                  Section {shown.words.toLowerCase()} <small>touch a line below for another</small>
                </h2>
                <DeckSection
                  survey={survey}
                  section={shown}
                  turned={choice.lie.turned}
                  colour={colourOf(stage.flatness.verdict)}
                />
              </div>
            )}
            <div className={css.below}>
              <SectionList stage={stage} chosen={shown?.code ?? null} onChoose={onSection} />
            </div>
          </>
        )}
      </section>
      <div className={css.side}>
        <div className={css.says}>
          <OutOfFlat survey={survey} stage={stage} />
          {stage.cut && <HowMuchToCut cut={stage.cut} survey={survey} />}
        </div>
        <Advice stage={stage} acts={<DeckActs bench={bench} survey={survey} stage={stage} />} />
      </div>
    </div>
  );
}
