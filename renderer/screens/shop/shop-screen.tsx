/** What the owner sets: each tab is a page of its own, fetched when it is opened. */
import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import { useMay } from '../../client/use-me.ts';
import { KeyHints } from '../../kit/key-hints.tsx';
import { keysOf } from '../../kit/keyboard.ts';
import { Pane } from '../../kit/pane.tsx';
import { Empty, PageName, Sheet } from '../../kit/sheet.tsx';
import css from './shop-screen.module.css';

type Tab = Readonly<{ key: string; words: string; Page: LazyExoticComponent<ComponentType> }>;

const TABS: readonly Tab[] = [
  {
    key: 'title-block',
    words: 'Title block',
    Page: lazy(async () => ({ default: (await import('./pages/title-block.tsx')).TitleBlockPage })),
  },
  {
    key: 'hours',
    words: 'Hours',
    Page: lazy(async () => ({ default: (await import('./pages/hours.tsx')).HoursPage })),
  },
  {
    key: 'rates',
    words: 'Rates',
    Page: lazy(async () => ({ default: (await import('./pages/rates.tsx')).RatesPage })),
  },
  {
    key: 'operations',
    words: 'Operations',
    Page: lazy(async () => ({ default: (await import('./pages/operations.tsx')).OperationsPage })),
  },
  {
    key: 'casting-types',
    words: 'Casting types',
    Page: lazy(async () => ({ default: (await import('./pages/casting-types.tsx')).CastingTypesPage })),
  },
  {
    key: 'people',
    words: 'People',
    Page: lazy(async () => ({ default: (await import('./pages/people.tsx')).PeoplePage })),
  },
  {
    key: 'gauges',
    words: 'Gauges',
    Page: lazy(async () => ({ default: (await import('./pages/gauges.tsx')).GaugesPage })),
  },
  {
    key: 'places',
    words: 'Places',
    Page: lazy(async () => ({ default: (await import('./pages/places.tsx')).PlacesPage })),
  },
  {
    key: 'paper',
    words: 'Paper',
    Page: lazy(async () => ({ default: (await import('./pages/paper.tsx')).PaperPage })),
  },
  {
    key: 'accounts',
    words: 'Accounts',
    Page: lazy(async () => ({ default: (await import('./pages/accounts.tsx')).AccountsPage })),
  },
  {
    key: 'screens',
    words: 'Screens',
    Page: lazy(async () => ({ default: (await import('./pages/screens.tsx')).ScreensPage })),
  },
  {
    key: 'backup',
    words: 'Backup',
    Page: lazy(async () => ({ default: (await import('./pages/backup.tsx')).BackupPage })),
  },
  {
    key: 'practice',
    words: 'Practice shop',
    Page: lazy(async () => ({ default: (await import('./pages/practice.tsx')).PracticePage })),
  },
];

export function ShopScreen({ tab }: { tab: string }) {
  const may = useMay();
  const chosen = TABS.find((one) => one.key === tab);
  return (
    <div className={css.page}>
      <PageName>{chosen ? `Shop: ${chosen.words}` : 'Shop'}</PageName>
      <nav className={css.tabs} aria-label="Shop">
        {TABS.map((one) => (
          <a key={one.key} href={`#/shop/${one.key}`} aria-current={one === chosen ? 'page' : undefined}>
            {one.words}
          </a>
        ))}
      </nav>
      <div className={css.body}>
        {may.has('shop:edit') && chosen && (
          <Pane key={chosen.key}>
            <chosen.Page />
          </Pane>
        )}
        {!chosen && (
          <Sheet title="Shop">
            <Empty>There is no such page. Choose one above.</Empty>
          </Sheet>
        )}
      </div>
      <KeyHints
        hints={[
          { keys: ['Tab'], words: 'fields in order' },
          { keys: [keysOf('go')], words: 'keep' },
        ]}
      />
    </div>
  );
}
