/** The survey on the casting's drawing: boxes with figures, lines, relief. Where which stands is worked out here. */
import { useMemo } from 'react';
import type { DrawnType } from '#core/drawing/drawn-type.ts';
import type { DeckSurvey, GridPoint, StageSurvey, StraightedgeLine } from '#core/readings/compute/deck-survey-model.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { heightsSeen, type Lie, ONCE, plateOfFace, rowKey, seenAt, viewOfFace } from '../deck-view.ts';
import type { DeckChoice } from '../hooks/use-deck-survey.ts';
import type { JustTyped } from '../hooks/use-just-typed.ts';
import { placeOf } from '../reading-view.ts';
import css from './deck-drawing.module.css';
import { DeckPlate, type PlateBox, type PlateLine, type Relief, ReliefScale } from './deck-plate.tsx';

export function DeckDrawing({
  bench,
  survey,
  stage,
  choice,
  type,
  just,
  current,
  relief: wanted,
  quiet,
  section,
  onChoose,
}: {
  bench: BenchCasting;
  survey: DeckSurvey;
  stage: StageSurvey;
  choice: DeckChoice;
  type: DrawnType;
  just: JustTyped;
  current: string | null;
  relief: boolean;
  /** No lines under the boxes: the hand is typing. */
  quiet: boolean;
  /** Code of the section that is drawn below. */
  section: string | null;
  onChoose: (row: string) => void;
}) {
  const { lie, part } = choice;
  const { step } = survey;
  const relief = useMemo((): Relief => {
    return { ...heightsSeen(stage.points, lie), step: step.value, stepWords: step.words };
  }, [stage.points, lie, step.value, step.words]);
  const shown = part === 'grid' && wanted && relief.heights.length > 0 ? relief : null;
  const { columns, rows } = survey.grid;
  const dense = part === 'grid' && (columns > MOST_BOXES.columns || rows > MOST_BOXES.rows);
  function linesOf(): PlateLine[] {
    if (shown) return sectionLine(stage, section, lie);
    return quiet && part === 'grid' ? [] : edgeLines(stage, lie);
  }
  const boxes = part === 'edge' ? edgeBoxes(survey, stage, lie, just) : gridBoxes(survey, stage, lie, just);
  return (
    <div className={css.drawing}>
      <DeckPlate
        type={type}
        view={viewOfFace(survey.face.code)}
        plate={plateOfFace(survey.face.code)}
        turned={lie.turned}
        label={`${survey.face.words} of ${bench.tag}`}
        upper={survey.face.sides[lie.turned === lie.second ? 0 : 1]}
        boxes={boxes}
        lines={linesOf()}
        small={part === 'edge'}
        dots={dense && (quiet || shown !== null)}
        relief={shown}
        current={current}
        onChoose={onChoose}
      />
      {shown && <ReliefScale relief={shown} />}
    </div>
  );
}

/** As many figures as can be read beside the pad or over a relief. */
const MOST_BOXES = { columns: 9, rows: 6 } as const;

const textAt = (survey: DeckSurvey, key: string, just: JustTyped) => just.at(placeOf(survey.casting.id, { key }, ONCE));

function gridBoxes(survey: DeckSurvey, stage: StageSurvey, lie: Lie, just: JustTyped): PlateBox[] {
  return stage.points.map((point) => {
    const key = rowKey(survey.face.quantities.dial, point.code, stage.stage);
    const here = textAt(survey, key, just);
    const text = here?.text ?? textOf(point);
    const label = [point.words, text === '' ? 'not read' : text, point.touches ? TOUCHES[point.touches] : ''];
    return {
      key,
      label: label.filter(Boolean).join(', '),
      text,
      seen: seenAt(point, lie),
      touch: point.touches,
      waiting: here?.waiting ?? false,
    };
  });
}

const TOUCHES = { upper: 'touches the upper plane', lower: 'touches the lower plane' } as const;

/** A dash where there is nothing to measure: a hole in the face. */
const textOf = ({ cell, steps }: GridPoint): string => (cell.state === 'not applicable' ? cell.text : steps);

function edgeBoxes(survey: DeckSurvey, stage: StageSurvey, lie: Lie, just: JustTyped): PlateBox[] {
  return stage.lines.map((line) => {
    const key = rowKey(survey.face.quantities.gap, line.code, stage.stage);
    const here = textAt(survey, key, just);
    const text = here?.text ?? line.cell.text;
    return {
      key,
      label: [line.words, text === '' ? 'not read' : text, line.place.text].filter(Boolean).join(', '),
      text,
      seen: seenAt(boxPlace(line), lie),
      touch: null,
      waiting: here?.waiting ?? false,
    };
  });
}

/**
 * On its line where no other line's figure stands: across near the first side, corner to corner near the second, along
 * between two lines across.
 */
function boxPlace({ kind, from, to }: StraightedgeLine): Readonly<{ along: number; across: number }> {
  const share = kind === 'diagonal' ? (NEAR_SECOND - from.across) / (to.across - from.across) : SHARES[kind];
  return {
    along: from.along + (to.along - from.along) * share,
    across: from.across + (to.across - from.across) * share,
  };
}
const SHARES = { along: 0.625, across: 0.25 } as const;
const NEAR_SECOND = 0.8;

const edgeLines = (stage: StageSurvey, lie: Lie): PlateLine[] =>
  stage.lines
    .filter((line) => line.kind !== 'across' || stage.points.every((point) => point.steps === ''))
    .map((line) => ({ key: line.code, from: seenAt(line.from, lie), to: seenAt(line.to, lie) }));

/** The line of the section that is drawn below. */
function sectionLine(stage: StageSurvey, code: string | null, lie: Lie): PlateLine[] {
  const section = stage.planes?.sections.find((one) => (code === null ? one.isMiddle : one.code === code));
  const at = (point: string | undefined) => stage.points.find((one) => one.code === point);
  const [from, to] = [at(section?.points[0]?.code), at(section?.points.at(-1)?.code)];
  return from && to && section ? [{ key: section.code, from: seenAt(from, lie), to: seenAt(to, lie) }] : [];
}
