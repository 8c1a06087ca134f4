/**
 * Bundles the desktop host: the main process and its workers as modules, the preload (`--mode preload`) as one CommonJS
 * file, which is all that a sandboxed preload may be. Packages stay outside; electron-builder packs them.
 */
import { basename } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

/**
 * Bundles each file that the source names by `new URL('./name.ts', import.meta.url)`, a worker, as a chunk of its own and
 * names the chunk instead: in the bundle there is no `./name.ts`.
 */
function bundleWorkers(): Plugin {
  return {
    name: 'benchtag-workers',
    async transform(code, importer) {
      let out = code;
      for (const [whole, path] of code.matchAll(/new URL\(\s*['"](\.[^'"]+\.ts)['"],\s*import\.meta\.url,?\s*\)/g)) {
        const found = path === undefined ? null : await this.resolve(path, importer);
        if (found) {
          const fileName = basename(found.id).replace(/\.ts$/, '.js');
          this.emitFile({ type: 'chunk', id: found.id, fileName });
          out = out.replace(whole, `new URL('./${fileName}', import.meta.url)`);
        }
      }
      return out === code ? null : { code: out, map: null };
    },
  };
}

export default defineConfig(({ mode }) => {
  const isPreload = mode === 'preload';
  return {
    publicDir: false,
    plugins: [bundleWorkers()],
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
            // All in one folder, two below the root, as the sources are: paths to assets/ stay right.
            output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name].js' },
          },
    },
  };
});
