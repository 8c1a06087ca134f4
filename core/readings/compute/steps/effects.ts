/** What to do where a cut changed too much elsewhere, or chambers and decks are uneven. Common practice, no source. */
import type { Steps } from './step.ts';

const UNEVEN_CHAMBERS: readonly string[] = [
  'Fill the smallest and the largest again: bubble, plug or leaking valve?',
  'Sink or change a valve, within recession and height limits.',
  'Open the small chambers to the largest one, never below the wall the lead allows.',
];

const UNEVEN_DECK: readonly string[] = [
  'Burr or dowel under the gauge? Measure the corners again.',
  'Set the block level with its mains and cut to one height.',
];

export const EFFECT_STEPS: Readonly<Record<string, Steps>> = {
  'chamber-spread': { over: UNEVEN_CHAMBERS },
  'compression-ratio': {
    over: [
      'Measure chamber, gasket and deck again.',
      'A thicker gasket, or open the chambers.',
      'Ask the customer: fuel and knock.',
    ],
    under: ['Measure chamber, gasket and deck again.', 'The cut for the ratio wanted stands in the table.'],
  },
  'thickness-then': {
    under: [
      'Cut less: what cleans the face up stands in the survey.',
      'Below the minimum only with the lead and the customer, in writing.',
      'Another casting, or stop and ask.',
    ],
  },
  'valve-to-piston-left': {
    under: [
      'Check with clay, gasket pressed.',
      'A thicker gasket, or pistons with deeper pockets.',
      'Say so on the sheet: the engine is turned by hand twice before it is started.',
    ],
  },
  'port-drop': {
    over: ['Cut each intake face, or the manifold, by the figure given here.', 'Both heads cut alike first.'],
  },
  'pair-difference': {
    over: ['Cut both heads alike.', 'Or tell the customer that the manifold tips and the banks differ.'],
  },
  'deck-spread': { over: UNEVEN_DECK },
  'bank-difference': { over: ['Measure both banks from the mains again.', 'Finish both banks at one height.'] },
  'piston-to-head': {
    under: [
      'Measure deck clearance over the highest piston.',
      'A thicker gasket, or less off the deck.',
      'Never below what rods and pistons of this engine allow: ask who builds it.',
    ],
  },
};
