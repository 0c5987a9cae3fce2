/** The day on this screen: its state, who looks, and whether the laptop is heard. */
import type { DayRole, DayState, Snapshot, Tick } from '@hoopwright/wire/day';
import { create } from 'zustand';
import { ServerRefusal } from '../../state/server/server.ts';
import { dayServer } from './api.ts';
import { trace } from './trace.ts';

export interface DayOnScreen {
  readonly record: string;
  readonly state?: DayState | undefined;
  /** What this link may do. */
  readonly role: DayRole;
  readonly own: boolean;
  /** Times real time that the day runs. */
  readonly speed: number;
  /** It takes entries now. */
  readonly live: boolean;
  readonly name?: string | undefined;
  readonly shows?: Readonly<Record<string, number>> | undefined;
  readonly link: 'opening' | 'up' | 'lost' | 'closed' | 'refused';
  /** Clock of the laptop when it was last heard, and of this page then. */
  readonly heard_ms: number;
  readonly heardAt: number;
  /** It is not now that is shown, but how it stood. */
  readonly replay: boolean;
  readonly why?: string | undefined;
}

/** ms without a word after which the link is lost: shown within two seconds (issue of the test day). */
export const SILENCE = 1700;
/** ms of silence after which the connection is given up for dead and made anew. */
const DEAD = 6000;
const AGAIN = 1000;

export const useDay = create<DayOnScreen>(() => ({
  record: '',
  role: 'viewer',
  own: false,
  speed: 1,
  live: false,
  link: 'opening',
  heard_ms: 0,
  heardAt: 0,
  replay: false,
}));

/** Shows a snapshot: of now, or of how it stood. */
export function take(snapshot: Snapshot, replay: boolean): void {
  const { state, role, own = false, name, now_ms, shows, speed, live } = snapshot;
  trace.clear();
  trace.add(snapshot.trace);
  useDay.setState({
    state,
    role,
    own,
    speed,
    live,
    name,
    shows,
    replay,
    link: 'up',
    heard_ms: now_ms,
    heardAt: performance.now(),
    why: undefined,
  });
}

/** What a tick changes, as a new state. */
export function afterTick(state: DayState, { changed, gone = [] }: Pick<Tick, 'changed' | 'gone'>): DayState {
  const next: Record<string, unknown> = { ...state, ...changed };
  for (const key of gone) delete next[key];
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the server names only keys that may be absent
  return next as unknown as DayState;
}

/** The role of director changed hands: what may this link do now? */
async function newRole(record: string): Promise<void> {
  const { role, own = false, name } = await dayServer.snapshot(record);
  useDay.setState({ role, own, name });
}

/** Follows the day as it goes on; ends when the answer is called. */
export function follow(record: string): () => void {
  let stream: EventSource | undefined;
  let over = false;
  let silence: ReturnType<typeof setTimeout> | undefined;
  let dead: ReturnType<typeof setTimeout> | undefined;

  const again = (): void => {
    stream?.close();
    stream = undefined;
    clearTimeout(dead);
    if (!over) setTimeout(() => void open(), AGAIN);
  };
  const beat = (): void => {
    clearTimeout(silence);
    clearTimeout(dead);
    silence = setTimeout(() => useDay.setState({ link: 'lost' }), SILENCE);
    dead = setTimeout(again, DEAD);
  };
  const hear = (tick: Tick): void => {
    beat();
    const { state } = useDay.getState();
    if (state === undefined) return;
    if (tick.changed.crew !== undefined && tick.changed.crew.held !== state.crew.held) void newRole(record);
    trace.add(tick.more);
    useDay.setState({
      state: afterTick(state, tick),
      link: 'up',
      heard_ms: tick.now_ms,
      heardAt: performance.now(),
      ...(tick.shows === undefined ? {} : { shows: tick.shows }),
    });
  };
  const open = async (): Promise<void> => {
    if (over) return;
    try {
      const snapshot = await dayServer.snapshot(record);
      if (over) return;
      take(snapshot, false);
      beat();
      stream = new EventSource(dayServer.streamAddress(record, snapshot.state.seq));
      stream.addEventListener('now', (event) => hear(JSON.parse(String(event.data))));
      stream.addEventListener('gone', () => {
        clearTimeout(silence);
        clearTimeout(dead);
        stream?.close();
        useDay.setState({ link: 'closed' });
      });
      stream.addEventListener('error', again);
    } catch (error) {
      if (over) return;
      if (
        error instanceof ServerRefusal &&
        error.status >= 400 &&
        error.status < 500 &&
        error.status !== 429
      ) {
        useDay.setState({ link: 'refused', why: error.message });
        return;
      }
      again();
    }
  };
  useDay.setState({ record, link: 'opening', state: undefined, replay: false });
  void open();
  return () => {
    over = true;
    stream?.close();
    clearTimeout(silence);
    clearTimeout(dead);
  };
}
