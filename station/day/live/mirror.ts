/** The record in a second folder, such as a stick. Pulling it is told and harms nothing; when it is back it catches up. */
import { appendFileSync, existsSync, readFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { type Link, aboutLine, entryLine } from '@hoopwright/wire/record';
import { aboutDigest } from '@hoopwright/wire/record';
import { chainHash } from '../../store/hash.ts';
import type { Records } from '../../store/store.ts';

export interface Mirror {
  /** An entry is durable in the base. */
  wrote(link: Link): void;
  /** Writes what waits; called now and then. `undefined`: all is there; else why not. */
  flush(): string | undefined;
}

const LINE_END = 10;

export function openMirror(records: Records, record: string, folder: string): Mirror {
  const file = join(folder, `${record}.ndjson`);
  let waiting: Link[] = [];
  let upTo: number | undefined;

  const catchUp = (): void => {
    if (!existsSync(folder)) throw new Error('the folder is not there');
    upTo ??= linesIn(file) - 1;
    const line = records.find(record);
    if (line === undefined) return;
    let text = upTo < 0 ? `${aboutLine(line.about, aboutDigest(line.about, chainHash))}\n` : '';
    let last = Math.max(upTo, 0);
    const [first] = waiting;
    const missing =
      first === undefined || first.entry.seq > last + 1 ? records.entries(record, last) : waiting;
    for (const link of missing) {
      if (link.entry.seq <= last) continue;
      text += `${entryLine(link)}\n`;
      last = link.entry.seq;
    }
    if (text !== '') appendFileSync(file, text, { flush: true });
    upTo = last;
    waiting = [];
  };

  return {
    wrote: (link) => {
      waiting.push(link);
      // The base has them all: what waits for a lost stick need not be held.
      if (waiting.length > MOST_WAITING) waiting = [];
    },
    flush: () => {
      if (upTo !== undefined && waiting.length === 0 && existsSync(file)) return undefined;
      try {
        if (upTo !== undefined && !existsSync(file)) upTo = undefined;
        catchUp();
        return undefined;
      } catch (error) {
        upTo = undefined;
        return error instanceof Error ? error.message : String(error);
      }
    },
  };
}

const MOST_WAITING = 10_000;

/** Whole lines of the file; half a line at its end, from a stick that was pulled, is cut off. 0: no file. */
function linesIn(file: string): number {
  if (!existsSync(file)) return 0;
  const bytes = readFileSync(file);
  const end = bytes.lastIndexOf(LINE_END) + 1;
  if (end < bytes.length) truncateSync(file, end);
  let lines = 0;
  for (let at = bytes.indexOf(LINE_END); at >= 0; at = bytes.indexOf(LINE_END, at + 1)) lines += 1;
  return lines;
}
