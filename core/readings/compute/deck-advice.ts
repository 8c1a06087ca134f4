/** What is said above a survey: what comes first, and what a cut would come to. Common practice, no source. */
import type { Face } from '../../catalogue/compute/faces.ts';
import { withMark } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import { type Bow, bowAdvice } from './bow.ts';
import type { CutPlan, CutWay, JudgedFigure, StageSurvey } from './deck-survey-model.ts';

const CAM_LINE = 'cam-line';

const asBow = (name: string): Bow => (name === 'fail' ? 'bowed' : name === 'pass' ? 'straight' : 'not read');

/** The cam line as it was read last. */
function camLine(bench: Bench): Bow {
  const stage = bench.known(CAM_LINE, null, null, 'after')?.value == null ? 'before' : 'after';
  return asBow(bench.verdict(CAM_LINE, stage, null, bench.known(CAM_LINE, null, null, stage)).name);
}

/** Only a head with its camshaft in the head is bent or not bent by its cam line. */
function hasCamLine({ facts }: Bench, face: Face): boolean {
  const { camLayout, kind } = facts.casting;
  return kind === 'head' && face.code === 'deck' && (camLayout === 'sohc' || camLayout === 'dohc');
}

const fails = (judged: JudgedFigure | null): boolean => judged?.verdict.name === 'fail';

/** `Surface it: 0.0066 in off, levelled best, leaves 3.9534 in.` */
function cutWords({ words, cut, left }: CutWay, unit: UnitCode): string {
  const leaves = left === null || left.text === '' ? '' : `, leaves ${withMark(left.text, unit)}`;
  return `Surface it: ${withMark(cut.text, unit)} off, ${words.toLowerCase()}${leaves}.`;
}

/** That no cut is left, or what one would come to; nothing where the face is flat enough or its flatness is not known. */
function cutAdvice(flatness: JudgedFigure, cut: CutPlan | null, unit: UnitCode, mayCut: boolean): string[] {
  const ways = cut?.ways ?? [];
  const [first] = ways;
  if (!fails(flatness) || !first) return [];
  if (ways.every((it) => fails(it.left)))
    return ['Every way of levelling leaves less than the least allowed: do not cut, ask the lead.'];
  if (ways.every((it) => fails(it.total)))
    return ['Every way of levelling takes off more in all than is allowed: do not cut, ask the lead.'];
  return mayCut ? [cutWords(first, unit)] : [];
}

type Known = Pick<StageSurvey, 'flatness' | 'cut' | 'pattern'>;

/** Most urgent first. A head that is bent first, or whose cam line is not read, is not told to be cut. */
export function adviceOf(
  { bench, face, unit }: Readonly<{ bench: Bench; face: Face; unit: UnitCode }>,
  { flatness, cut, pattern }: Known,
): Pick<StageSurvey, 'advice' | 'measureFirst'> {
  const deck = asBow(flatness.verdict.name);
  const cam = camLine(bench);
  const bend = hasCamLine(bench, face) ? bowAdvice(deck, cam) : null;
  const mayCut = bend === null || cam === 'straight';
  const steps = fails(flatness) ? (pattern?.steps ?? []) : [];
  return {
    advice: [...(bend === null ? [] : [bend]), ...cutAdvice(flatness, cut, unit, mayCut), ...steps],
    measureFirst: bend !== null && cam === 'not read' ? CAM_LINE : null,
  };
}
