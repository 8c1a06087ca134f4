/**
 * What to do about fits, cam lines, leaks, finish and lifts that do not pass. Common practice, no source: look before cutting,
 * and measure again cold before believing a figure.
 */
import type { Steps } from './step.ts';

const COLD = 'Casting at room temperature? Measure hole and part again.';
const TOO_TIGHT = 'Cut the hole larger, a little at a time: too tight cracks the bridge or closes the guide.';
const TOO_LOOSE = 'Next oversize: never stake, glue or knurl a loose one.';
const fit: Steps = { over: [COLD, TOO_TIGHT], under: [COLD, TOO_LOOSE] };

const heat: Steps = {
  over: [
    'Chill the part: dry ice, two to four minutes, gloves and an open door.',
    'Less room to drop in, or a lighter fit as the sheet allows.',
    'Aluminium never over about 200 °C: ask the lead.',
  ],
};

const rough: Steps = {
  over: ['Finer feed, or a larger nose radius.', 'Cutter sharp, slides tight, head clamped without springing?'],
  under: ['Coarser feed: a soft gasket does not hold on glass.', 'Never rough it by hand with a disc.'],
};

const camLine: Steps = {
  over: [
    'Caps in their places, torqued, faces clean? Read it once more.',
    'Deck and cam line both bowed: straighten first.',
    'Deck straight: hone or bore the line, before the last cut of the deck.',
  ],
};

export const FIT_AND_FACE_STEPS: Readonly<Record<string, Steps>> = {
  'insert-interference': fit,
  'guide-interference': fit,
  'sleeve-fit': fit,
  'plug-interference': { over: [COLD, 'Right plug for this hole?'], under: [COLD, 'Next size of plug.'] },
  'insert-fit-hot': { under: ['It drops out hot: next oversize, or a seat metal that grows more.'] },
  'guide-fit-hot': { under: ['It works loose hot: next oversize guide.'] },
  'insert-size-off': {
    over: ['Not the size that is marked: look at the box, ask the supplier.'],
    under: ['Not the size that is marked: look at the box, ask the supplier.'],
  },
  'insert-heat': heat,
  'insert-heat-most': heat,
  'guide-heat': heat,
  'guide-heat-most': heat,
  'cam-line': camLine,
  'cam-line-here': { ...camLine, once: true },
  'cam-bore-round': { over: ['Cap swapped or turned round?', 'Hone the line.'] },
  'cam-bore-clearance': {
    over: ['Measure the camshaft’s journal where it runs.', 'Bore for bearings or another head: ask the lead.'],
    under: ['Cap on its own place, right way round?', 'Hone the line.'],
  },
  'pressure-fall': {
    over: ['Soap plates, hoses and valve first: most leaks are the tester’s.', 'Then find the place under warm water.'],
    under: ['Water warming up? Wait until it is steady, then begin again.'],
  },
  'pressure-held': {
    over: ['Let it down: no more pressure than needed, shields on, relief valve set.'],
    under: ['More pressure finds more, up to the limit: shields on.'],
  },
  'finish-ra': rough,
  'lift-index': {
    over: ['Hoist, or a second person.', 'Nearer to the body counts most; then higher, straighter, shorter.'],
  },
  'lift-limit': { under: ['Do not lift it by hand here: hoist.'] },
  'cleaning-air': { over: ['Set the regulator under 30 psi; chip guard, eye protection, never on skin.'] },
  'spent-bath': {
    over: ['Waste by law: label the drum with content and day, ask the local office.'],
    under: ['Waste by law: label the drum with content and day, ask the local office.'],
  },
};
