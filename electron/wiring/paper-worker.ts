/** Runs in the drawing thread: opens the faces once and draws every paper by its name. */
import { parentPort, workerData } from 'node:worker_threads';
import { openFonts } from '#core/paper/fonts.ts';
import { serveDrawings } from '#core/paper/worker.ts';
import { drawNamed } from '#core/sheets/any-sheet.ts';

const fonts = openFonts((workerData as Readonly<{ fonts: string }>).fonts);
if (parentPort) serveDrawings(parentPort, (sheet, data) => drawNamed(fonts, sheet, data));
