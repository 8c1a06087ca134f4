/** The four kinds of tests. Programs they need (browser, PDF and bar code readers) are fetched once, before all. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  test: {
    globalSetup: [at('./tests/kit/programs-setup.ts')],
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/{core,demo-data,whole}/**/*.test.ts'],
          // One process keeps its modules for all files, which is 10 times faster; no module of core holds state.
          isolate: false,
          // The first test of a process loads the whole practice shop.
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'electron',
          include: ['tests/electron/**/*.test.ts'],
          alias: { electron: at('./tests/kit/electron.ts') },
          testTimeout: 20_000,
        },
      },
      {
        extends: true,
        plugins: [react()],
        test: {
          name: 'renderer',
          include: ['tests/renderer/**/*.test.{ts,tsx}'],
          environment: 'happy-dom',
          css: { modules: { classNameStrategy: 'non-scoped' } },
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          globalSetup: [at('./tests/kit/built-screens.ts')],
          // After all others, so that a browser does not have to share the processor with them.
          sequence: { groupOrder: 1 },
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
