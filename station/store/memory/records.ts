/** Records in memory. */
import { type About, type Link, RECORD_FORMAT, aboutDigest, canonical, tie } from '@hoopwright/wire/record';
import { chainHash, freshId } from '../hash.ts';
import type { RecordLine, Records, Surroundings } from '../store.ts';
import { writable } from '../writable.ts';

interface Held {
  readonly about: About;
  readonly digest: string;
  readonly origin: RecordLine['origin'];
  readonly links: Link[];
}

export const memoryRecords = ({ clock, dice }: Surroundings): Records => {
  const shelf = new Map<string, Held>();
  const find = (id: string): RecordLine | undefined => {
    const held = shelf.get(id);
    return held && lineOf(held);
  };
  const begin = (held: Held): RecordLine => {
    shelf.set(held.about.record, held);
    return lineOf(held);
  };

  return {
    find,
    list: () => [...shelf.values()].map(lineOf).toReversed(),
    begin: (given) => {
      const about: About = {
        format: RECORD_FORMAT,
        version: 1,
        record: freshId(dice),
        began_ms: clock(),
        ...given,
      };
      return begin({ about, digest: aboutDigest(about, chainHash), origin: 'here', links: [] });
    },
    append: (to, drafts) => {
      const { entries, digest } = writable(find(to.record), to, drafts);
      // Through text, so that nobody holds a body that stands in the record.
      const links = tie({ seq: entries, digest }, drafts, chainHash).map(
        (link): Link => JSON.parse(canonical(link)),
      );
      shelf.get(to.record)?.links.push(...links);
      return links;
    },
    *entries(id, after = 0) {
      const held = shelf.get(id);
      if (held) yield* held.links.slice(after);
    },
    adopt: (about, digest, links) => {
      if (shelf.has(about.record)) return false;
      begin({ about, digest, origin: 'imported', links: [...links] });
      return true;
    },
  };
};

const lineOf = ({ about, digest, origin, links }: Held): RecordLine => ({
  about,
  origin,
  entries: links.length,
  run: links.at(-1)?.entry.run ?? 0,
  digest: links.at(-1)?.digest ?? digest,
});
