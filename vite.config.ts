/** Builds the screens: one build for the desktop window and for a browser. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    manifest: true,
    target: 'chrome130',
    // The content policy allows no data: addresses but for pictures of ours, so fonts and icons stay files.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
