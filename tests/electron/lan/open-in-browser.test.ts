import { describe, expect, it } from 'vitest';
import { openerOf } from '#electron/lan/open-in-browser.ts';

describe('openerOf', () => {
  it.each([
    ['darwin', {}, 501, ['open']],
    ['win32', {}, undefined, ['cmd', '/c', 'start', '']],
    ['linux', { DISPLAY: ':0' }, 1000, ['xdg-open']],
    ['linux', {}, 1000, undefined],
    ['linux', { DISPLAY: ':0' }, 0, undefined],
  ] as const)('on %s with %o', (platform, environment, uid, opener) => {
    expect(openerOf(platform, environment, uid)).toEqual(opener);
  });
});
