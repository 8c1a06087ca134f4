import { FuseV1Options } from '@electron/fuses';
import { validateConfiguration } from 'app-builder-lib/out/util/config/config.js';
import { describe, expect, it } from 'vitest';
import config from '../../electron-builder.config.ts';

const validate = (what: unknown) =>
  validateConfiguration(structuredClone(what) as never, { isEnabled: false, add() {} } as never);

describe('electron-builder.config.ts', () => {
  it('is what electron-builder understands (its own schema)', async () => {
    await expect(validate(config)).resolves.toBeUndefined();
  });

  it('would not pass with a word that is none', async () => {
    await expect(validate({ ...config, npmRebuilt: false })).rejects.toThrow(/npmRebuilt/);
  });

  it('shuts the doors that fuses shut', () => {
    expect(config.electronFuses).toMatchObject({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      onlyLoadAppFromAsar: true,
      enableEmbeddedAsarIntegrityValidation: true,
    });
  });

  it('names fuses that Electron has (its own list)', () => {
    const known = Object.keys(FuseV1Options).map((name) => name.toLowerCase());

    const named = Object.keys(config.electronFuses).map((name) => name.toLowerCase());

    expect(named.filter((name) => !known.includes(name))).toEqual([]);
    expect(named.length).toBeGreaterThan(4);
  });
});
