/** Where a command reads and writes: handed in, so that a test is a call. */

export interface Desk {
  /** Whole text of a file, or of standard input for "-". Rejects where it cannot be read. */
  read(path: string): Promise<string>;
  readBytes(path: string): Promise<Uint8Array>;
  /** Lines of standard input as they come. */
  lines?(): AsyncIterable<string>;
  write(path: string, text: string | Uint8Array): Promise<void>;
  /** Data. */
  out(text: string): void;
  /** Messages. */
  err(text: string): void;
  /** Seconds since some fixed moment; for progress lines only. */
  seconds(): number;
  /** True where a progress line may be overwritten. */
  readonly terminal: boolean;
}

/** What a command ends with. */
export const DONE = 0;
export const OUR_FAULT = 1;
export const BAD_INPUT = 2;
export const METAL_SAYS_NO = 3;

/** Ends a command with a message and an exit code. */
export class Ending extends Error {
  readonly code: number;
  constructor(code: number, message: string) {
    super(message);
    this.code = code;
  }
}

/** Reads a file or ends the command saying what to do. */
export async function readOrEnd(desk: Desk, path: string): Promise<string> {
  try {
    return await desk.read(path);
  } catch (error) {
    throw new Ending(
      BAD_INPUT,
      `${path}: cannot be read (${reasonOf(error)}); give the path of a file, or - for standard input`,
    );
  }
}

export const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
