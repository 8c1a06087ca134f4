/** What a survey of flatness comes to, face by face. The readings themselves stand on the drawing of the face. */

import { after, type BenchRow, type BenchTable, before, hiddenAfter, hiddenBefore } from '../bench-table.ts';
import { FACES, type FaceCode, faceQuantities } from '../faces.ts';

/** Flatness before and after; along, across and in any span where they are switched on. */
function faceRows(face: FaceCode): readonly BenchRow[] {
  const of = faceQuantities(face);
  return [
    before(of.flatness),
    hiddenBefore(of.along),
    hiddenBefore(of.across),
    hiddenBefore(of.span),
    hiddenBefore(of.pit),
    hiddenBefore(of.cut),
    after(of.flatness),
    hiddenAfter(of.along),
    hiddenAfter(of.across),
    hiddenAfter(of.span),
  ];
}

const tableOf = (
  code: string,
  words: string,
  castingKind: BenchTable['castingKind'],
  operation: string | null = null,
): BenchTable => ({
  code,
  words,
  castingKind,
  spotKind: null,
  operation,
  rows: FACES.filter((face) => face.tables[castingKind] === code).flatMap(faceRows),
});

export const FACE_TABLES: readonly BenchTable[] = [
  tableOf('head-faces', 'Manifold faces', 'head'),
  tableOf('block-faces', 'Deck flatness', 'block'),
  tableOf('intake-faces', 'Face', 'intake_manifold'),
  tableOf('exhaust-faces', 'Face', 'exhaust_manifold'),
];
