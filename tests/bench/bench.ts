/**
 * `npm run bench [-- sizes]`: one JSON line a figure, with its raw-SQLite baseline of the same run and the ratio, at 1 500 and
 * at 120 000 tickets. Nothing here fails a test: it is read by people, on a machine that does nothing else.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makePracticeShop } from '#demo-data/practice-shop.ts';
import { openWorkspace } from '#electron/wiring/open-workspace.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { COMPUTING } from './computing.ts';
import { makeFigures } from './figures.ts';
import { fill } from './fill.ts';

const USUAL = [1500, 120_000];
const say = (line: unknown): void => void process.stdout.write(`${JSON.stringify(line)}\n`);

for (const { name, mostMs, run } of COMPUTING) {
  const { p50, p95, runs } = await run();
  say({ figure: name, p50_ms: p50, p95_ms: p95, most_ms: mostMs, runs });
}

const sizes = process.argv
  .slice(2)
  .map(Number)
  .filter((n) => n > 0);
for (const tickets of sizes.length > 0 ? sizes : USUAL) {
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-bench-'));
  try {
    await makePracticeShop(folder);
    const workspace = openWorkspace(folder);
    const filled = fill(workspace.host().sqlite, tickets);
    say({ figure: 'filled', ...filled, seconds: Math.round(filled.seconds) });
    const owner = commandLineSession(workspace.host(), 'OB');
    for (const figure of await makeFigures(workspace, owner)) {
      const { app, raw } = await figure.run();
      say({
        figure: figure.name,
        tickets,
        p50_ms: app.p50,
        p95_ms: app.p95,
        raw_p50_ms: raw.p50,
        raw_p95_ms: raw.p95,
        ratio: Math.round((app.p50 / raw.p50) * 100) / 100,
        runs: app.runs,
        raw: figure.raw,
      });
    }
    await workspace.close();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
