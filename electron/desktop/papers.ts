/** What only the desktop can do with a printed paper: print it, save it where the person says, show it in the viewer. */
import { copyFile, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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

/** The requests: `desktop/print-paper`, `desktop/save-paper`, `desktop/view-paper`, each `{sha256, name}`. */
export function makePapers(outside: Outside): Papers {
  const acts: Readonly<Record<string, (file: File) => Promise<unknown>>> = {
    'desktop/print-paper': (file) => print(outside, file),
    'desktop/save-paper': (file) => save(outside, file),
    'desktop/view-paper': (file) => view(outside, file),
  };
  return {
    async answer(request) {
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
      try {
        return { ok: true, output: await act(file), touched: [], at: outside.host().clock().toISOString() };
      } catch (error) {
        outside.host().log('warn', { request: request.name, error: String(error) });
        const message = 'The computer did not take the paper. It is kept; try again, or save it as a file.';
        return { ok: false, error: { kind: 'unavailable', code: 'desktop/not-taken', message } };
      }
    },
  };
}

function readFile(input: unknown): File | undefined {
  if (typeof input !== 'object' || input === null || !('sha256' in input) || !('name' in input)) return undefined;
  const { sha256, name } = input;
  if (typeof sha256 !== 'string' || typeof name !== 'string') return undefined;
  // Only a file name: no folder in it, and nothing a file system trips over.
  return { sha256, name: name.replaceAll(/[^\p{L}\p{N} ._-]/gu, ' ').slice(0, 150) };
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
  const window = outside.window();
  const options = { defaultPath: file.name, filters: [{ name: 'PDF', extensions: ['pdf'] }] };
  const chosen = window
    ? await outside.dialog.showSaveDialog(window, options)
    : await outside.dialog.showSaveDialog(options);
  if (chosen.canceled || !chosen.filePath) return { saved: null };
  await copyFile(await copyOut(outside.host(), file), chosen.filePath);
  return { saved: chosen.filePath };
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
