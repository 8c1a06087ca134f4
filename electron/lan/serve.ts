/** Serves a workspace to browsers of this computer, and only of this computer. */
import { randomBytes } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { RunningApp } from '../wiring/open-app.ts';
import { answerHttp } from './http-adapter.ts';
import { makePairingCode } from './pairing.ts';

/** The shop's network is not served yet: other computers get no answer at all. */
const HERE = '127.0.0.1';
export const USUAL_PORT = 4170;
const SCREENS = fileURLToPath(new URL('../../dist/renderer', import.meta.url));

export type Serving = Readonly<{
  /** For example `http://127.0.0.1:4170/`. */
  address: string;
  /** Opens the app in a browser and pairs it. */
  pairingAddress: string;
  stop(): Promise<void>;
}>;

/**
 * Start serving.
 *
 * @param port the usual one when empty; another free one when that is taken; 0 for any
 */
export async function serveWorkspace(
  app: RunningApp,
  { port = USUAL_PORT, screens = SCREENS }: Readonly<{ port?: number; screens?: string }> = {},
): Promise<Serving> {
  const pairing = makePairingCode();
  const commandToken = randomBytes(24).toString('hex');
  let actual = port;
  const server = createServer((request, response) => {
    void answerHttp(
      { app, pairing, screens, commandToken, hosts: () => [`${HERE}:${actual}`, `localhost:${actual}`] },
      request,
      response,
    );
  });
  await listen(server, port).catch(() => listen(server, 0));
  actual = (server.address() as AddressInfo).port;
  const address = `http://${HERE}:${actual}/`;
  app.tell({ address, token: commandToken });
  return {
    address,
    pairingAddress: `${address}pair?code=${pairing.code}`,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, HERE, () => {
      server.removeListener('error', reject);
      resolve();
    });
  });
}
