/** Bytes to lines, whatever comes: a line that is too long is dropped as it arrives, and never held. */
import { LONGEST_LINE } from '@hoopwright/wire/reading';

export interface Splitter {
  take(bytes: Uint8Array): void;
  /** What stands there without a line end, as a last line. */
  end(): void;
}

export interface Lines {
  readonly line: (text: string) => void;
  /** A line that was dropped for its length. */
  readonly tooLong: () => void;
}

const [LF, CR] = [10, 13];

/** Lines end at LF, CR or both; empty ones are passed over. */
export function startSplitter({ line, tooLong }: Lines): Splitter {
  // Several bytes may be one character, so this bounds bytes well above the longest line.
  const held = Buffer.alloc(4 * LONGEST_LINE);
  let length = 0;
  let dropping = false;
  const finish = (): void => {
    if (dropping) tooLong();
    else if (length > 0) line(held.toString('utf8', 0, length));
    length = 0;
    dropping = false;
  };
  return {
    take: (bytes) => {
      for (const byte of bytes) {
        if (byte === LF || byte === CR) finish();
        else if (length < held.length) held[length++] = byte;
        else dropping = true;
      }
    },
    end: finish,
  };
}
