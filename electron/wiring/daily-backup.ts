/** A backup each day the program runs, also when nobody closes it for weeks. */
import type { RunningApp } from './open-app.ts';

const AN_HOUR = 3_600_000;

/**
 * Make the backup of the day now where there is none, and look again every hour.
 *
 * @param failed told what went wrong; the next hour tries again
 * @returns the end
 */
export function startDailyBackup(
  app: Pick<RunningApp, 'workspace'>,
  failed: (error: unknown) => void,
  every: number = AN_HOUR,
): () => void {
  const look = (): void => void app.workspace().backupOfTheDay().catch(failed);
  look();
  const timer = setInterval(look, every);
  // The clock alone does not keep the program running.
  timer.unref();
  return () => clearInterval(timer);
}
