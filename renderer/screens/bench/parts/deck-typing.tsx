/** Typing a survey: the drawing with its boxes above, what it says so far beside it, the place and the pad below. */
import type { DeckSurvey, StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { ONCE, pointBeside, rowKey } from '../deck-view.ts';
import type { DeckChoice } from '../hooks/use-deck-survey.ts';
import type { JustTyped } from '../hooks/use-just-typed.ts';
import type { Gauge } from '../hooks/use-preview.ts';
import type { ReadingEntry } from '../hooks/use-reading-entry.ts';
import type { TableHand } from '../hooks/use-table-hand.ts';
import { placeOf, type Spot } from '../reading-view.ts';
import { DeckGauge } from './deck-gauge.tsx';
import { EdgeList } from './deck-lines.tsx';
import { DeckPlace } from './deck-place.tsx';
import { OutOfFlat } from './deck-result.tsx';
import { SizeList } from './deck-sizes.tsx';
import css from './deck-surveyed.module.css';
import { DeckWhere } from './deck-where.tsx';
import { TableKeys } from './table-keys.tsx';

export function DeckTyping(props: {
  survey: DeckSurvey;
  stage: StageSurvey;
  choice: DeckChoice;
  bar: React.ReactNode;
  drawing: React.ReactNode;
  spot: Spot;
  hand: TableHand;
  entry: ReadingEntry;
  just: JustTyped;
  operation: number | null;
  gauge: Gauge;
  onGauge: (gauge: Gauge) => void;
  panel: boolean;
  onPanel: (open: boolean) => void;
}) {
  const { survey, stage, choice, spot, hand, entry, operation, panel, onPanel } = props;
  const { part } = choice;
  return (
    <div className={css.typing}>
      <section className={css.sheet} aria-label={`${survey.face.words}, readings`}>
        {props.bar}
        {part === 'sizes' ? (
          <SizeList
            fields={survey.fields}
            current={hand.at?.row ?? null}
            textOf={(key) => props.just.at(placeOf(survey.casting.id, { key }, ONCE))?.text}
            onChoose={(row) => hand.choose(ONCE, row)}
          />
        ) : (
          <div className={css.upper}>
            {props.drawing ?? <span />}
            <SoFar {...props} />
          </div>
        )}
      </section>
      <div className={css.low}>
        {panel ? (
          <DeckGauge
            survey={survey}
            stage={stage}
            spot={spot}
            gauge={props.gauge}
            onGauge={props.onGauge}
            way={choice.way}
            onWay={choice.setWay}
            onClose={() => onPanel(false)}
          />
        ) : (
          <DeckPlace
            spot={spot}
            hand={hand}
            entry={entry}
            words={spot.row.pointWords ?? spot.row.words}
            position={positionOf(choice, spot)}
            hint={part === 'grid' ? survey.step.words : ''}
            counts={part === 'grid' && /^-?\d+$/.test(hand.text)}
            onRow={(by) => hand.choose(ONCE, rowBeside(props, by) ?? spot.row.key)}
          >
            {part === 'edge' && (
              <DeckWhere spot={spot} placeQuantity={survey.face.quantities.gapPlace} operation={operation} />
            )}
          </DeckPlace>
        )}
        <TableKeys spot={spot} hand={hand} entry={entry} operation={operation} />
      </div>
    </div>
  );
}

/** Up and down in the picture: the point of the same column in the next row, else the next of the list. */
function rowBeside({ stage, choice, spot }: Parameters<typeof DeckTyping>[0], by: 1 | -1): string | undefined {
  const rows = choice.sheet.rows.filter((row) => row.shown);
  const beside = choice.part === 'grid' ? pointBeside(stage.points, spot.row.point, choice.lie, by) : undefined;
  return beside
    ? rows.find((row) => row.point === beside.code)?.key
    : rows[rows.findIndex((row) => row.key === spot.row.key) + by]?.key;
}

const NAMES = { grid: 'point', edge: 'line', sizes: 'size' } as const;

/** `point 8 of 15` */
function positionOf({ sheet, part }: DeckChoice, spot: Spot): string {
  const rows = sheet.rows.filter((row) => row.shown);
  return `${NAMES[part]} ${rows.findIndex((row) => row.key === spot.row.key) + 1} of ${rows.length}`;
}

/** What the survey says while it is being typed. */
function SoFar({ survey, stage, choice, hand, just }: Parameters<typeof DeckTyping>[0]) {
  if (choice.part === 'edge') {
    const keyOf = (code: string) => rowKey(survey.face.quantities.gap, code, stage.stage);
    return (
      <div className={css.soFar}>
        <EdgeList
          lines={stage.lines}
          current={stage.lines.find((line) => keyOf(line.code) === hand.at?.row)?.code ?? null}
          textOf={(line) =>
            just.at(placeOf(survey.casting.id, { key: keyOf(line.code) }, ONCE))?.text ?? line.cell.text
          }
          onChoose={(line) => hand.choose(ONCE, keyOf(line.code))}
        />
      </div>
    );
  }
  return (
    <div className={css.soFar}>
      <OutOfFlat survey={survey} stage={stage} />
    </div>
  );
}
