/** A claim is one sentence of a contract and the check of it, so that tests and soaks can run the same ones. */
import type { Store } from '../store.ts';

export interface Claim {
  readonly says: string;
  /** Throws where the claim is false. The store may hold anything from before. */
  readonly holds: (store: Store) => void;
}

/** A tank file as text, its spelling its own: white space, line ends and trailing zeros must survive. */
export const tankText = (wall: number): string =>
  `{ "name": "Dunlin (invented)",\r\n\t"wall_mm": ${wall.toFixed(2)} }\n`;

export const must = <T>(value: T | undefined, what: string): T => {
  if (value === undefined) throw new Error(`${what} is missing`);
  return value;
};
