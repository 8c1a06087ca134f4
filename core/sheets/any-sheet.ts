/** Draws any paper by its name. */
import type { Fonts } from '../paper/fonts.ts';
import { drawAddedWork } from './added-work-sheet.ts';
import { drawBuildSheet } from './build-sheet.ts';
import { drawClaimTicket } from './claim-ticket-sheet.ts';
import type { PaperName, Papers } from './contract/papers.ts';
import { drawDropOff } from './drop-off-sheet.ts';
import { drawEstimate } from './estimate-sheet.ts';
import { drawInvoice } from './invoice-sheet.ts';
import { drawReadyLabels } from './ready-label-sheet.ts';
import { drawReceipt } from './receipt-sheet.ts';
import { drawRelease } from './release-sheet.ts';
import { drawTags } from './tags-sheet.ts';
import { drawTraveller } from './traveller-sheet.ts';

type Draw<N extends PaperName> = (fonts: Fonts, paper: Papers[N]) => Promise<Uint8Array>;

const DRAWINGS: { readonly [N in PaperName]: Draw<N> } = {
  'claim-ticket': drawClaimTicket,
  traveller: drawTraveller,
  'casting-tag': drawTags,
  'bag-tag': drawTags,
  estimate: drawEstimate,
  'added-work': drawAddedWork,
  'build-sheet': drawBuildSheet,
  invoice: drawInvoice,
  receipt: drawReceipt,
  release: drawRelease,
  'ready-label': drawReadyLabels,
  'drop-off': drawDropOff,
};

/** True for the name of a paper. */
const isPaperName = (name: string): name is PaperName => Object.hasOwn(DRAWINGS, name);

/** The bytes of the PDF. Equal input gives equal bytes. */
export const drawPaper = <N extends PaperName>(fonts: Fonts, name: N, paper: Papers[N]): Promise<Uint8Array> =>
  DRAWINGS[name](fonts, paper);

/** The same for a name and data that came from another thread. @throws RangeError for a name that is no paper. */
export function drawNamed(fonts: Fonts, name: string, data: unknown): Promise<Uint8Array> {
  if (!isPaperName(name)) throw new RangeError(`no paper is called ${name}`);
  return drawPaper(fonts, name, data as Papers[typeof name]);
}
