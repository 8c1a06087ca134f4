/** The arrows between rooms. Each rule says in its comment what breaks when it is broken. */
import { features, rows } from './.ci/rooms.mjs';

const anyOf = (names) => `^core/(${names.join('|')})/`;
const compute = ['^core/[^/]+/compute\\.ts$', '^core/[^/]+/compute/'];
const contract = ['^core/app-contract\\.ts$', '^core/[^/]+/contract\\.ts$', '^core/[^/]+/contract/[^/]+\\.ts$'];
const store = ['^core/[^/]+/store\\.ts$', '^core/[^/]+/store/[^/]+\\.ts$'];
const handlers = ['^core/[^/]+/handlers\\.ts$', '^core/[^/]+/handlers/[^/]+\\.ts$'];
const sheets = ['^core/[^/]+/[^/]+-sheet\\.ts$'];
const npm = (name) => `(^|/)node_modules/${name}/`;

/** What a browser may load. Lists, not one clever expression: nested repeats are refused by the tool. */
const shared = ['^core/kernel/[^/]+\\.ts$', '^core/drawing/[^/]+\\.ts$', ...contract, ...compute];

/** A row must not reach the rows after it, save for their contracts. */
const laterRows = rows.slice(0, -1).map((row, index) => ({
  name: `${row.name}-reaches-no-later-row`,
  severity: 'error',
  comment:
    'Features are built on earlier ones only; two that need each other are one feature or need an act above them.',
  from: { path: anyOf(row.features), pathNot: contract },
  to: { path: anyOf(rows.slice(index + 1).flatMap((later) => later.features)), pathNot: contract },
}));

/** Features of one row keep out of each other's store. */
const siblings = rows
  .filter((row) => row.features.length > 1)
  .map((row) => ({
    name: `${row.name}-siblings-keep-their-stores`,
    severity: 'error',
    comment: 'Two features of one row that write together are joined by an act.',
    from: { path: anyOf(row.features) },
    to: { path: `^core/(${row.features.join('|')})/store(\\.ts$|/)`, pathNot: '^core/$1/' },
  }));

export default {
  forbidden: [
    {
      name: 'core-stands-alone',
      severity: 'error',
      comment: 'core is true without a window or a network, so every host and every test can run it.',
      from: { path: '^core/' },
      to: {
        path: [
          '^(electron|renderer|tests|demo-data)/',
          npm('electron'),
          npm('react'),
          npm('react-dom'),
          npm('@tanstack'),
        ],
      },
    },
    {
      name: 'renderer-sees-shared-core-only',
      severity: 'error',
      comment: 'A screen that loads a store would drag the database into the browser; it asks through renderer/client.',
      from: { path: '^renderer/' },
      to: { path: '^(core|electron|tests|demo-data)/', pathNot: shared },
    },
    {
      name: 'renderer-has-no-node',
      severity: 'error',
      comment: 'The same build runs on a tablet.',
      from: { path: '^renderer/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'shared-core-has-no-io',
      severity: 'error',
      comment: 'Shared files run in the browser: no store, no host, no package but zod.',
      from: { path: shared },
      to: { path: ['^core/', 'node_modules/'], pathNot: [...shared, npm('zod')] },
    },
    {
      name: 'shared-core-has-no-node',
      severity: 'error',
      comment: 'Shared files run in the browser: no Node module.',
      from: { path: shared },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'compute-has-no-zod',
      severity: 'error',
      comment: 'Arithmetic takes values that are checked already.',
      from: { path: compute },
      to: { path: npm('zod') },
    },
    {
      name: 'kernel-imports-nothing-above',
      severity: 'error',
      comment: 'kernel is the floor.',
      from: { path: '^core/kernel/' },
      to: { path: '^core/', pathNot: '^core/kernel/' },
    },
    {
      name: 'ground-is-below-features',
      severity: 'error',
      comment: 'db, paper and drawing know no feature but by its contract and its arithmetic.',
      from: { path: '^core/(db|paper|drawing)/' },
      to: { path: ['^core/host/', anyOf(features)], pathNot: shared },
    },
    {
      name: 'store-is-below-handlers',
      severity: 'error',
      comment: 'A store writes rows for whoever asks; it decides nothing and logs nothing.',
      from: { path: store },
      to: { path: ['^core/host/', ...handlers, ...sheets] },
    },
    {
      name: 'handlers-are-private',
      severity: 'error',
      comment: 'Only the host runs a handler; what two handlers share is a compute or a store.',
      from: { path: '^core/([^/]+)/', pathNot: '^core/host/' },
      to: { path: handlers, pathNot: '^core/$1/' },
    },
    {
      name: 'sheets-only-draw',
      severity: 'error',
      comment: 'A paper is drawn from an answer; it reads no table, so paper and screen cannot differ.',
      from: { path: sheets },
      to: { path: ['^core/(db|host)/', npm('better-sqlite3'), npm('kysely'), ...store, ...handlers] },
    },
    {
      name: 'only-db-opens-sqlite',
      severity: 'error',
      comment:
        'Types are free (boundaries.mjs looks). One door to the file keeps durability, foreign keys and the single owner in one place.',
      from: { path: '^(core|electron|demo-data)/', pathNot: '^core/db/' },
      to: { path: npm('better-sqlite3') },
    },
    {
      name: 'lan-runs-without-electron',
      severity: 'error',
      comment: 'The shop server runs on a machine that has no Electron.',
      from: { path: '^electron/', pathNot: '^electron/desktop/' },
      to: { path: ['^electron/desktop/', npm('electron')] },
    },
    {
      name: 'desktop-and-lan-meet-in-wiring',
      severity: 'error',
      comment: 'What both hosts need lies in electron/wiring; main alone starts the server beside its window.',
      from: { path: '^electron/desktop/', pathNot: '^electron/desktop/main\\.ts$' },
      to: { path: '^electron/lan/' },
    },
    {
      name: 'only-main-and-preload-load-electron',
      severity: 'error',
      comment:
        'Types are free (boundaries.mjs looks). Loading electron in plain Node starts a download; the rest of the desktop gets it as an argument.',
      from: { path: '^electron/', pathNot: '^electron/desktop/(main|preload)\\.ts$' },
      to: { path: npm('electron') },
    },
    {
      name: 'wiring-knows-no-host',
      severity: 'error',
      comment: 'wiring is what the hosts stand on.',
      from: { path: '^electron/wiring/' },
      to: { path: '^electron/(desktop|lan)/' },
    },
    {
      name: 'demo-writes-no-rows',
      severity: 'error',
      comment: 'The practice shop is made by ordinary commands, as a shop makes its own.',
      from: { path: '^demo-data/' },
      to: { path: ['^core/db/', npm('kysely'), ...store, ...handlers] },
    },
    {
      name: 'screens-do-not-share',
      severity: 'error',
      comment: 'What two areas need moves to renderer/kit.',
      from: { path: '^renderer/screens/([^/]+)/' },
      to: { path: '^renderer/screens/', pathNot: '^renderer/screens/$1/' },
    },
    {
      name: 'kit-is-below-screens',
      severity: 'error',
      comment: 'kit and client know no screen.',
      from: { path: '^renderer/(kit|client)/' },
      to: { path: '^renderer/(screens|app)/' },
    },
    {
      name: 'queries-stay-in-client',
      severity: 'error',
      comment: 'Screens ask by request name; the query library can be changed in two folders.',
      from: { path: '^renderer/', pathNot: '^renderer/(client|app)/' },
      to: { path: npm('@tanstack') },
    },
    ...laterRows,
    ...siblings,
    {
      name: 'no-circles',
      severity: 'error',
      comment: 'A circle can only be understood, tested and changed as a whole.',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-orphans',
      severity: 'error',
      comment: 'A file that nothing loads and that loads nothing is dead.',
      from: { orphan: true, pathNot: ['\\.d\\.ts$'] },
      to: {},
    },
    {
      name: 'not-to-unresolvable',
      severity: 'error',
      comment: 'The file or package is not there.',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.(css|svg|ttf|json)$' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      mainFields: ['module', 'main', 'types'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
    },
  },
};
