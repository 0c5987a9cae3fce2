/** Readings and their channels, for other packages. */
export {
  type Channel,
  CHANNEL_READS,
  CHANNEL_UNIT,
  type ChannelReads,
  channelShape,
  channelsOf,
  FRESH_BY_HAND,
  FRESH_BY_WIRE,
  freshFor,
  noiseOf,
} from './channel.ts';
export type { Row } from './row.ts';
export { crossingSentence } from './say.ts';
export { growthAt, stepAt } from './scene.ts';
export { type Crossing, crossings, type WatchGivens } from './watch.ts';
export * from './body.ts';
export {
  AILMENTS,
  type Ailed,
  type Ailing,
  calibrated,
  heard,
  judged,
  type Memory,
  NO_MEMORY,
  type Sample,
  SETS_ASIDE,
} from './judge/judge.ts';
export { ailmentSentence } from './judge/say.ts';
export {
  figure,
  type LineFormat,
  lineFormatShape,
  type LineRead,
  LONGEST_LINE,
  type Raw,
  readLine,
} from './wire/line.ts';
export { fromWords, type Register, type Span, spansOf, wordsOf } from './wire/register.ts';
export {
  channelsFrom,
  type SourceKind,
  type SourceOf,
  type SourceSetUp,
  sourceShape,
} from './wire/source.ts';
