/**
 * Pairing of a browser: whoever reads the code where Benchtag was started may open it here. The browser then keeps a token
 * in a cookie that no script can read; without it nothing is answered but this page.
 */
import { randomInt, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

const COOKIE = 'benchtag_device';
const DIGITS = 8;
const MOST_WRONG = 20;

export type PairingCode = Readonly<{ code: string; matches(typed: string): boolean }>;

/** A code for this run of the program. After twenty wrong ones it matches nothing until the next start. */
export function makePairingCode(): PairingCode {
  const code = String(randomInt(0, 10 ** DIGITS)).padStart(DIGITS, '0');
  let wrong = 0;
  return {
    code,
    matches(typed) {
      if (wrong >= MOST_WRONG) return false;
      const right = typed.length === code.length && timingSafeEqual(Buffer.from(typed), Buffer.from(code));
      if (!right) wrong += 1;
      return right;
    },
  };
}

/** The token that the browser shows, or undefined. */
export function tokenOf(request: IncomingMessage): string | undefined {
  for (const part of (request.headers.cookie ?? '').split(';')) {
    const [name, value] = part.trim().split('=');
    if (name === COOKIE && value) return value;
  }
  return undefined;
}

const TEN_YEARS = 10 * 365 * 24 * 3600;
export const cookieOf = (token: string): string =>
  `${COOKIE}=${token}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${TEN_YEARS}`;

/** The page of a browser that is not paired. No script, no style from outside. */
export const pairingPage = (wrong: boolean): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Benchtag</title>
<link rel="icon" href="/icon.svg"></head>
<body><main><h1>Benchtag</h1>
<p>This screen is not paired with the shop yet. Type the code that stands where Benchtag was started.</p>
${wrong ? '<p role="alert"><strong>That is not the code. Look again where Benchtag was started.</strong></p>' : ''}
<form method="get" action="/pair"><label>Code <input name="code" inputmode="numeric" autocomplete="off" autofocus required></label>
<button>Pair this screen</button></form></main></body></html>`;
