/** Stands for the `electron` package in tests: records windows, handlers and what was asked of the system. */
import { EventEmitter } from 'node:events';

type Handler = (...args: never[]) => unknown;

class FakeContents extends EventEmitter {
  openHandler: (() => { action: string }) | undefined;
  sent: [channel: string, what: unknown][] = [];
  reloads = 0;
  printed: unknown[] = [];
  setWindowOpenHandler(handler: () => { action: string }): void {
    this.openHandler = handler;
  }
  send(channel: string, what: unknown): void {
    this.sent.push([channel, what]);
  }
  reload(): void {
    this.reloads += 1;
  }
  print(options: unknown, done: (success: boolean) => void): void {
    this.printed.push(options);
    done(true);
  }
}

export class BrowserWindow extends EventEmitter {
  static made: BrowserWindow[] = [];
  readonly options: Record<string, unknown> & { webPreferences: Record<string, unknown> };
  readonly webContents = new FakeContents();
  loaded: string[] = [];
  shown = false;
  focused = 0;
  constructor(options: never) {
    super();
    this.options = options;
    BrowserWindow.made.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(url: string): Promise<void> {
    this.loaded.push(url);
  }
  async loadFile(path: string): Promise<void> {
    this.loaded.push(path);
  }
  show(): void {
    this.shown = true;
  }
  focus(): void {
    this.focused += 1;
  }
  restore(): void {}
  maximize(): void {}
  destroy(): void {}
  isMinimized(): boolean {
    return false;
  }
  isMaximized(): boolean {
    return false;
  }
  getNormalBounds() {
    return { x: 10, y: 20, width: 1400, height: 900 };
  }
}

class App extends EventEmitter {
  isPackaged = false;
  userData = '';
  lock = true;
  quits = 0;
  exits: number[] = [];
  relaunched: unknown[] = [];
  requestSingleInstanceLock = (): boolean => this.lock;
  whenReady = (): Promise<void> => Promise.resolve();
  getPath = (): string => this.userData;
  relaunch(options: unknown): void {
    this.relaunched.push(options);
  }
  quit(): void {
    this.quits += 1;
  }
  exit(code: number): void {
    this.exits.push(code);
  }
}

export const app = new App();
export const ipcMain = {
  handlers: new Map<string, Handler>(),
  handle(channel: string, handler: Handler): void {
    this.handlers.set(channel, handler);
  },
};
export const protocol = {
  privileged: [] as unknown[],
  handlers: new Map<string, Handler>(),
  registerSchemesAsPrivileged(schemes: unknown[]): void {
    this.privileged.push(...schemes);
  },
  handle(scheme: string, handler: Handler): void {
    this.handlers.set(scheme, handler);
  },
};
export const session = {
  defaultSession: {
    request: undefined as Handler | undefined,
    check: undefined as Handler | undefined,
    device: undefined as Handler | undefined,
    setPermissionRequestHandler(handler: Handler): void {
      this.request = handler;
    },
    setPermissionCheckHandler(handler: Handler): void {
      this.check = handler;
    },
    setDevicePermissionHandler(handler: Handler): void {
      this.device = handler;
    },
  },
};
export const Menu = {
  set: [] as unknown[],
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu(menu: unknown): void {
    this.set.push(menu);
  },
};
export const dialog = {
  asked: [] as unknown[],
  answer: { canceled: true, filePath: undefined as string | undefined, filePaths: [] as string[] },
  boxes: [] as [title: string, text: string][],
  async showSaveDialog(...args: unknown[]) {
    dialog.asked.push(args);
    return dialog.answer;
  },
  async showOpenDialog(...args: unknown[]) {
    dialog.asked.push(args);
    return dialog.answer;
  },
  async showMessageBox(...args: unknown[]) {
    dialog.asked.push(args);
    return { response: 1 };
  },
  showErrorBox(title: string, text: string): void {
    dialog.boxes.push([title, text]);
  },
};
export const shell = {
  opened: [] as string[],
  async openPath(path: string): Promise<string> {
    shell.opened.push(path);
    return '';
  },
};
export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] };
export const bridge: Record<string, Record<string, Handler>> = {};
export const contextBridge = {
  exposeInMainWorld(name: string, api: Record<string, Handler>): void {
    bridge[name] = api;
  },
};
export const ipcRenderer = Object.assign(new EventEmitter(), {
  invoked: [] as [channel: string, request: unknown][],
  async invoke(channel: string, request: unknown) {
    ipcRenderer.invoked.push([channel, request]);
    return { ok: true };
  },
});
