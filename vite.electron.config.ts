/**
 * Bundles the desktop host: the main process as one module, the preload (`--mode preload`) as one CommonJS file, which
 * is all that a sandboxed preload may be. Packages stay outside; electron-builder packs them.
 */
import { defineConfig } from 'vite';

export default defineConfig(({ mode }) => {
  const isPreload = mode === 'preload';
  return {
    publicDir: false,
    build: {
      ssr: true,
      target: 'node24',
      outDir: 'dist/electron',
      emptyOutDir: !isPreload,
      rolldownOptions: isPreload
        ? {
            input: { preload: 'electron/desktop/preload.ts' },
            external: ['electron'],
            output: { format: 'cjs', entryFileNames: '[name].cjs' },
          }
        : {
            input: { main: 'electron/desktop/main.ts' },
            external: ['electron', 'better-sqlite3'],
            output: { format: 'es', entryFileNames: '[name].js' },
          },
    },
  };
});
