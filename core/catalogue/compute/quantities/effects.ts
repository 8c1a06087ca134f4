/**
 * What cutting changes elsewhere in the engine: compression, cam timing, room for the valves, the intake manifold, the other
 * head of the pair. The engine's own data stand here too: read at the bench, or targets of its sheet.
 */
import { bothSides, fine, gap, type Quantity, quantity } from '../quantity.ts';

const cc = { family: 'volume', unit: 'cc' } as const;
const degrees = { family: 'angle', signed: true } as const;
const cut = { fine: true, signed: true, over: 'too much' } as const;
const ratio = { family: 'ratio', over: 'too high', under: 'too low' } as const;

export const EFFECTS: readonly Quantity[] = [
  quantity('head-cut-planned', 'cut planned', { ...fine, over: 'too much' }),
  quantity('head-cut', 'off the head', { ...cut, derived: 'head-cut' }),
  quantity('block-deck-cut', 'off the block deck', { ...fine, over: 'too much' }),
  quantity('heads-cut', 'off each head', { ...fine, over: 'too much' }),
  quantity('head-drop', 'head sits lower by', { ...cut, derived: 'head-drop' }),
  quantity('pair-difference', 'cut unlike the other head', {
    fine: true,
    over: 'too much',
    derived: 'pair-difference',
  }),

  quantity('cylinder-bore', 'bore', fine),
  quantity('stroke', 'stroke', { ...fine, over: 'too long', under: 'too short' }),
  quantity('gasket-bore', 'gasket bore', { over: 'too big', under: 'too small' }),
  quantity('gasket-thickness', 'gasket, pressed', { fine: true, over: 'too thick', under: 'too thin' }),
  quantity('gasket-volume', 'gasket volume', { ...cc, derived: 'gasket-volume', orTyped: true }),
  quantity('piston-dish', 'piston dish', cc),
  quantity('piston-dome', 'piston dome', cc),
  quantity('land-diameter', 'top land, across', fine),
  quantity('land-height', 'top land, height'),
  quantity('crevice-volume', 'room round the top land', { ...cc, derived: 'crevice-volume', orTyped: true }),
  quantity('swept-volume', 'swept by one piston', { ...cc, derived: 'swept-volume' }),
  quantity('displacement', 'swept by the engine', { ...cc, derived: 'displacement' }),
  quantity('clearance-volume', 'left above the piston', { ...cc, derived: 'clearance-volume' }),
  quantity('compression-ratio', 'compression ratio', { ...ratio, derived: 'compression-ratio' }),
  quantity('ratio-change', 'ratio, change', { ...ratio, signed: true, derived: 'ratio-change' }),
  quantity('ratio-wanted', 'ratio wanted', ratio),
  quantity('chamber-wanted', 'chamber for the ratio wanted', { ...cc, derived: 'chamber-wanted' }),
  quantity('cut-for-ratio', 'cut for the ratio wanted', { ...cut, derived: 'cut-for-ratio' }),
  quantity('intake-closes', 'intake closes after bottom dead centre', { family: 'angle' }),
  quantity('closing-ratio', 'ratio from intake closing', { ...ratio, derived: 'closing-ratio' }),

  quantity('cam-sprocket', 'cam sprocket, pitch diameter', fine),
  quantity('crank-sprocket', 'crank sprocket, pitch diameter', fine),
  quantity('sprocket-centres', 'between sprocket centres', fine),
  quantity('cam-retard', 'cam late by, cam degrees', { ...degrees, over: 'too late', derived: 'cam-retard' }),
  quantity('crank-retard', 'cam late by, crank degrees', { ...degrees, over: 'too late', derived: 'crank-retard' }),
  quantity('pushrod-change', 'pushrods too long by', { ...cut, derived: 'pushrod-change' }),

  quantity('valve-to-piston', 'valve to piston', { ...bothSides, ...gap }),
  quantity('valve-to-piston-left', 'valve to piston, after the cut', {
    ...bothSides,
    ...gap,
    signed: true,
    derived: 'valve-to-piston-left',
  }),
  quantity('valve-to-piston-loss', 'valves nearer the pistons by', { ...cut, derived: 'valve-to-piston-loss' }),

  quantity('bank-lean', 'bank from vertical', degrees),
  quantity('face-lean', 'intake face from square to the deck', degrees),
  quantity('port-drop', 'intake ports drop by', { ...cut, derived: 'port-drop' }),
  quantity('intake-face-cut', 'off each intake face', { ...cut, derived: 'intake-face-cut' }),
  quantity('intake-bottom-cut', 'off the bottom of the manifold', { ...cut, derived: 'intake-bottom-cut' }),
];
