/**
 * What only the desktop can do with a printed paper: print it, save it where the person says, show it in the viewer; and with
 * figures written out as text: save them.
 */
import { copyFile, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import type { BrowserWindow, BrowserWindowConstructorOptions, Dialog, Shell } from 'electron';
import type { Host } from '#core/host/host.ts';
import type { Reply, Request } from '#core/host/reply.ts';

export type Papers = Readonly<{
  /** The answer of a `desktop/...` request; undefined for every other one. */
  answer(request: Request): Promise<Reply | undefined>;
}>;

type Outside = Readonly<{
  host(): Host;
  window(): BrowserWindow | undefined;
  makeWindow(options: BrowserWindowConstructorOptions): BrowserWindow;
  dialog: Pick<Dialog, 'showSaveDialog'>;
  shell: Pick<Shell, 'openPath'>;
}>;

type File = Readonly<{ sha256: string; name: string }>;

/**
 * The requests: `desktop/print-paper`, `desktop/save-paper`, `desktop/view-paper`, each `{sha256, name}`, and
 * `desktop/save-text`, `{name, text}`.
 */
export function makePapers(outside: Outside): Papers {
  const acts: Readonly<Record<string, (file: File) => Promise<unknown>>> = {
    'desktop/print-paper': (file) => print(outside, file),
    'desktop/save-paper': (file) => save(outside, file),
    'desktop/view-paper': (file) => view(outside, file),
  };
  return {
    async answer(request) {
      if (request.name === 'desktop/save-text') return saveText(outside, request.input);
      const act = Object.hasOwn(acts, request.name) ? acts[request.name] : undefined;
      if (!act) return undefined;
      const file = readFile(request.input);
      if (!file || !outside.host().services.files.find(file.sha256)) {
        return {
          ok: false,
          error: {
            kind: 'not-found',
            code: 'desktop/no-paper',
            message: 'This paper is not here. Print it again from its page.',
          },
        };
      }
      const message = 'The computer did not take the paper. It is kept; try again, or save it as a file.';
      return answerOf(outside, request.name, message, () => act(file));
    },
  };
}

/** What an act gave; `message` when the computer refused it. */
async function answerOf(
  outside: Outside,
  request: string,
  message: string,
  act: () => Promise<unknown>,
): Promise<Reply> {
  try {
    return { ok: true, output: await act(), touched: [], at: outside.host().clock().toISOString() };
  } catch (error) {
    outside.host().log('warn', { request, error: String(error) });
    return { ok: false, error: { kind: 'unavailable', code: 'desktop/not-taken', message } };
  }
}

/** More text than any casting's readings make. */
const MOST_TEXT = 50_000_000;

async function saveText(outside: Outside, input: unknown): Promise<Reply> {
  const text = textOf(input);
  if (!text) {
    const message = 'There is nothing to save. Go back to the readings and try again.';
    return { ok: false, error: { kind: 'invalid-input', code: 'desktop/no-text', message } };
  }
  const message = 'The file could not be written there. Nothing is lost; save it in another place.';
  return answerOf(outside, 'desktop/save-text', message, async () => {
    const path = await choosePath(outside, text.name);
    if (path !== null) await writeFile(path, text.text, 'utf8');
    return { saved: path };
  });
}

function textOf(input: unknown): Readonly<{ name: string; text: string }> | undefined {
  if (typeof input !== 'object' || input === null || !('text' in input) || !('name' in input)) return undefined;
  const { text, name } = input;
  if (typeof text !== 'string' || typeof name !== 'string' || text.length > MOST_TEXT) return undefined;
  return { text, name: safeName(name) };
}

/** Only a file name: no folder in it, and nothing a file system trips over. */
const safeName = (name: string): string => name.replaceAll(/[^\p{L}\p{N} ._-]/gu, ' ').slice(0, 150);

/** Where the person says; null when they turn back. */
async function choosePath(outside: Outside, name: string): Promise<string | null> {
  const window = outside.window();
  const ending = extname(name).slice(1);
  const options = { defaultPath: name, filters: [{ name: ending.toUpperCase(), extensions: [ending] }] };
  const chosen = window
    ? await outside.dialog.showSaveDialog(window, options)
    : await outside.dialog.showSaveDialog(options);
  return chosen.canceled || !chosen.filePath ? null : chosen.filePath;
}

function readFile(input: unknown): File | undefined {
  if (typeof input !== 'object' || input === null || !('sha256' in input) || !('name' in input)) return undefined;
  const { sha256, name } = input;
  if (typeof sha256 !== 'string' || typeof name !== 'string') return undefined;
  return { sha256, name: safeName(name) };
}

/** A copy under a telling name, in a folder of its own. */
async function copyOut(host: Host, file: File): Promise<string> {
  const path = join(await mkdtemp(join(tmpdir(), 'benchtag-')), file.name);
  await writeFile(path, await host.services.files.read(file.sha256));
  return path;
}

async function view(outside: Outside, file: File): Promise<{ shown: true }> {
  const trouble = await outside.shell.openPath(await copyOut(outside.host(), file));
  if (trouble) throw new Error(trouble);
  return { shown: true };
}

async function save(outside: Outside, file: File): Promise<{ saved: string | null }> {
  const path = await choosePath(outside, file.name);
  if (path !== null) await copyFile(await copyOut(outside.host(), file), path);
  return { saved: path };
}

/** Printing goes through a hidden window that holds nothing but the PDF, and the system's own dialog. */
async function print(outside: Outside, file: File): Promise<{ printed: boolean }> {
  const path = await copyOut(outside.host(), file);
  const window = outside.makeWindow({
    show: false,
    webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, plugins: true },
  });
  try {
    await window.loadFile(path);
    const printed = await new Promise<boolean>((resolve) => {
      window.webContents.print({ silent: false, printBackground: true }, (success) => resolve(success));
    });
    return { printed };
  } finally {
    window.destroy();
  }
}
