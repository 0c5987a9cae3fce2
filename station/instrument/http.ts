/** Readings that are sent to the station by HTTP, one JSON object a line. The route checks the token; this reads the lines. */
import { readLine, type SourceOf } from '@hoopwright/wire/reading';
import type { Source, Told } from './source.ts';
import { startSplitter } from './splitter.ts';

export interface Sent {
  readonly taken: number;
  readonly bad: number;
  /** Why the first bad line was bad. */
  readonly why?: string;
}

export interface HttpSource extends Source {
  /** Takes a body in, piece by piece; not open: nothing is taken. */
  send(body: AsyncIterable<Uint8Array>): Promise<Sent | undefined>;
}

export function httpSource({ name, names }: SourceOf<'http'>): HttpSource {
  let told: Told | undefined;
  return {
    name,
    start: (listener) => {
      told = listener;
      listener.state({ kind: 'open' });
      return {
        accept: () => {},
        stop: () => {
          told = undefined;
          return Promise.resolve();
        },
      };
    },
    send: async (body) => {
      if (told === undefined) return undefined;
      let [taken, bad] = [0, 0];
      let why: string | undefined;
      const wrong = (says: string): void => {
        bad += 1;
        why ??= says;
        told?.bad(says);
      };
      const splitter = startSplitter({
        tooLong: () => wrong('a line that is too long'),
        line: (text) => {
          const read = readLine(text, { form: 'json', names });
          if (!read.ok) return wrong(read.why);
          taken += 1;
          told?.reading(read.raw);
        },
      });
      for await (const piece of body) splitter.take(piece);
      splitter.end();
      return { taken, bad, ...(why === undefined ? {} : { why }) };
    },
  };
}
