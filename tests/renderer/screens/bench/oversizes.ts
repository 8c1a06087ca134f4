/** Answers to "which oversize" as the host gives them, for eight cylinders of a 3.9500 in engine. */
import type { OversizeCandidate, OversizeChoice, OversizeVerdict } from '#core/readings/compute/oversize-model.ts';

const INCH = 25_400_000;
export const size = (text: string, other: string | null = null) => ({
  value: Math.round(Number(text) * INCH),
  text,
  other,
});

const verdict = (name: OversizeVerdict['name'], words: string): OversizeVerdict => ({
  name,
  direction: name === 'fail' ? 'under' : null,
  words,
  reason: name === 'pass' ? 'Cleans up everywhere.' : 'The boring size is smaller than what cleans up.',
  spare: null,
  wallLeft: null,
});
export const CLEANS = verdict('pass', 'cleans up');
export const NOT_ENOUGH = verdict('fail', 'not enough');

export const candidate = (over: string, piston: string, more: Partial<OversizeCandidate> = {}): OversizeCandidate => ({
  code: `+${over}in`,
  over,
  words: `${over} in over`,
  piston: size(piston),
  measured: true,
  pistonWords: 'measured',
  finished: size((Number(piston) + 0.0025).toFixed(4), '100.838 mm'),
  boring: size((Number(piston) - 0.0015).toFixed(4)),
  centred: CLEANS,
  original: CLEANS,
  ask: null,
  ...more,
});

/** .010 does not clean up, .020 is the best by both rules. */
export const choiceOf = (more: Partial<OversizeChoice> = {}): OversizeChoice => ({
  unit: 'in',
  decimals: 4,
  cylinders: [
    { spot: 1 as never, label: '1' },
    { spot: 2 as never, label: '2' },
  ],
  which: 'all 2',
  sleeves: [],
  figures: [
    { quantity: 'bore', words: 'standard bore', size: size('3.9500'), source: 'engine sheet [demo]' },
    { quantity: 'piston-clearance', words: 'piston clearance', size: size('0.0025'), source: 'piston sheet [demo]' },
    { quantity: 'hone-allowance', words: 'left for the hone', size: size('0.0040'), source: 'shop default' },
    { quantity: 'clean-up', words: 'clean-up', size: size('0.0005'), source: 'shop default' },
    { quantity: 'bore-greatest', words: 'greatest bore', size: null, source: 'not known' },
    { quantity: 'wall-thickness', words: 'least wall', size: null, source: 'not known' },
  ],
  pistons: 'measured: .010, .020',
  depths: 'top, middle, bottom',
  largest: {
    spot: 1 as never,
    label: '1',
    words: 'cylinder 1, thrust, top',
    size: size('3.9572'),
    score: null,
    reach: size('3.9572'),
  },
  unread: [],
  rules: [
    { rule: 'centred', words: 'Centred on wear', need: size('3.9577'), best: '+.020in', why: '' },
    { rule: 'original', words: 'Kept on centre', need: size('3.9649'), best: '+.020in', why: '' },
  ],
  candidates: [candidate('.010', '3.9575', { centred: NOT_ENOUGH, original: NOT_ENOUGH }), candidate('.020', '3.9675')],
  chosen: [],
  warnings: [],
  missing: [],
  ...more,
});
