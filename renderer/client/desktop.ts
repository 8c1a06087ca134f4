/** What only the desktop window can do with a paper. In a browser there is none of it, and the browser's own ways serve. */
import { notReached, RequestRefused } from './request-refused.ts';

/** A kept paper: its hash and the name it gets as a file. */
export type PaperFile = Readonly<{ sha256: string; name: string }>;

export const isDesktop = (): boolean => 'benchtag' in window;

/** @throws RequestRefused */
async function ask(name: string, file: PaperFile): Promise<unknown> {
  if (!window.benchtag) throw notReached();
  const reply = await window.benchtag.call({ name, input: file });
  if (!reply.ok) throw new RequestRefused(reply.error);
  return reply.output;
}

/** The printer dialog of the system. @returns whether it was printed @throws RequestRefused */
export async function printOnDesktop(file: PaperFile): Promise<boolean> {
  const output = await ask('desktop/print-paper', file);
  return typeof output === 'object' && output !== null && 'printed' in output && output.printed === true;
}

/** Where the person says. @returns whether it was saved @throws RequestRefused */
export async function saveOnDesktop(file: PaperFile): Promise<boolean> {
  const output = await ask('desktop/save-paper', file);
  return typeof output === 'object' && output !== null && 'saved' in output && typeof output.saved === 'string';
}
