/** Entry of the page. */
import '@fontsource/b612/latin-400.css';
import '@fontsource/b612/latin-700.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRoot } from 'react-dom/client';
import { hearChanges } from './state/server/hear.ts';
import { save } from './state/server/keep.ts';
import { warmUp } from './state/server/threads.ts';
import './style/sheet.css';
import { App } from './view/App.tsx';

const place = document.querySelector('#page');
if (place === null) throw new Error('the page has no element #page');
if (/^\/days?(\/|$)/.test(window.location.pathname))
  void import('./day/mount.tsx').then(({ mountCrew }) => mountCrew(place));
else mountBoard(place);

function mountBoard(here: Element): void {
  warmUp();
  const queries = new QueryClient({ defaultOptions: { queries: { retry: 1, staleTime: 2000 } } });
  hearChanges(queries);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void save();
  });
  createRoot(here).render(
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>,
  );
}
