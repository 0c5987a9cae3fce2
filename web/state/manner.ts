/** How this person reads: units, decimal mark, light. Kept in this browser, not in the project. */
import { type Manner, USUAL_MANNER } from '@hoopwright/report/figure';
import { create } from 'zustand';

export const LOOKS = ['daylight', 'night', 'sun'] as const;
/** White paper, black paper, and high contrast for outdoors. */
export type Look = (typeof LOOKS)[number];

export interface Reading {
  readonly manner: Manner;
  readonly look: Look;
}

const KEY = 'hoopwright reading';

export const useReading = create<Reading>(() => remembered());

export function read(change: Partial<Manner> & { readonly look?: Look }): void {
  const { look, ...manner } = change;
  useReading.setState((now) => ({ manner: { ...now.manner, ...manner }, look: look ?? now.look }));
  localStorage.setItem(KEY, JSON.stringify(useReading.getState()));
}

export const useManner = (): Manner => useReading(({ manner }) => manner);

/** What was chosen last time, taken only where it still is a choice. */
function remembered(): Reading {
  const kept = readKept();
  const { units, decimal } = kept.manner ?? {};
  return {
    manner: {
      ...USUAL_MANNER,
      ...(units === 'bar' || units === 'MPa' || units === 'psi' ? { units } : {}),
      ...(decimal === '.' || decimal === ',' ? { decimal } : {}),
    },
    look: LOOKS.find((look) => look === kept.look) ?? 'daylight',
  };
}

function readKept(): {
  readonly manner?: { readonly units?: unknown; readonly decimal?: unknown };
  readonly look?: unknown;
} {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}');
  } catch {
    return {};
  }
}
