/**
 * What cutting changes elsewhere in the engine: compression, cam timing, room for the valves, the intake manifold, the other
 * head of the pair. The engine's own data stand here too: read at the bench, or targets of its sheet.
 */
import { ENGINE_USES } from '../limits-by-word.ts';
import { bothSides, fine, gap, type Quantity, quantity, word } from '../quantity.ts';

const cc = { family: 'volume', unit: 'cc' } as const;
const degrees = { family: 'angle', fine: true, signed: true } as const;
/** Typed where the sheet does not say it. */
const data = { ...fine, optional: true } as const;
const vee = { onlyFor: 'v engine' } as const;
const overhead = { onlyFor: 'overhead cam' } as const;
const cut = { fine: true, signed: true, over: 'too much' } as const;
const ratio = { family: 'ratio', over: 'too high', under: 'too low' } as const;

export const EFFECTS: readonly Quantity[] = [
  quantity('engine-use', 'engine built for', { ...word, choices: ENGINE_USES, optional: true }),
  quantity('head-cut-planned', 'cut planned', { ...data, over: 'too much' }),
  quantity('head-cut', 'off the head', { ...cut, derived: 'head-cut' }),
  quantity('thickness-then', 'thickness with this cut', {
    fine: true,
    over: 'too thick',
    under: 'too thin',
    derived: 'thickness-then',
    judgedAs: 'thickness',
  }),
  quantity('block-deck-cut', 'off the block deck', { ...data, over: 'too much' }),
  quantity('heads-cut', 'off each head', { ...data, over: 'too much' }),
  quantity('head-drop', 'head sits lower by', { ...cut, derived: 'head-drop' }),
  quantity('pair-difference', 'cut unlike the other head', {
    fine: true,
    onlyFor: 'pair',
    over: 'too much',
    derived: 'pair-difference',
  }),

  quantity('cylinder-bore', 'bore', data),
  quantity('stroke', 'stroke', { ...data, over: 'too long', under: 'too short' }),
  quantity('gasket-bore', 'gasket bore', { optional: true, over: 'too big', under: 'too small' }),
  quantity('gasket-thickness', 'gasket, pressed', { fine: true, optional: true, over: 'too thick', under: 'too thin' }),
  quantity('gasket-volume', 'gasket volume', { ...cc, derived: 'gasket-volume', orTyped: true }),
  quantity('piston-dish', 'piston dish', { ...cc, optional: true }),
  quantity('piston-dome', 'piston dome', { ...cc, optional: true }),
  quantity('land-diameter', 'top land, across', data),
  quantity('land-height', 'top land, height', { optional: true }),
  quantity('crevice-volume', 'room round the top land', { ...cc, derived: 'crevice-volume', orTyped: true }),
  quantity('swept-volume', 'swept by one piston', { ...cc, derived: 'swept-volume' }),
  quantity('displacement', 'swept by the engine', { ...cc, derived: 'displacement' }),
  quantity('clearance-volume', 'left above the piston', { ...cc, derived: 'clearance-volume' }),
  quantity('compression-ratio', 'compression ratio', { ...ratio, derived: 'compression-ratio' }),
  quantity('ratio-change', 'ratio, change', { ...ratio, signed: true, derived: 'ratio-change' }),
  quantity('ratio-wanted', 'ratio wanted', { ...ratio, optional: true }),
  quantity('chamber-wanted', 'chamber for the ratio wanted', { ...cc, derived: 'chamber-wanted' }),
  quantity('cut-for-ratio', 'cut for the ratio wanted', { ...cut, derived: 'cut-for-ratio' }),
  quantity('intake-closes', 'intake closes after bottom dead centre', { family: 'angle', optional: true }),
  quantity('closing-ratio', 'ratio from intake closing', { ...ratio, derived: 'closing-ratio' }),

  quantity('cam-sprocket', 'cam sprocket, pitch diameter', { ...data, ...overhead }),
  quantity('crank-sprocket', 'crank sprocket, pitch diameter', { ...data, ...overhead }),
  quantity('sprocket-centres', 'between sprocket centres', { ...data, ...overhead }),
  quantity('cam-retard', 'cam late by, cam degrees', {
    ...degrees,
    ...overhead,
    over: 'too late',
    derived: 'cam-retard',
  }),
  quantity('crank-retard', 'cam late by, crank degrees', {
    ...degrees,
    ...overhead,
    over: 'too late',
    derived: 'crank-retard',
  }),
  quantity('pushrod-change', 'pushrods too long by', { ...cut, onlyFor: 'pushrods', derived: 'pushrod-change' }),

  quantity('valve-to-piston', 'valve to piston', { ...bothSides, ...gap }),
  quantity('valve-to-piston-left', 'valve to piston, after the cut', {
    ...bothSides,
    ...gap,
    signed: true,
    derived: 'valve-to-piston-left',
  }),
  quantity('valve-to-piston-loss', 'valves nearer the pistons by', { ...cut, derived: 'valve-to-piston-loss' }),

  quantity('bank-lean', 'bank from vertical', { ...degrees, ...vee, optional: true }),
  quantity('face-lean', 'intake face from square to the deck', { ...degrees, ...vee, optional: true }),
  quantity('port-drop', 'intake ports drop by', { ...cut, ...vee, derived: 'port-drop' }),
  quantity('intake-face-cut', 'off each intake face', { ...cut, ...vee, derived: 'intake-face-cut' }),
  quantity('intake-bottom-cut', 'off the bottom of the manifold', { ...cut, ...vee, derived: 'intake-bottom-cut' }),
];
