/** Is a source that came back still itself? */
import type { SourceState } from './source.ts';

/** Lines after a reopening among which the one that proves it must be. */
const FIRST_LINES = 20;

export interface ProofOrders {
  /** Serial number of the plug as it was first seen; undefined where the system does not say. */
  readonly serialNumber: () => string | undefined;
  /** A line of it begins so. */
  readonly begins?: string;
  readonly state: (state: SourceState) => void;
}

export interface Proof {
  /** It was opened: the first time it is taken to be itself. */
  opened(): void;
  /** True where the line may be taken as a reading. */
  line(text: string): boolean;
  accept(): void;
}

export function startProof({ serialNumber, begins, state }: ProofOrders): Proof {
  let first = true;
  let known: string | undefined;
  let waits = false;
  let seen = 0;
  const itself = (): void => {
    waits = false;
    state({ kind: 'open' });
  };
  return {
    opened: () => {
      const now = serialNumber();
      if (first) {
        [first, known] = [false, now];
        return itself();
      }
      if (known !== undefined && now === known) return itself();
      waits = true;
      seen = 0;
      const other = known !== undefined && now !== undefined;
      state({ kind: 'unproved', why: other ? `its serial number was ${known} and is ${now}` : NOTHING });
    },
    line: (text) => {
      if (begins !== undefined && text.startsWith(begins)) {
        if (waits && seen < FIRST_LINES) itself();
        return false;
      }
      seen += 1;
      return !waits;
    },
    accept: () => {
      if (waits) itself();
    },
  };
}

const NOTHING = 'nothing shows that it is the same instrument as before';
