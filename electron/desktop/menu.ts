/** The menu, with the names and keys of each platform. Areas and acts have their keys in the page itself. */
import type { MenuItemConstructorOptions } from 'electron';

export type MenuActs = Readonly<{
  openWorkspace(): void;
  showFolder(): void;
  saveSupportFile(): void;
  makeBackup(): void;
}>;

/** The template. `zoomIn` and the like are roles, so the system names and translates them. */
export function menuTemplate(platform: NodeJS.Platform, acts: MenuActs): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  const file: MenuItemConstructorOptions = {
    label: isMac ? 'File' : '&File',
    submenu: [
      { label: 'Open workspace ...', accelerator: 'CmdOrCtrl+O', click: acts.openWorkspace },
      { label: isMac ? 'Show workspace in Finder' : 'Show workspace folder', click: acts.showFolder },
      { label: 'Make a backup now', click: acts.makeBackup },
      { type: 'separator' },
      isMac ? { role: 'close' } : { role: 'quit', label: platform === 'win32' ? 'E&xit' : '&Quit' },
    ],
  };
  return [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    file,
    { role: 'editMenu' },
    {
      label: isMac ? 'View' : '&View',
      submenu: [
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'resetZoom' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        { role: 'reload' },
      ],
    },
    { role: 'windowMenu' },
    { role: 'help', submenu: [{ label: 'Save support file ...', click: acts.saveSupportFile }] },
  ];
}
