/** Packages for Windows, macOS and Linux. Run `npm run build` first; the packaging itself needs Electron's own binary. */
import type { Configuration } from 'electron-builder';

const config = {
  appId: 'com.example.benchtag',
  productName: 'Benchtag',
  directories: { output: 'dist/packages' },
  files: ['dist/electron/**', 'dist/renderer/**', 'assets/**', 'demo-data/**/*.{json,jpg}', 'package.json'],
  extraMetadata: { main: 'dist/electron/main.js' },
  // better-sqlite3 brings Node-API builds for every platform; they are loaded from outside the archive.
  npmRebuild: false,
  asar: true,
  asarUnpack: ['**/*.node'],
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
  },
  win: { target: ['nsis'] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: { target: ['dmg'], category: 'public.app-category.business', hardenedRuntime: true },
  linux: { target: ['AppImage', 'deb'], category: 'Office', maintainer: 'Benchtag' },
} satisfies Configuration;

export default config;
