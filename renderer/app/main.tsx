/** The start of the screens. */
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { openClient } from '../client/client.ts';
import { NOT_REACHED, RequestRefused } from '../client/request-refused.ts';
import { ClientContext, refreshOnChange } from '../client/use-app.ts';
import '../kit/tokens.css';
import { ActsContext, listenForActs } from '../kit/keyboard.ts';
import { rememberedLight, setLight } from './light.ts';
import { Shell } from './shell.tsx';

const lost = (error: unknown) => error instanceof RequestRefused && error.reply.code === NOT_REACHED;

const queries = new QueryClient({
  defaultOptions: {
    queries: {
      // The host announces every change, so an answer is good until then.
      staleTime: Number.POSITIVE_INFINITY,
      gcTime: 10 * 60_000,
      networkMode: 'always',
      retry: (times, error) => lost(error) && times < 2,
      retryDelay: 1000,
    },
  },
});

setLight(rememberedLight());
const client = openClient();
refreshOnChange(client, queries);
client.onChange((what) => {
  if (!['shop/other-workspace', 'backup/restore-backup'].includes(what.name)) return;
  // Another shop, or another day of it, stands behind this page now: nothing of the one before may stay on it.
  window.location.hash = '';
  window.location.reload();
});
const acts = listenForActs(window);

const place = document.getElementById('root');
if (!place) throw new Error('index.html has no #root');
createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <ClientContext value={client}>
        <ActsContext value={acts}>
          <Router hook={useHashLocation}>
            <Shell />
          </Router>
        </ActsContext>
      </ClientContext>
    </QueryClientProvider>
  </StrictMode>,
);
