/** Entry of the crew's pages: fetched only where the address asks for them. */
import { createRoot } from 'react-dom/client';
import { server } from '../state/server/server.ts';
import '../style/day.css';
import { CrewPage } from './CrewPage.tsx';

export async function mountCrew(place: Element): Promise<void> {
  await enter();
  createRoot(place).render(<CrewPage />);
}

/** A link's token stands after #, becomes a cookie, and leaves the address. */
async function enter(): Promise<void> {
  const token = window.location.hash.slice(1);
  if (token === '') return;
  // What the server says of a token that is not valid, the page says when it opens the day.
  await server.enter(token).catch(() => undefined);
  window.history.replaceState(undefined, '', window.location.pathname + window.location.search);
}
