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
} from './channel.ts';
export type { Row } from './row.ts';
export { crossingSentence } from './say.ts';
export { growthAt, stepAt } from './scene.ts';
export { type Crossing, crossings, type WatchGivens } from './watch.ts';
export * from './body.ts';
