/**
 * How much the screens may weigh, gzipped. A tablet at the bench pays for every kilobyte of the first load: the entry, the
 * bench area, and what these two import at once. What is loaded later counts in the whole only.
 */
import { existsSync, readFileSync } from 'node:fs';

const folder = 'dist/renderer';
const manifestFile = `${folder}/.vite/manifest.json`;
const BENCH = 'screens/bench/routes.tsx';

/** A chunk of the manifest and all it imports statically, as files with their styles. */
function filesOf(manifest, key, seen = new Set()) {
  if (seen.has(key)) {
    return [];
  }
  seen.add(key);
  const { file, css = [], imports = [] } = manifest[key];
  return [file, ...css, ...imports.flatMap((next) => filesOf(manifest, next, seen))];
}

function filesOfBench() {
  if (!existsSync(manifestFile)) {
    throw new Error(`${manifestFile} is not there: run "npm run build" first.`);
  }
  const manifest = JSON.parse(readFileSync(manifestFile, 'utf8'));
  const starts = Object.keys(manifest).filter((key) => manifest[key].isEntry || key === BENCH);
  if (!starts.includes(BENCH)) {
    throw new Error(`No chunk of the bench in the manifest: renderer/app loads renderer/${BENCH} lazily.`);
  }
  return [...new Set(starts.flatMap((key) => filesOf(manifest, key)))].map((file) => `${folder}/${file}`);
}

export default [
  { name: 'first load of the bench', path: filesOfBench(), limit: '130 kB', gzip: true },
  { name: 'all screens', path: `${folder}/assets/*.js`, limit: '350 kB', gzip: true },
];
