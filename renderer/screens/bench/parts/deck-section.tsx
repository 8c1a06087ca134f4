/** A section through the face along one line: the straightedge on its ends, the heights many times enlarged, where it is worst. */
import type { DeckSurvey, GridSection } from '#core/readings/compute/deck-survey-model.ts';
import { classes } from '../../../kit/class-names.ts';
import { laySection, lengthOf } from '../deck-section-view.ts';
import css from './deck-section.module.css';

export function DeckSection({
  survey,
  section,
  turned,
  colour,
}: {
  survey: DeckSurvey;
  section: GridSection;
  turned: boolean;
  /** Colour of the verdict on the whole face. */
  colour: 'pass' | 'fail' | 'close' | 'blank';
}) {
  const laid = laySection(section, turned, lengthOf(section, survey.grid));
  const ends = section.kind === 'across' ? survey.face.sides : FRONT_AND_REAR;
  const [start, end] = turned ? ends.toReversed() : ends;
  const { worst, word } = section;
  const said = word === 'flat' ? 'flat' : `${worst.text} ${survey.unitMark} ${word}`;
  return (
    <svg
      viewBox={`0 0 ${laid.width} ${laid.height}`}
      className={css.section}
      role="img"
      aria-label={`${section.words}: ${said}`}
    >
      <path d={laid.chord} className={css.chord} />
      <path d={laid.line} className={css.line} />
      {laid.points.map((point) => (
        <circle key={point.code} cx={point.x} cy={point.y} r="3.4" className={css.point} />
      ))}
      {laid.worst && (
        <g className={css[colour]}>
          <path d={`M${laid.worst.x} ${laid.worst.from}V${laid.worst.to}`} className={css.reach} />
          <path d={arrow(laid.worst.x, laid.worst.from, laid.worst.to)} />
          <path d={arrow(laid.worst.x, laid.worst.to, laid.worst.from)} />
        </g>
      )}
      <text x={laid.said.x} y="17" textAnchor={laid.said.anchor} className={classes(css.said, css[colour])}>
        {said}
      </text>
      <text x={laid.left} y={laid.height - 4} className={css.words}>
        {start}
      </text>
      <text x={laid.right} y={laid.height - 4} textAnchor="end" className={css.words}>
        {end}
      </text>
      <text x={laid.width / 2} y={laid.height - 4} textAnchor="middle" className={css.quiet}>
        {laid.times === null ? 'height drawn larger' : `height drawn about ${laid.times} times larger`}
      </text>
    </svg>
  );
}

/** A head at the first height that points away from the second. */
const arrow = (x: number, at: number, from: number): string => {
  const way = at < from ? 1 : -1;
  return `M${x - 6} ${at + 10 * way}L${x} ${at}L${x + 6} ${at + 10 * way}Z`;
};

/** What stands at the two ends of a section along. */
const FRONT_AND_REAR = ['front', 'rear'] as const;
