/** Pistons that stand above the deck, as in diesels: the highest of them chooses the gasket. Common practice, no source. */
import { type Known, type Look, made, unknown } from '../look.ts';
import { dataOf, valueAt } from './engine-data.ts';
import type { Formula } from './formula.ts';
import { sayLength } from './say.ts';

function highest(look: Look): Known | null {
  const read = look.all('piston-protrusion');
  const most = read.toSorted((a, b) => (b.known.value ?? 0) - (a.known.value ?? 0))[0];
  if (most?.known.value == null) return null;
  const all = look.places('piston-protrusion').length;
  const marks = [
    `cylinder ${most.spot.label}`,
    ...(read.length < all ? [`${read.length} of ${all} pistons read`] : []),
  ];
  return made([most.known], most.known.value, marks);
}

/** The thinnest gasket of the sheet that the highest piston allows. */
function gasketForPistons(look: Look): Known | null {
  const piston = valueAt(look, 'highest-piston');
  if (!piston) return null;
  const sizes = [1, 2, 3, 4, 5].flatMap((n) => {
    const [size, upTo] = [dataOf(look, `gasket-size-${n}`), dataOf(look, `gasket-up-to-${n}`)];
    return size && upTo ? [{ n, size, upTo: upTo.value }] : [];
  });
  if (sizes.length === 0) return unknown('no gasket sizes on the sheet');
  const fits = sizes.filter((it) => it.upTo >= piston.value).toSorted((a, b) => a.size.value - b.size.value)[0];
  if (!fits) return unknown(`piston at ${sayLength(look, piston.value)} stands above every gasket of the sheet`);
  const known = made([piston, fits.size], fits.size.value);
  return { ...known, marks: [`gasket ${fits.n}: highest piston ${sayLength(look, piston.value)}`, ...piston.marks] };
}

export const PROTRUSION_FORMULAS: Readonly<Record<string, Formula>> = {
  'highest-piston': highest,
  'gasket-for-pistons': gasketForPistons,
};
