/** Draws papers in this thread, from data that has crossed a thread's border as it does in the program. */
import type { Services } from '#core/host/services.ts';
import { drawNamed } from '#core/sheets/any-sheet.ts';
import { fonts } from './pdf.ts';

export const draw: Services['draw'] = (sheet, data) => drawNamed(fonts, sheet, structuredClone(data));
