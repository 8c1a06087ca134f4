/** Fits and heat a shop starts with. Common practice, no source, unless the row says where the figure was read. */
import { limit, type ShopLimit, usually } from '../shop-limit.ts';

const read = (row: ShopLimit, sourceTag: string, sourceWords: string): ShopLimit => ({
  ...row,
  sourceTag,
  sourceWords,
});

export const FIT_LIMITS: readonly ShopLimit[] = [
  read(
    limit('insert-interference-iron', 'after', '0.0020', '0.0050', 'in'),
    'published',
    'shop default, common practice (published: TM 5-6115-400-35 prints 0.002 to 0.004, TM 5-4310-276-14 0.003 to 0.005)',
  ),
  // On about 1.5 in of diameter; larger inserts want more.
  limit('insert-interference-aluminium', 'after', '0.0040', '0.0070', 'in'),
  limit('guide-interference-iron', 'after', '0.0005', '0.0015', 'in'),
  read(
    limit('guide-interference-aluminium', 'after', '0.027', '0.059', 'mm'),
    'published',
    'shop default, common practice (published: one engine maker’s data for a 9.5 mm guide)',
  ),
  read(
    limit('sleeve-fit', 'after', '0.0005', '0.0030', 'in'),
    'from memory',
    'shop default, common practice, from memory: dry sleeve in iron, thin wall at most 0.002',
  ),
  read(
    limit('plug-interference', 'after', '0.006', '0.012', 'in'),
    'from memory',
    'shop default, common practice, from memory',
  ),
  // Nothing of the fit may be gone when the casting runs hot: then the part is loose.
  limit('insert-fit-hot', 'after', '0', null, 'in'),
  limit('guide-fit-hot', 'after', '0', null, 'in'),
  limit('insert-size-off', 'after', '0', '0', 'in'),
  limit('heat-aluminium', 'after', null, '200', 'degC'),
  usually('room-temperature', 'after', '20', 'degC'),
  usually('running-temperature', 'after', '180', 'degC'),
  usually('drop-in-clearance', 'after', '0.0020', 'in'),
];
