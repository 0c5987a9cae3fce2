/** An invented record for tests: Tern Hill rocketry workshop, vehicle "Dunlin". */
import { type ChainHash, aboutDigest, tie } from './chain.ts';
import type { About, Draft } from './entry.ts';
import { aboutLine, entryLine } from './lines.ts';

export const sampleAbout: About = {
  format: 'hoopwright record',
  version: 1,
  record: 'dunlin-2',
  kind: 'rehearsal',
  title: 'Dunlin, second tank – invented',
  began_ms: 1_790_000_000_123,
};

const START = { mono: 812.25, wall: 1_790_000_001_000 };

export const sampleDrafts = (count: number): Draft[] =>
  Array.from({ length: count }, (_, i) => ({
    run: 1 + Math.floor(i / 7),
    mono_ms: START.mono + 50.5 * i,
    wall_ms: START.wall + 50 * i,
    kind: i % 5 === 3 ? 'remark' : 'reading',
    body: i % 5 === 3 ? { text: `seam "é" ${i}` } : { values: { P1: 0.25 * i + 1.5, G2: 1257.1 + i / 3 } },
  }));

export const sampleLines = (count: number, hash: ChainHash): string[] => {
  const digest = aboutDigest(sampleAbout, hash);
  const links = tie({ seq: 0, digest }, sampleDrafts(count), hash);
  return [aboutLine(sampleAbout, digest), ...links.map(entryLine)];
};
