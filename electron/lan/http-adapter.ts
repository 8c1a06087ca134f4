/**
 * The same host over http, on this computer only: requests, files, events and the screens.
 *
 * Answers only when the address in the request is one of ours (a page elsewhere cannot be made to point here by a changed
 * name server), only same-origin writes, and only a paired browser.
 */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { toReplyError } from '#core/host/failure.ts';
import type { Reply, Request } from '#core/host/reply.ts';
import type { Session } from '#core/host/session.ts';
import { AppError } from '#core/kernel/errors.ts';
import { resolveSession } from '#core/staff/handlers/sessions.ts';
import { SAFE_HEADERS } from '../wiring/content-policy.ts';
import type { RunningApp } from '../wiring/open-app.ts';
import { commandLineSession, deviceOfToken, pairDevice } from '../wiring/sessions.ts';
import { findStatic, sendStatic } from '../wiring/static-files.ts';
import { readBody } from './body.ts';
import { sendEvents } from './events.ts';
import { sendKept, takeFile } from './kept-files.ts';
import { cookieOf, type PairingCode, pairingPage, tokenOf } from './pairing.ts';

export type Served = Readonly<{
  app: RunningApp;
  pairing: PairingCode;
  /** Folder of the built screens. */
  screens: string;
  /** Host headers that are ours, for example `127.0.0.1:4170`. */
  hosts(): readonly string[];
  /** Lets the command line of this person in, see running.json. */
  commandToken: string;
}>;

const MOST_REQUEST = 4 * 1024 * 1024;

/** Answer one http request. Never throws. */
export async function answerHttp(served: Served, request: IncomingMessage, response: ServerResponse): Promise<void> {
  for (const [name, value] of Object.entries(SAFE_HEADERS)) response.setHeader(name, value);
  try {
    await route(served, request, response);
  } catch (error) {
    if (response.headersSent) response.destroy();
    else sendReply(response, { ok: false, error: toReplyError(error, served.app.host(), request.url ?? '') });
  }
}

async function route(served: Served, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (!served.hosts().includes(request.headers.host ?? ''))
    return sendText(response, 421, 'This address is not served here.');
  const url = new URL(request.url ?? '/', `http://${request.headers.host}`);
  if (url.pathname === '/icon.svg') return sendScreen(served, url.pathname, response);
  if (url.pathname === '/pair') return pair(served, url, request, response);
  const isCommandLine = request.headers['x-benchtag-command'] === served.commandToken;
  const device = deviceOfToken(served.app.host(), tokenOf(request));
  if (device === null && !isCommandLine) return sendHtml(response, 401, pairingPage(false));
  if (request.method === 'POST') return write(served, { url, request, response, isCommandLine });
  if (request.method !== 'GET') return sendText(response, 405, 'Only GET and POST are answered.');
  if (url.pathname === '/events') return sendEvents(served.app, request, response);
  if (url.pathname.startsWith('/files/'))
    return sendKept(served.app.host(), url.pathname.slice('/files/'.length), response);
  return sendScreen(served, url.pathname, response);
}

type Written = Readonly<{ url: URL; request: IncomingMessage; response: ServerResponse; isCommandLine: boolean }>;

async function write(served: Served, { url, request, response, isCommandLine }: Written): Promise<void> {
  const origin = request.headers.origin;
  if (origin !== undefined && origin !== url.origin) return sendText(response, 403, 'Only our own screens may write.');
  if (url.pathname === '/call') {
    if (!request.headers['content-type']?.startsWith('application/json'))
      return sendText(response, 415, 'Requests are JSON.');
    const asked = readRequest(await readBody(request, MOST_REQUEST));
    const session = isCommandLine ? commandSession(served, asked) : browserSession(served, request, asked);
    return sendReply(response, await served.app.answer(asked, session));
  }
  if (url.pathname === '/files') return sendReply(response, await takeFile(served.app.host(), request));
  return sendText(response, 404, 'Nothing is here.');
}

const browserSession = (served: Served, request: IncomingMessage, asked: Request): Session => {
  const host = served.app.host();
  return resolveSession(host, {
    device: deviceOfToken(host, tokenOf(request)),
    as: asked.as,
    from: 'browser',
    atTheMachine: true,
  });
};

const commandSession = (served: Served, asked: Request & { initials?: string }): Session =>
  commandLineSession(served.app.host(), asked.initials);

function readRequest(body: Buffer): Request & { initials?: string } {
  let parsed: unknown;
  try {
    parsed = JSON.parse(body.toString('utf8'));
  } catch {
    throw new AppError('invalid-input', 'http/not-json', 'The request is not JSON.');
  }
  if (typeof parsed !== 'object' || parsed === null || !('name' in parsed) || typeof parsed.name !== 'string') {
    throw new AppError('invalid-input', 'http/no-name', 'The request has no name.');
  }
  return { input: {}, ...parsed } as Request;
}

async function pair(served: Served, url: URL, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const typed = url.searchParams.get('code')?.trim() ?? '';
  if (!served.pairing.matches(typed)) return sendHtml(response, 403, pairingPage(typed !== ''));
  const known = deviceOfToken(served.app.host(), tokenOf(request));
  if (known === null) {
    const name = /mobile|android|ipad|tablet/i.test(request.headers['user-agent'] ?? '')
      ? 'Tablet'
      : 'Browser on this computer';
    response.setHeader(
      'set-cookie',
      cookieOf(await pairDevice(served.app.workspace(), name, name === 'Tablet' ? 'tablet' : 'pc', 'browser')),
    );
  }
  response.writeHead(303, { location: '/' }).end();
}

function sendScreen(served: Served, path: string, response: ServerResponse): void {
  const found = findStatic(served.screens, path);
  if (found) sendStatic(found, response);
  else sendText(response, 404, 'Nothing is here.');
}

/** The body says what happened; a browser logs every other status than 200 as an error of the page, so refusals are 200 too. */
function sendReply(response: ServerResponse, reply: Reply): void {
  const status = !reply.ok && reply.error.kind === 'bug' ? 500 : 200;
  const body = JSON.stringify(reply);
  response.writeHead(status, {
    'content-type': 'application/json; charset=utf-8',
    'cache-control': 'no-store',
    'content-length': Buffer.byteLength(body),
  });
  response.end(body);
}

const sendText = (response: ServerResponse, status: number, text: string): void =>
  void response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8' }).end(text);
const sendHtml = (response: ServerResponse, status: number, html: string): void =>
  void response
    .writeHead(status, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' })
    .end(html);
