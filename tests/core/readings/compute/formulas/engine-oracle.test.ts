import { describe, expect, it } from 'vitest';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { BEFORE, figure, headBench, type Typed, V_EIGHT } from '#tests/kit/cut-engine.ts';
import { lacks } from '#tests/kit/programs.ts';
import { askPython } from '#tests/kit/python.ts';

/** Engines of all sizes: the same list each run, so that a failure can be looked at again. */
function* engines(count: number): Generator<Readonly<Record<string, string>>> {
  let seed = 20_261_125;
  const between = (low: number, high: number, decimals: number) => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return (low + (seed / 2_147_483_648) * (high - low)).toFixed(decimals);
  };
  for (let n = 0; n < count; n += 1) {
    yield {
      bore: between(2.5, 4.6, 3),
      stroke: between(2.4, 5, 3),
      chamber: between(30, 110, 1),
      dish: between(0, 15, 1),
      dome: between(0, 5, 1),
      gasketBore: between(2.6, 4.8, 3),
      old: between(0.02, 0.06, 3),
      fresh: between(0.02, 0.06, 3),
      deck: between(-0.01, 0.03, 3),
      circle: between(2.2, 4, 2),
      headCut: between(0, 0.04, 4),
      deckCut: between(0, 0.02, 4),
      cam: between(3, 6, 2),
      crank: between(1.5, 2.9, 2),
      centres: between(7, 20, 1),
      bank: between(20, 45, 1),
      face: between(-5, 25, 1),
    };
  }
}

/** The same figures by numpy: volumes by integrating discs, retard by turning both sprockets until the tight run fits. */
const SCRIPT = `
import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq
IN3 = 16.387064
out = []
def layer(d, h):
    return quad(lambda z: np.pi * (d / 2) ** 2, 0, h)[0] * IN3
def tight_run(c, rc, rk):
    # straight length and wrap of an open drive, on the pulling side
    a = np.arcsin((rc - rk) / c)
    return np.sqrt(c * c - (rc - rk) ** 2), a
for e in json.loads(text):
    f = {k: float(v) for k, v in e.items()}
    swept = layer(f['bore'], f['stroke'])
    def ratio(chamber, gasket, deck):
        above = chamber + layer(f['gasketBore'], gasket) + layer(f['bore'], deck) + f['dish'] - f['dome']
        return (swept + above) / above
    chamber = f['chamber'] - layer(f['circle'], f['headCut'])
    drop = f['headCut'] + f['deckCut'] + f['old'] - f['fresh']
    rc, rk, c = f['cam'] / 2, f['crank'] / 2, f['centres']
    l0, a0 = tight_run(c, rc, rk)
    l1, a1 = tight_run(c - drop, rc, rk)
    # chain pulled over the crank + run + chain laid on the cam stays as long: the cam turns by what is left over
    spare = (l0 + rc * a0 - rk * a0) - (l1 + rc * a1 - rk * a1)
    b, d = np.radians(f['bank']), np.radians(f['face'])
    g = b + d
    move = np.array([-np.sin(b), -np.cos(b)]) * drop
    along, normal = np.array([np.sin(g), np.cos(g)]), np.array([-np.cos(g), np.sin(g)])
    down, off = np.linalg.solve([[np.cos(g), 0], [-np.sin(g), 1]], [-(move @ along), move @ normal])
    out.append({
        'before': ratio(f['chamber'], f['old'], f['deck']),
        'after': ratio(chamber, f['fresh'], f['deck'] - f['deckCut']),
        'cam': np.degrees(spare / rc),
        'bottom': down,
        'face': off,
    })
print(json.dumps(out))
`;

type Answer = Readonly<Record<'before' | 'after' | 'cam' | 'face' | 'bottom', number>>;

function benchOf(it: Readonly<Record<string, string>>) {
  const sheet = (quantity: string, unit: 'in' | 'cc', key: string) =>
    limitOf(quantity, unit, { target: it[key] ?? null });
  const readings: Typed[] = [
    ['head-cut-planned', it.headCut ?? '', 'in', BEFORE],
    ['block-deck-cut', it.deckCut ?? '', 'in'],
    ['gasket-thickness', it.old ?? '', 'in', BEFORE],
    ['gasket-thickness', it.fresh ?? '', 'in'],
    ['cam-sprocket', it.cam ?? '', 'in', BEFORE],
    ['crank-sprocket', it.crank ?? '', 'in', BEFORE],
    ['sprocket-centres', it.centres ?? '', 'in', BEFORE],
    ['bank-lean', it.bank ?? '', 'deg', BEFORE],
    ['face-lean', it.face ?? '', 'deg', BEFORE],
    ['cylinder-bore', it.bore ?? '', 'in', BEFORE],
    ['stroke', it.stroke ?? '', 'in', BEFORE],
  ];
  const limits = [
    sheet('chamber-volume', 'cc', 'chamber'),
    sheet('piston-dish', 'cc', 'dish'),
    sheet('piston-dome', 'cc', 'dome'),
    sheet('gasket-bore', 'in', 'gasketBore'),
    sheet('deck-clearance', 'in', 'deck'),
    sheet('chamber-circle', 'in', 'circle'),
  ];
  return headBench({ limits, readings, engine: V_EIGHT, casting: { camLayout: 'sohc' } });
}

describe.skipIf(lacks('numpy', 'scipy'))('the bench against numpy and scipy', () => {
  const list = [...engines(60)];
  const answers = lacks('numpy', 'scipy') ? [] : askPython<Answer[]>(SCRIPT, JSON.stringify(list));

  it('compression of 60 invented engines before and after all cuts: volumes by integration (scipy quad)', () => {
    for (const [index, engine] of list.entries()) {
      const bench = benchOf(engine);

      expect(
        Math.abs(figure(bench, 'compression-ratio', 'ratio', 'before') - (answers[index]?.before ?? 0)),
      ).toBeLessThan(0.0002);
      expect(Math.abs(figure(bench, 'compression-ratio', 'ratio') - (answers[index]?.after ?? 0))).toBeLessThan(0.0002);
    }
  });

  it('retard of the same: the tight run drawn before and after the cut (numpy), to first order', () => {
    for (const [index, engine] of list.entries()) {
      const found = figure(benchOf(engine), 'cam-retard', 'deg');

      // What the first order leaves out is of the size of the cut squared.
      expect(Math.abs(found - (answers[index]?.cam ?? 0))).toBeLessThan(0.002);
    }
  });

  it('manifold of the same: moves of head and manifold solved as two equations (numpy)', () => {
    for (const [index, engine] of list.entries()) {
      const bench = benchOf(engine);

      expect(Math.abs(figure(bench, 'intake-face-cut', 'in') - (answers[index]?.face ?? 0))).toBeLessThan(0.000001);
      expect(Math.abs(figure(bench, 'intake-bottom-cut', 'in') - (answers[index]?.bottom ?? 0))).toBeLessThan(0.000001);
    }
  });
});
