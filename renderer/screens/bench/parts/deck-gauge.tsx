/** Set now and then: the gauge in the hand, the way through the grid, a limit for this job only. */
import type { DeckSurvey, StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import type { DeckWay } from '../deck-view.ts';
import type { Gauge } from '../hooks/use-preview.ts';
import type { Spot } from '../reading-view.ts';
import { familyOf } from '../unit-sizes.ts';
import { GaugeKeys } from './gauge-keys.tsx';
import css from './gauge-panel.module.css';
import { JobLimit } from './job-limit.tsx';

const WAYS: readonly Readonly<{ value: DeckWay; words: string }>[] = [
  { value: 'there', words: 'there and back, as a dial slides' },
  { value: 'rows', words: 'row by row, as a form is filled' },
];

export function DeckGauge({
  survey,
  stage,
  spot,
  gauge,
  onGauge,
  way,
  onWay,
  onClose,
}: {
  survey: DeckSurvey;
  stage: StageSurvey;
  spot: Spot;
  gauge: Gauge;
  onGauge: (gauge: Gauge) => void;
  way: DeckWay;
  onWay: (way: DeckWay) => void;
  onClose: () => void;
}) {
  const tools = fittingFirst(survey.tools, spot);
  return (
    <section className={css.panel} aria-label="Gauge and limit">
      <div className={css.foot}>
        <Button onPress={onClose}>Back to readings</Button>
      </div>
      <GaugeKeys tools={tools} gauge={gauge} onGauge={onGauge} />
      <Choice label="The hand goes" options={WAYS} value={way} onChange={onWay} />
      <JobLimit spot={judgedSpot(survey, stage, spot)} />
    </section>
  );
}

/** Gauges of lengths; those that are called like what is read come first. */
function fittingFirst(tools: DeckSurvey['tools'], { row }: Spot): DeckSurvey['tools'] {
  const word = row.words === 'gap' ? 'feeler' : 'indicator';
  const named = (kind: string): number => (kind.includes(word) ? 0 : 1);
  return tools.filter((tool) => familyOf(tool.unit) === 'length').toSorted((a, b) => named(a.kind) - named(b.kind));
}

/** The whole face as a place to give a limit: its flatness is what is judged, not a single point. */
function judgedSpot(survey: DeckSurvey, stage: StageSurvey, spot: Spot): Spot {
  const { quantity, words, limit } = stage.flatness;
  const limits = limit ? [limit] : [];
  const row = { ...spot.row, quantity, words, point: null, pointWords: null, stage: stage.stage, limits };
  return { ...spot, row: { ...row, unit: survey.unit, unitMark: survey.unitMark } };
}
