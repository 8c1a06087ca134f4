/** The straightedge gaps of a face, typed ones and those the grid shows, each with its line; a touch draws its section. */
import type { GridSection, StageSurvey, StraightedgeLine } from '#core/readings/compute/deck-survey-model.ts';
import { classes } from '../../../kit/class-names.ts';
import css from './deck-lines.module.css';

/** Gaps under a straightedge laid on the grid's own rows, columns and diagonals; the worst span; the face by other planes. */
export function SectionList({
  stage,
  chosen,
  onChoose,
}: {
  stage: StageSurvey;
  chosen: string | null;
  onChoose: (code: string) => void;
}) {
  const { planes } = stage;
  if (!planes) return null;
  return (
    <ul className={css.list} aria-label="Straightedge gaps in the grid">
      {planes.sections.map((section) => (
        <li key={section.code}>
          <button
            type="button"
            aria-pressed={section.code === chosen}
            className={classes(section.code === chosen && css.now)}
            onClick={() => onChoose(section.code)}
          >
            <span>{section.words}</span> <b>{section.worst.text}</b>
            {section.word !== 'hollow' && <small> {section.word}</small>}
          </button>
        </li>
      ))}
      {planes.span && <Still words={`Worst span, ${planes.span.words}`} text={planes.span.worst.text} />}
      {planes.corners[0] && <Still words="On three corners" text={planes.corners[0].flatness.text} />}
      <Still words="Least squares" text={planes.leastSquares.text} />
    </ul>
  );
}

/** A figure without a line of its own: of a span, or of the whole face by another plane. */
const Still = ({ words, text }: { words: string; text: string }) => (
  <li>
    <span className={css.still}>
      <span>{words}</span> <b>{text}</b>
    </span>
  </li>
);

/** The lines of the straightedge with what went under them. */
export function EdgeList({
  lines,
  current,
  textOf,
  onChoose,
}: {
  lines: readonly StraightedgeLine[];
  /** Code of the line the hand is at. */
  current: string | null;
  /** What is typed in, also while it waits on this tablet. */
  textOf: (line: StraightedgeLine) => string;
  onChoose: (line: StraightedgeLine) => void;
}) {
  return (
    <ul className={css.list} aria-label="Straightedge gaps">
      {lines.map((line) => (
        <li key={line.code}>
          <button
            type="button"
            aria-current={line.code === current ? 'true' : undefined}
            className={classes(line.code === current && css.now)}
            onClick={() => onChoose(line)}
          >
            <span>{line.words}</span> <b>{textOf(line) || 'not read'}</b>
            {line.place.text && <small> {line.place.text}</small>}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The section to draw: the chosen one, else the one along the middle. */
export const sectionShown = (stage: StageSurvey, chosen: string | null): GridSection | null =>
  stage.planes?.sections.find((one) => one.code === chosen) ??
  stage.planes?.sections.find((one) => one.isMiddle) ??
  stage.planes?.sections[0] ??
  null;
