/** The simulated tank as a source: its instruments speak by themselves, in real time or faster. */
import type { Order, Site } from '../rig/site.ts';
import type { Later, Source } from './source.ts';

export interface RigParts {
  readonly name: string;
  readonly site: Pick<Site, 'pass' | 'read'>;
  /** Channels that speak by themselves; the others are read by hand. */
  readonly channels: readonly string[];
  /** Between two readings, ms of real time. */
  readonly every_ms: number;
  /** Times real time. */
  readonly speed: number;
  /** What pump and valves have been told to do. */
  readonly order: () => Order;
  readonly later: Later;
}

export function rigSource({ name, site, channels, every_ms, speed, order, later }: RigParts): Source {
  return {
    name,
    start: (told) => {
      let callOff: (() => void) | undefined;
      const pass = (): void => {
        site.pass((every_ms / 1000) * speed, order());
        const raw: Record<string, number> = {};
        for (const channel of channels) {
          const shows = site.read(channel);
          if (shows !== undefined) raw[channel] = shows;
        }
        if (Object.keys(raw).length > 0) told.reading(raw);
        callOff = later(every_ms, pass);
      };
      told.state({ kind: 'open' });
      callOff = later(every_ms, pass);
      return {
        accept: () => {},
        stop: () => {
          callOff?.();
          return Promise.resolve();
        },
      };
    },
  };
}
