/** The desktop program: opens the workspace, the window and the way between them, and ends in order. */
import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, shell } from 'electron';
import { everything } from '#core/host/session.ts';
import { AppError } from '#core/kernel/errors.ts';
import { serveWorkspace } from '../lan/serve.ts';
import { startDailyBackup } from '../wiring/daily-backup.ts';
import { openApp, type RunningApp } from '../wiring/open-app.ts';
import { answerProtocol, ORIGIN, SCHEME, SCHEME_PRIVILEGES } from './app-protocol.ts';
import { makeDesktopDevice } from './device.ts';
import { answerIpc, CHANGED } from './ipc-adapter.ts';
import { menuTemplate } from './menu.ts';
import { makePapers } from './papers.ts';
import { keepPlace, lockContents, readKept, refusePermissions, windowOptions } from './window.ts';

const PRELOAD = fileURLToPath(new URL('./preload.cjs', import.meta.url));
const SCREENS = fileURLToPath(new URL('../renderer', import.meta.url));

let running: RunningApp | undefined;
let window: BrowserWindow | undefined;
let isEnding = false;

protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: SCHEME_PRIVILEGES }]);

function openWindow(): void {
  const placeFile = join(app.getPath('userData'), 'window.json');
  const kept = readKept(placeFile);
  const made = new BrowserWindow(
    windowOptions(
      PRELOAD,
      kept,
      screen.getAllDisplays().map((d) => d.workArea),
    ),
  );
  window = made;
  keepPlace(made, placeFile);
  if (kept?.maximized) made.maximize();
  made.once('ready-to-show', () => made.show());
  made.on('closed', () => {
    window = undefined;
  });
  made.on('unresponsive', () => void askAboutHang(made));
  made.webContents.on('render-process-gone', (_event, details) => {
    running?.host().log('error', { gone: details.reason, code: details.exitCode });
    // The drafts are in the workspace: loading the page again brings them back.
    if (details.reason !== 'clean-exit' && !isEnding) made.webContents.reload();
  });
  void made.loadURL(`${ORIGIN}/`);
}

async function askAboutHang(made: BrowserWindow): Promise<void> {
  running?.host().log('warn', { unresponsive: true });
  const { response } = await dialog.showMessageBox(made, {
    type: 'question',
    message: 'The window does not answer.',
    detail: 'What was kept is safe. Wait a little, or load the page again.',
    buttons: ['Wait', 'Load again'],
    defaultId: 0,
    cancelId: 0,
  });
  if (response === 1) made.webContents.reload();
}

async function chooseWorkspace(): Promise<void> {
  const chosen = await dialog.showOpenDialog({
    title: 'Open workspace',
    properties: ['openDirectory', 'createDirectory'],
  });
  const [folder] = chosen.filePaths;
  if (chosen.canceled || !folder) return;
  app.relaunch({ args: [...process.argv.slice(1, 2), folder] });
  app.quit();
}

async function saveSupportFile(): Promise<void> {
  const chosen = await dialog.showSaveDialog({ title: 'Save support file', defaultPath: 'benchtag-support.log' });
  const log = running && join(running.workspace().paths.log, 'benchtag.log');
  if (chosen.canceled || !chosen.filePath || !log) return;
  copyFileSync(log, chosen.filePath);
}

async function makeBackup(): Promise<void> {
  const reply = await running
    ?.workspace()
    .answer({ name: 'backup/make-backup', input: {} }, everything('desktop menu'));
  const message = reply?.ok ? 'The backup is made and checked.' : (reply?.error.message ?? 'No workspace is open.');
  await dialog.showMessageBox({ message, buttons: ['OK'] });
}

async function begin(): Promise<void> {
  const folder = process.argv.slice(app.isPackaged ? 1 : 2).find((word) => !word.startsWith('-'));
  const opened = openApp({ folder, home: app.getPath('userData') });
  running = opened;
  mkdirSync(app.getPath('userData'), { recursive: true });
  // The command line, and a browser of this computer, reach the same owner.
  await serveWorkspace(opened, { screens: SCREENS });
  protocol.handle(SCHEME, (request) => answerProtocol({ screens: SCREENS, host: opened.host }, request));
  refusePermissions(session.defaultSession);
  const papers = makePapers({
    host: opened.host,
    window: () => window,
    makeWindow: (options) => new BrowserWindow(options),
    dialog,
    shell,
  });
  answerIpc(ipcMain, {
    app: opened,
    device: makeDesktopDevice(opened, join(app.getPath('userData'), 'device-token')),
    papers,
  });
  opened.onChange((what) => window?.webContents.send(CHANGED, what));
  Menu.setApplicationMenu(
    Menu.buildFromTemplate(
      menuTemplate(process.platform, {
        openWorkspace: () => void chooseWorkspace(),
        showFolder: () => void shell.openPath(opened.workspace().paths.folder),
        saveSupportFile: () => void saveSupportFile(),
        makeBackup: () => void makeBackup(),
      }),
    ),
  );
  openWindow();
  startDailyBackup(opened, (error) => opened.host().log('error', { backup: String(error) }));
}

if (app.requestSingleInstanceLock()) {
  app.on('web-contents-created', (_event, contents) => lockContents(contents));
  app.on('second-instance', () => {
    if (!window) return;
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  app.on('window-all-closed', () => app.quit());
  app.on('activate', () => {
    if (!window && running) openWindow();
  });
  app.on('child-process-gone', (_event, details) =>
    running?.host().log('error', { gone: details.type, reason: details.reason }),
  );
  app.on('before-quit', (event) => {
    if (isEnding || !running) return;
    // Quit waits for the backup of the day and for the database to be shut in order.
    event.preventDefault();
    isEnding = true;
    void running.close({ backup: true }).finally(() => app.quit());
  });
  app
    .whenReady()
    .then(begin)
    .catch((error: unknown) => {
      dialog.showErrorBox(
        'Benchtag could not open',
        error instanceof AppError
          ? error.message
          : 'Something broke while opening. The log of the workspace says more.',
      );
      app.exit(1);
    });
} else {
  app.quit();
}
