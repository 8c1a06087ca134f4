/** Opens an address in the person's own browser, where there is a desktop to open it on. */
import { spawn } from 'node:child_process';

/** The command of this system, or undefined where no window can come up. */
export function openerOf(
  platform: NodeJS.Platform,
  environment: NodeJS.ProcessEnv,
  uid: number | undefined,
): readonly [command: string, ...before: string[]] | undefined {
  if (platform === 'darwin') return ['open'];
  // The empty word is the title that `start` takes first.
  if (platform === 'win32') return ['cmd', '/c', 'start', ''];
  const hasDisplay = Boolean(environment.DISPLAY || environment.WAYLAND_DISPLAY);
  return hasDisplay && uid !== 0 ? ['xdg-open'] : undefined;
}

/** Try it; the address is printed anyway, so nothing is said when it does not work. */
export function openInBrowser(address: string): void {
  const opener = openerOf(process.platform, process.env, process.getuid?.());
  if (!opener) return;
  const [command, ...before] = opener;
  const child = spawn(command, [...before, address], { stdio: 'ignore', detached: true });
  child.once('error', () => undefined);
  child.unref();
}
