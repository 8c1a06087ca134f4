/** What to do about guides, valves and seats that do not pass. Common practice, no source, unless said. */
import { withMark } from '../../../kernel/measure-show.ts';
import { showComputed } from '../row-units.ts';
import type { Steps } from './step.ts';

const GUIDE_WORN: readonly string[] = [
  'Clean guide and stem, measure again where it is worst.',
  'Compare with a new stem: which of the two is worn?',
  'New valve, when the guide holds its size.',
  'Guide: knurl, liner or replace, as the engine allows. Seats are cut after the guides.',
];

/** 1 1/2 degrees: from memory. */
const ANGLES_APART = 1_500_000;

export const VALVE_STEPS: Readonly<Record<string, Steps>> = {
  'guide-clearance': {
    over: GUIDE_WORN,
    under: ['Clean the guide and measure again.', 'Size the guide to its valve.', 'Right valve for this guide?'],
  },
  'bell-mouth': { over: GUIDE_WORN },
  'stem-wear': {
    over: [
      'Measure the unworn part again, above the seal.',
      'Exhaust stems may be made thinner toward the head, by about .001 in: compare with a new one.',
      'Replace the valve.',
    ],
  },
  margin: {
    under: [
      'Measure again at the thinnest place of the edge.',
      'Replace the valve: a thin edge burns or fires the mixture early.',
    ],
  },
  'margin-left': {
    under: ['Grind less, if the face cleans up.', 'New valve instead of grinding.'],
  },
  'plan-height-with-shim': {
    over: ['Cut less, or grind the face less.', 'New seat insert.', 'A retainer or locks that sit lower.'],
    under: ['Height read on the right surface, all old shims out?', 'Cutting deeper makes it taller.'],
  },
  'plan-seat-load': { under: ['Cut less, or more shim.', 'New seat insert.'], over: ['Less shim.'] },
  'plan-open-load': { over: ['Less shim, as long as the seat load holds.'], under: ['Cut less, or more shim.'] },
  'plan-tip-from-mean': {
    over: ['Cut the others alike, or this one less.', 'Grind the tip, within its limit.', 'New seat insert.'],
    under: ['Cut this one like the others.'],
  },
  'plan-recession': {
    over: ['Cut less, or surface first.', 'New seat insert.'],
    under: ['Cut deeper, as long as height, tip and load allow.'],
  },
  'plan-lash': { under: ['A thinner lash shim, or grind the tip.'], over: ['A thicker lash shim.'] },
  'seat-width': {
    over: [
      'Top cut, 15 or 30 degrees: narrows and moves the contact toward the stem.',
      'Throat cut, 60 to 75 degrees: narrows and moves the contact outward.',
      'Check margin, tip height and spring height again.',
    ],
    under: ['Widen with the seat angle.', 'Tip height and spring height rise with it: measure them again.'],
  },
  'seat-free': {
    under: [
      'Contact too far out: top cut and seat angle again.',
      'Contact too far in: throat cut and seat angle again.',
    ],
  },
  'seat-runout': {
    over: [
      'Pilot tight, clean and straight? Turn the gauge again.',
      'Guide sized? A seat is no truer than its guide.',
      'Cut the seat again, as little as cleans it up.',
    ],
  },
  'face-runout': {
    over: ['Chuck and stem clean?', 'Grind the face again.', 'Replace the valve: the stem may be bent.'],
  },
  'angle-difference': {
    doubt: (value) =>
      Math.abs(value) <= ANGLES_APART
        ? null
        : {
            words: `valve and seat ${withMark(showComputed(Math.abs(value), 'deg', 2), 'deg')} apart: look again`,
            steps: [
              'Both angles from the same reference? From the stem axis, 46 is 44 from the head plane.',
              'Usual is half a degree to one degree apart. Which of the two is flatter differs between makers.',
            ],
          },
  },
  'tip-from-mean': {
    over: [
      'Seat as deep as its neighbours? Valve fully closed?',
      'Grind the tip, at most about .010 in and never through its hard skin.',
      'New insert where the seat is sunk.',
    ],
    under: [
      'Valve fully closed, locks and seat clean?',
      'Longer valve among the others?',
      'Cut this seat like its neighbours.',
    ],
  },
  'tip-removed': {
    over: ['Tip ground through its hard skin: replace the valve.', 'Or a new insert instead of more grinding.'],
  },
  recession: {
    over: [
      'New seat insert, or a valve with a thicker head where the maker has one.',
      'Measure again after surfacing.',
    ],
    under: ['Cut the seat, as long as height, tip and load allow.', 'Ask the lead: a proud valve may meet the piston.'],
  },
  'recession-surfaced': {
    over: ['New seat insert.', 'Measure again after surfacing.'],
    under: ['Cut the seats after surfacing.', 'Ask the lead: a proud valve may meet the piston.'],
  },
  'lash-with-shim': {
    over: ['A thicker lash shim.', 'Sizes of lash shims known? Set smallest, largest and step for this engine.'],
    under: [
      'A thinner lash shim.',
      'Tip ground, as long as the engine allows it.',
      'Never leave a valve without lash: it burns.',
    ],
  },
  'port-vacuum-fall': {
    over: [
      'Plate, plug and hose tight? Test again.',
      'Block the guide with grease and repeat: if it holds now, the guide or its seal leaks.',
      'Look at the seat contact all round, then cut or lap again.',
      'Test dry: oil and grease make a poor seat look good.',
    ],
  },
};
