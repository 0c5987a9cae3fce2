/** Body of a `forecast` entry while the foreseeing itself is made ready for a new tank: how far it is, and what is done. */
import { z } from 'zod';

export type ReadyBody = {
  readonly ready: {
    /** 100: it is; what is foreseen follows once something is read. */
    readonly percent: number;
    /** Whole sentence. */
    readonly says: string;
    /** Nothing will be foreseen on this day. */
    readonly failed?: boolean;
  };
};

/** Shell solutions so far, of how many. */
export interface Solved {
  readonly done: number;
  readonly all: number;
}

/** Solutions are nearly all of the work: the fit to them takes a second. */
const SOLVING = 98;

export const solvingBody = ({ done, all }: Solved): ReadyBody => ({
  ready: {
    percent: Math.floor((SOLVING * done) / all),
    says: `Making ready to foresee: ${done} of ${all} tanks of its range are solved.`,
  },
});

/** @param how kept with the plan by an earlier start, or made now */
export const readyBody = (how: 'kept' | 'made'): ReadyBody => ({
  ready: {
    percent: 100,
    says: how === 'kept' ? 'Ready to foresee, as kept with the plan.' : 'Ready to foresee.',
  },
});

export const neverReadyBody = (why: 'no range' | 'mistake'): ReadyBody => ({
  ready: {
    percent: 0,
    says:
      why === 'no range'
        ? 'Nothing will be foreseen: the steel of this plan has no range, or its tank file is not here.'
        : 'Nothing will be foreseen: making ready to foresee failed. The limits of the plan are watched all the same.',
    failed: true,
  },
});

/** What a reader of a record takes from such an entry. */
export const readyShape = z.object({ ready: z.object({ percent: z.number(), says: z.string() }) });
