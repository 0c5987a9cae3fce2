/** A CSV file that another program goes on writing: only what is added after the start is a reading. */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { homedir } from 'node:os';
import { figure, type Raw, type SourceOf } from '@hoopwright/wire/reading';
import { keepOpen } from './again.ts';
import type { Later, Source, Told } from './source.ts';
import { startSplitter } from './splitter.ts';

const USUAL_EVERY_MS = 200;
const PIECE = 1 << 16;

export function csvSource(given: SourceOf<'csv'>, later: Later): Source {
  const setUp = { ...given, file: given.file.replace(/^~(?=[/\\])/, homedir()) };
  return {
    name: setUp.name,
    start: (told) => {
      const stop = keepOpen({
        later,
        state: told.state,
        open: ({ opened, gone }) => follow(setUp, { told, later, opened, gone }),
      });
      return { accept: () => {}, stop };
    },
  };
}

interface Following {
  readonly told: Told;
  readonly later: Later;
  readonly opened: () => void;
  readonly gone: (why: string) => void;
}

/** Where in a row each wanted channel stands. */
type Places = readonly (readonly [place: number, channel: string])[];

function follow(setUp: SourceOf<'csv'>, { told, later, opened, gone }: Following): () => void {
  let handle: number | undefined;
  let callOff: (() => void) | undefined;
  const close = (): void => {
    callOff?.();
    if (handle !== undefined) closeSync(handle);
    handle = undefined;
  };
  try {
    handle = openSync(setUp.file, 'r');
    const rows = startRows(setUp, told);
    let at = rows.skip(handle);
    opened();
    const look = (): void => {
      if (handle === undefined) return;
      const { size } = fstatSync(handle);
      if (size < at) return gone('the file was cut off or begun anew');
      if (!stillThere(setUp.file, handle)) return gone('the file was moved or taken away');
      at = rows.read(handle, at);
      callOff = later(setUp.every_ms ?? USUAL_EVERY_MS, look);
    };
    look();
  } catch (error) {
    close();
    // Told after the caller holds what lets go of this attempt.
    callOff = later(0, () => gone(error instanceof Error ? error.message : String(error)));
  }
  return close;
}

function stillThere(file: string, handle: number): boolean {
  try {
    const other = openSync(file, 'r');
    const same = fstatSync(other).ino === fstatSync(handle).ino;
    closeSync(other);
    return same;
  } catch {
    return false;
  }
}

function startRows({ columns, separator = ',', decimal = '.' }: SourceOf<'csv'>, told: Told) {
  let places: Places | undefined;
  let old = true;
  const take = (text: string): void => {
    const fields = text.split(separator).map((field) => field.trim().replace(/^"(.*)"$/, '$1'));
    if (places === undefined) places = placesIn(fields, columns, told);
    else if (!old) row(fields, places, { point: decimal, told });
  };
  const splitter = startSplitter({ line: take, tooLong: () => told.bad('a row that is too long') });
  const read = (handle: number, from: number): number => {
    const piece = Buffer.alloc(PIECE);
    let at = from;
    for (;;) {
      const length = readSync(handle, piece, 0, PIECE, at);
      if (length === 0) return at;
      at += length;
      splitter.take(piece.subarray(0, length));
    }
  };
  return {
    read,
    /** Passes over what is there already; only the headings count. */
    skip: (handle: number): number => {
      const at = read(handle, 0);
      old = false;
      return at;
    },
  };
}

function placesIn(heads: readonly string[], columns: Readonly<Record<string, string>>, told: Told): Places {
  return Object.entries(columns).flatMap(([head, channel]) => {
    const place = heads.indexOf(head);
    if (place < 0) told.bad(`no column "${head}" among ${heads.join(', ').slice(0, 200)}`);
    return place < 0 ? [] : [[place, channel] as const];
  });
}

interface RowStyle {
  readonly point: '.' | ',';
  readonly told: Told;
}

function row(fields: readonly string[], places: Places, { point, told }: RowStyle): void {
  const raw: Record<string, number> = {};
  for (const [place, channel] of places) {
    const field = fields[place];
    if (field === undefined || field === '') continue;
    const value = figure(field, point);
    if (value === undefined) return told.bad(`column ${place + 1} is no number`);
    raw[channel] = value;
  }
  const found: Raw = raw;
  if (Object.keys(found).length > 0) told.reading(found);
  else told.bad('a row without a figure that is asked for');
}
