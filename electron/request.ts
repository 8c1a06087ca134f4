/**
 * `npm run request -- <name> '<json>' --as <initials> [--workspace DIR] [--pin PIN]`: any command or query through the same
 * door as the screens. Talks to the running program, else opens the workspace itself; there are never two owners.
 */
import { parseArgs } from 'node:util';
import type { Reply, Request } from '#core/host/reply.ts';
import { AppError } from '#core/kernel/errors.ts';
import { openWorkspace } from './wiring/open-workspace.ts';
import { readRunning } from './wiring/owner-lock.ts';
import { commandLineSession } from './wiring/sessions.ts';
import { lastWorkspace, pathsOf } from './wiring/workspace-folder.ts';

const USAGE = "npm run request -- <name> '<json>' --as <initials> [--workspace DIR]";

type Asked = Readonly<{ request: Request; initials: string | undefined; folder: string }>;

function readArguments(args: readonly string[]): Asked {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { as: { type: 'string' }, workspace: { type: 'string' }, pin: { type: 'string' } },
  });
  const [name, json = '{}'] = positionals;
  if (!name) throw new AppError('invalid-input', 'request/usage', USAGE);
  let input: unknown;
  try {
    input = JSON.parse(json);
  } catch {
    throw new AppError('invalid-input', 'request/not-json', `The input is not JSON: ${json}`);
  }
  return {
    request: { name, input, pin: values.pin },
    initials: values.as,
    folder: values.workspace ?? lastWorkspace(),
  };
}

/** Ask the running program; undefined when none answers. */
async function askRunning({ request, initials, folder }: Asked): Promise<Reply | undefined> {
  const running = readRunning(pathsOf(folder));
  if (!running?.address || !running.token) return undefined;
  try {
    const response = await fetch(new URL('call', running.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-benchtag-command': running.token },
      body: JSON.stringify({ ...request, initials }),
      signal: AbortSignal.timeout(60_000),
    });
    return (await response.json()) as Reply;
  } catch {
    // Left behind by a program that ended without saying so: the lock tells who owns the folder.
    return undefined;
  }
}

async function askFolder({ request, initials, folder }: Asked): Promise<Reply> {
  const workspace = openWorkspace(folder);
  try {
    return await workspace.answer(request, commandLineSession(workspace.host(), initials));
  } finally {
    await workspace.close();
  }
}

try {
  const asked = readArguments(process.argv.slice(2));
  const reply = (await askRunning(asked)) ?? (await askFolder(asked));
  process.stdout.write(`${JSON.stringify(reply, null, 2)}\n`);
  process.exitCode = reply.ok ? 0 : 1;
} catch (error) {
  if (!(error instanceof AppError)) throw error;
  process.stdout.write(
    `${JSON.stringify({ ok: false, error: { kind: error.kind, code: error.code, message: error.message } }, null, 2)}\n`,
  );
  process.exitCode = 1;
}
