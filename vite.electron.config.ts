/**
 * Bundles the desktop host: the main process and its workers as modules, the preload (`--mode preload`) as one CommonJS
 * file, which is all that a sandboxed preload may be. Packages stay outside; electron-builder packs them.
 */
import { basename, join, relative } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

const ROOT = import.meta.dirname;
/** The main process names its neighbours in the bundle: the preload and the built screens. */
const KNOWS_THE_BUNDLE = join(ROOT, 'electron/desktop/main.ts');

/**
 * Keeps paths right that are relative to a source file.
 *
 * A file that the source names by `new URL('./name.ts', import.meta.url)`, a worker, becomes a chunk of its own, and the
 * chunk is named instead. Everything else (fonts, catalogue, practice shop) is looked for from where the source lies.
 */
function keepPathsRight(): Plugin {
  return {
    name: 'benchtag-paths',
    async transform(code, id) {
      if (!code.includes('import.meta.url') || id === KNOWS_THE_BUNDLE || id.includes('node_modules')) {
        return null;
      }
      const workers = [...code.matchAll(/new URL\(\s*['"](\.[^'"]+\.ts)['"],\s*import\.meta\.url,?\s*\)/g)];
      // From dist/electron back to the source file.
      const place = `new URL('../../${relative(ROOT, id).replaceAll('\\', '/')}', import.meta.url).href`;
      let out = code.replaceAll('import.meta.url', place);
      for (const [whole, path] of workers) {
        const found = path === undefined ? null : await this.resolve(path, id);
        if (found) {
          const fileName = basename(found.id).replace(/\.ts$/, '.js');
          this.emitFile({ type: 'chunk', id: found.id, fileName });
          out = out.replace(whole.replace('import.meta.url', place), `new URL('./${fileName}', import.meta.url)`);
        }
      }
      return { code: out, map: null };
    },
  };
}

export default defineConfig(({ mode }) => {
  const isPreload = mode === 'preload';
  return {
    publicDir: false,
    plugins: [keepPathsRight()],
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
