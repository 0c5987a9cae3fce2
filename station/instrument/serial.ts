/** Lines from a serial port. */
import { realpathSync } from 'node:fs';
import { readLine, type SourceOf } from '@hoopwright/wire/reading';
import { SerialPort } from 'serialport';
import { type Attempt, keepOpen } from './again.ts';
import { startProof, type Proof } from './proof.ts';
import { type Later, LOOK_AGAIN_MS, type Source, type Told } from './source.ts';
import { startSplitter } from './splitter.ts';

export interface SerialParts {
  readonly later: Later;
  /** Serial number of the plug at a path, where the system knows it. */
  readonly serialNumber: (path: string) => Promise<string | undefined>;
}

export function serialSource(setUp: SourceOf<'serial'>, parts: SerialParts): Source {
  return {
    name: setUp.name,
    start: (told) => {
      let number: string | undefined;
      const { begins } = setUp.proof ?? {};
      const proof = startProof({
        state: told.state,
        serialNumber: () => number,
        ...(begins === undefined ? {} : { begins }),
      });
      let stopped = false;
      const stop = keepOpen({
        later: parts.later,
        state: (state) => {
          if (state.kind !== 'open') return told.state(state);
          // Whether it is open is for the proof to say, once the serial number is known.
          void parts.serialNumber(setUp.path).then((found) => {
            if (stopped) return;
            number = found;
            proof.opened();
          });
        },
        open: (attempt) => listen(setUp, { told, proof, attempt, later: parts.later }),
      });
      return {
        accept: () => proof.accept(),
        stop: () => {
          stopped = true;
          return stop();
        },
      };
    },
  };
}

interface Listening {
  readonly told: Told;
  readonly proof: Proof;
  readonly attempt: Attempt;
  readonly later: Later;
}

function listen({ path, baud, line }: SourceOf<'serial'>, { told, proof, attempt, later }: Listening) {
  const port = new SerialPort({ path, baudRate: baud, autoOpen: false });
  let over = false;
  const splitter = startSplitter({
    tooLong: () => told.bad('a line that is too long'),
    line: (text) => {
      if (over || !proof.line(text)) return;
      const read = readLine(text, line);
      if (read.ok) told.reading(read.raw);
      else told.bad(read.why);
    },
  });
  // Being unplugged is only noticed while the stream is read.
  port.on('data', (bytes: Buffer) => {
    if (!over) splitter.take(bytes);
  });
  port.on('error', (error) => attempt.gone(error.message));
  port.on('close', () => attempt.gone('it was unplugged'));
  let there: string | undefined;
  let callOff: (() => void) | undefined;
  // Some drivers end a hung-up line without a word; the place in the file system is gone all the same.
  const look = (): void => {
    if (placeOf(path) === there) callOff = later(LOOK_AGAIN_MS, look);
    else attempt.gone('it was unplugged');
  };
  port.open((error) => {
    if (error) return attempt.gone(error.message);
    // Only now: a plug that came while it was being opened was not there before.
    there = placeOf(path);
    attempt.opened();
    look();
  });
  return () =>
    new Promise<void>((resolve) => {
      over = true;
      callOff?.();
      if (port.isOpen) port.close(() => resolve());
      else resolve();
    });
}

function placeOf(path: string): string | undefined {
  try {
    return realpathSync(path);
  } catch {
    return undefined;
  }
}

/** As the system lists its ports; where it cannot (no udev), nothing is known. */
export async function serialNumberAt(path: string): Promise<string | undefined> {
  try {
    return (await SerialPort.list()).find((port) => port.path === path)?.serialNumber;
  } catch {
    return undefined;
  }
}
