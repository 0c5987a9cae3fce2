/** Changes in memory. */
import type { Change } from '@hoopwright/wire/project';
import type { Changes } from '../store.ts';

export interface Log extends Changes {
  tell(change: Omit<Change, 'id' | 'wall_ms'>): void;
}

export const startLog = (clock: () => number): Log => {
  const told: Change[] = [];
  const listeners = new Set<(change: Change) => void>();
  return {
    last: () => told.length,
    since: (id) => told.slice(id),
    watch: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    tell: (change) => {
      const full = { id: told.length + 1, wall_ms: clock(), ...change };
      told.push(full);
      for (const listener of listeners) listener(full);
    },
  };
};
