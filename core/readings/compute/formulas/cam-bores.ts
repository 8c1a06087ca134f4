/** Cam bores: how straight their line is, where each stands off it, and how the camshaft runs in them. */
import { straightnessOf, type Zone } from '../geometry/line.ts';
import { type Known, type Look, madeBy, unknown } from '../look.ts';
import type { Spot } from '../model.ts';
import { difference, type Formula, largest, range } from './formula.ts';

type Read = Readonly<{ spot: Spot; known: Known }>;
type Line = Readonly<{ read: readonly Read[]; zone: Zone | null; marks: readonly string[] }>;

/** One camshaft's journals: where each stands and what was read there. Null: nothing was read. */
function lineOf(look: Look, row: number): Line | null {
  const read = look.all('cam-line-at').filter(({ spot }) => spot.row === row);
  if (read.length === 0) return null;
  const journals = look.places('cam-line-at').filter((spot) => spot.row === row);
  const places = look.all('cam-journal-place').filter(({ spot }) => spot.row === row);
  const measured = read.map(({ spot }) => places.find((it) => it.spot.id === spot.id)?.known.value ?? null);
  const isMeasured = measured.every((at) => at !== null);
  const points = read.map(({ spot, known }, index) => ({
    at: (isMeasured ? measured[index] : null) ?? journals.findIndex((it) => it.id === spot.id),
    height: known.value ?? 0,
  }));
  return {
    read,
    zone: straightnessOf(points),
    marks: [
      `least zone of ${read.length} of ${journals.length} journals`,
      ...(isMeasured ? [] : ['journals taken as evenly spaced']),
    ],
  };
}

function widthOf({ read, zone, marks }: Line): Known {
  if (!zone) return unknown('read at least three journals of each camshaft');
  return madeBy(
    read.map(({ known }, index) => [known, zone.weights[index] ?? 0] as const),
    zone.width,
    marks,
  );
}

/** The worst line of the head. While one camshaft is not read, only what is too much already is said. */
function camLine(look: Look): Known | null {
  const rows = [...new Set(look.places('cam-line-at').map((spot) => spot.row))];
  const lines = rows.flatMap((row) => lineOf(look, row) ?? []).map(widthOf);
  const worst = largest(lines);
  if (lines.length === rows.length && lines.every((it) => it.value !== null)) return worst;
  if (lines.length === 0) return null;
  const high = look.high('cam-line');
  const isTooMuch = high !== null && worst?.value != null && worst.value > high;
  return isTooMuch ? worst : (lines.find((it) => it.value === null) ?? unknown('read the line of every camshaft'));
}

function offLine(look: Look): Known | null {
  const { spot } = look.place;
  const line = spot && lineOf(look, spot.row);
  if (!line?.zone) return null;
  const index = line.read.findIndex((it) => it.spot.id === spot?.id);
  const [read, offset] = [line.read[index], line.zone.offsets[index]];
  return read === undefined || offset === undefined ? null : { ...read.known, value: offset };
}

const AXES = ['cam-bore-size', 'cam-bore-across'];
const axes = (look: Look): Known[] => AXES.map((code) => look.either(code)).filter((it) => it !== null);

export const CAM_BORE_FORMULAS: Readonly<Record<string, Formula>> = {
  'cam-line': camLine,
  'cam-line-here': (look) => {
    const line = look.place.spot && lineOf(look, look.place.spot.row);
    return line ? widthOf(line) : null;
  },
  'cam-line-off': offLine,
  'cam-bore-round': (look) => range(AXES.map((code) => look.value(code)).filter((it) => it !== null)),
  'cam-bore-clearance': (look) => difference(largest(axes(look)), look.figure('cam-journal-size')),
};
