/** What to do about a face that is not flat, or a head with too little left. Common practice, no source: look before cutting. */
import { FACES, type Face, faceQuantities } from '../../../catalogue/compute/faces.ts';
import type { Steps } from './step.ts';

const AGAIN = 'Clean and stone the face, no jack under a clamp: read it once more.';

const deckSteps: readonly string[] = [
  AGAIN,
  'Overhead cam head: read the cam line. Deck and cam line decide together.',
  'Its survey says how much to cut by each way of levelling, and what is left then.',
];

const stepsOf = (face: Face): readonly (readonly [string, Steps])[] => {
  const of = faceQuantities(face);
  const isDeck = Object.keys(face.heights).length > 0;
  const over = isDeck ? deckSteps : [AGAIN, 'Surface it, both ends of the manifold alike.'];
  return [
    [of.flatness, { over }],
    [of.along, { over }],
    [of.across, { over }],
    [of.span, { over: ['A pit, groove or weld between chambers? Measure its depth.', ...over] }],
    [of.pit, { over: ['Weld it and surface again, or another casting: ask the lead.'] }],
  ];
};

export const FACE_STEPS: Readonly<Record<string, Steps>> = {
  ...Object.fromEntries(FACES.flatMap(stepsOf)),
  'total-removed': {
    over: [
      'Do not cut again: ask the lead.',
      'A thicker gasket only where its maker or the engine data allow it.',
      'Else another head.',
    ],
  },
};
