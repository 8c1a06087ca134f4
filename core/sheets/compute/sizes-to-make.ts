/** Sizes that were chosen and are to be made, in both units: a finish size is never an oversize alone. */
import { findQuantity } from '../../catalogue/compute/quantities.ts';
import { showBoth, typedDecimals } from '../../kernel/measure-show.ts';
import type { Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import { isRead } from './measured.ts';
import { sentence } from './words.ts';

export type SizeToMake = Readonly<{
  /** `Size wanted`, with the places where they are not all alike. */
  label: string;
  /** `3.9700 in`. */
  first: string;
  /** `100.838 mm`; empty where both systems use one unit. */
  second: string;
}>;

/** One line a size; places with the same size share it. */
export const sizesToMake = (sheets: readonly Sheet[]): SizeToMake[] =>
  sheets.flatMap((sheet) =>
    sheet.rows.filter(({ quantity }) => findQuantity(quantity)?.toMake === true).flatMap((row) => sizesOf(sheet, row)),
  );

function sizesOf({ columns }: Sheet, row: SheetRow): SizeToMake[] {
  const cells = row.cells.flatMap((cell, index) =>
    isRead(cell) && cell.value !== null && cell.unit !== null
      ? [{ value: cell.value, unit: cell.unit, text: cell.text, place: columns[index]?.label ?? '' }]
      : [],
  );
  const alike = [...Map.groupBy(cells, ({ value }) => value).values()];
  return alike.flatMap((group) => {
    const [one] = group;
    if (!one) return [];
    const { first, second } = showBoth(one.value, one.unit, typedDecimals(one.text));
    const places = group.length === row.cells.length ? '' : ` ${group.map(({ place }) => place).join(' ')}`;
    return [{ label: `${sentence(row.words)}${places}`, first, second: second ?? '' }];
  });
}
