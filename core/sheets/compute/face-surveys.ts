/** Surveys of flatness on paper: what was read over each face and what it comes to, and blank ones to write on. */
import { faceQuantities } from '../../catalogue/compute/faces.ts';
import { withMark } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Bench } from '../../readings/compute/bench.ts';
import { facesAt, surveyOf } from '../../readings/compute/deck-survey.ts';
import type { DeckSurvey, StageSurvey } from '../../readings/compute/deck-survey-model.ts';
import type { BlankGrid, BlankRow, FacePoint, FaceSurvey } from '../contract/reading-tables.ts';
import { list, sentence } from './words.ts';

/** Each face and stage at which a grid or a straightedge was read; in the order a casting lists its faces. */
export function faceSurveys(bench: Bench): FaceSurvey[] {
  return facesAt(bench).flatMap((face) => {
    const survey = surveyOf(bench, face.code);
    if (!survey) return [];
    return [survey.before, survey.after].flatMap((stage) => surveyAt(survey, stage) ?? []);
  });
}

const STAGES = { before: 'as found', after: 'after work' } as const;

function surveyAt(survey: DeckSurvey, stage: StageSurvey): FaceSurvey | null {
  const { unit, face, grid } = survey;
  const lines = stage.lines
    .filter(({ cell }) => cell.state === 'read')
    .map(({ words, cell, place }) => ({
      words: sentence(words),
      text: list([withMark(cell.text, unit), place.text]),
    }));
  const points = stage.planes === null ? [] : pointsOf(stage);
  if (points.length === 0 && lines.length === 0) return null;
  return {
    heading: `${face.words}, ${STAGES[stage.stage]}`,
    sides: face.sides,
    columns: grid.columns,
    rows: grid.rows,
    points,
    scale: points.length === 0 ? '' : `height above the lowest plane in ${survey.step.words}`,
    lines,
    said: saidOf(stage, unit),
  };
}

function pointsOf({ points }: StageSurvey): FacePoint[] {
  const most = Math.max(1, ...points.map(({ height }) => height ?? 0));
  return points.map(({ column, row, heightSteps, height, touches }) => ({
    column,
    row,
    text: heightSteps,
    share: height === null ? null : height / most,
    touches,
  }));
}

/** `Flatness 0.0031 in, too much, limit at most 0.004. Two closest planes 0.0031 in, least squares 0.0035 in. Hollow: ...`. */
function saidOf({ flatness, planes, pattern, readWords, basis }: StageSurvey, unit: UnitCode): string {
  const figure = (text: string) => withMark(text, unit);
  const judged =
    flatness.text === '' ? 'Flatness not known' : `Flatness ${list([figure(flatness.text), flatness.word])}`;
  return [
    judged,
    planes && `two closest planes ${figure(planes.zone.text)}, least squares ${figure(planes.leastSquares.text)}`,
    planes?.span && `worst in any span ${list([figure(planes.span.worst.text), planes.span.words])}`,
    pattern && `${pattern.word}: ${pattern.because}`,
    basis === 'grid' || planes ? readWords : null,
    ...flatness.marks,
  ]
    .filter((words) => words !== null && words !== undefined && words !== '')
    .map((words) => `${sentence(words ?? '')}.`)
    .join(' ');
}

/** A blank grid and blank lines for each face whose flatness the work wants. */
export function blankFaces(bench: Bench, wanted: ReadonlySet<string>): BlankGrid[] {
  return facesAt(bench).flatMap((face) => {
    if (!wanted.has(faceQuantities(face).flatness)) return [];
    const survey = surveyOf(bench, face.code);
    if (!survey) return [];
    const { columns, rows } = survey.grid;
    const lines = survey.before.lines.map(
      ({ words }): BlankRow => ({ label: `${sentence(words)}, ${survey.unitMark}`, limit: '', other: '' }),
    );
    return [
      {
        heading: `${face.words}, flatness`,
        groups: [],
        rows: lines,
        face: { sides: face.sides, columns, rows },
      },
    ];
  });
}
