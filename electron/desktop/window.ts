/** The one window: hardened, locked to our own page, remembering where it stood. */
import { readFileSync, writeFileSync } from 'node:fs';
import type { BrowserWindow, BrowserWindowConstructorOptions, Rectangle, Session, WebContents } from 'electron';
import { isOurAddress } from './app-protocol.ts';

const SMALLEST = { width: 1024, height: 700 };
const FIRST = { width: 1366, height: 768 };

/** What a page in the window may be: isolated, sandboxed, without Node. */
const safePreferences = (preload: string) =>
  ({
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    webviewTag: false,
    // The built-in PDF viewer, in which papers are seen before they are printed.
    plugins: true,
    spellcheck: false,
  }) as const;

type Kept = Readonly<{ bounds: Rectangle; maximized: boolean }>;

/** Options of the window; a place that is on no screen any more is forgotten. */
export function windowOptions(
  preload: string,
  kept: Kept | undefined,
  screens: readonly Rectangle[],
): BrowserWindowConstructorOptions {
  const seen = kept && screens.some((screen) => overlaps(screen, kept.bounds)) ? kept.bounds : undefined;
  return {
    ...FIRST,
    ...seen,
    minWidth: SMALLEST.width,
    minHeight: SMALLEST.height,
    show: false,
    backgroundColor: '#d8dcdb',
    title: 'Benchtag',
    webPreferences: safePreferences(preload),
  };
}

const overlaps = (a: Rectangle, b: Rectangle): boolean =>
  b.x < a.x + a.width && b.x + b.width > a.x && b.y < a.y + a.height && b.y + b.height > a.y;

export function readKept(file: string): Kept | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Kept;
  } catch {
    return undefined;
  }
}

/** Remember where the window stands whenever it closes. */
export function keepPlace(window: Pick<BrowserWindow, 'on' | 'getNormalBounds' | 'isMaximized'>, file: string): void {
  window.on('close', () => {
    const kept: Kept = { bounds: window.getNormalBounds(), maximized: window.isMaximized() };
    try {
      writeFileSync(file, JSON.stringify(kept));
    } catch {
      // Where the window stood is not worth a word when the disk is full.
    }
  });
}

/** No page but ours, no second window, no download by a link, no attached web view. */
export function lockContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-navigate', (event) => {
    if (!isOurAddress(event.url)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => {
    if (!isOurAddress(event.url)) event.preventDefault();
  });
  contents.on('will-attach-webview', (event) => event.preventDefault());
}

/** Nothing is permitted: no camera, microphone, place, notification, clipboard reading. */
export function refusePermissions(
  session: Pick<Session, 'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'>,
): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}
