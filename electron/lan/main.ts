/** `node electron/lan/main.ts [folder] [--port 4170]`: the app for browsers of this computer, without a desktop window. */
import { parseArgs } from 'node:util';
import { AppError } from '#core/kernel/errors.ts';
import { startDailyBackup } from '../wiring/daily-backup.ts';
import { openApp } from '../wiring/open-app.ts';
import { openInBrowser } from './open-in-browser.ts';
import { serveWorkspace, USUAL_PORT } from './serve.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Serve until the program is told to end. */
export async function runLan(args: readonly string[], why?: string): Promise<void> {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { port: { type: 'string' } },
  });
  try {
    const app = openApp({ folder: positionals[0] });
    const serving = await serveWorkspace(app, {
      port: values.port === undefined ? USUAL_PORT : Number(values.port),
    });
    if (why) say(`No desktop window: ${why}. The same app runs in a browser of this computer.`);
    say(`Workspace ${app.workspace().paths.folder}`);
    say(`Open ${serving.pairingAddress} in a browser. Ctrl C ends it.`);
    openInBrowser(serving.pairingAddress);
    const endBackups = startDailyBackup(app, (error) =>
      say(`The backup of the day could not be made: ${error instanceof Error ? error.message : error}`),
    );
    const end = async (): Promise<void> => {
      endBackups();
      await serving.stop();
      await app.close();
      process.exit(0);
    };
    process.once('SIGINT', () => void end());
    process.once('SIGTERM', () => void end());
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}

if (import.meta.main) await runLan(process.argv.slice(2));
