/** All that the page sees of the desktop: one call and one listener. Runs sandboxed. */
import { contextBridge, ipcRenderer } from 'electron';

// A sandboxed preload is one file: the names of the channels are repeated here and compared by a test.
const CALL = 'app:call';
const CHANGED = 'app:changed';

contextBridge.exposeInMainWorld('benchtag', {
  call: (request: unknown) => ipcRenderer.invoke(CALL, request),
  onChange(listener: (what: unknown) => void) {
    const heard = (_event: unknown, what: unknown): void => listener(what);
    ipcRenderer.on(CHANGED, heard);
    return () => ipcRenderer.removeListener(CHANGED, heard);
  },
});
