/** What the soak uses. */
export {
  type EditingReport,
  type RecordingReport,
  type SoakOrders,
  soakDay,
  soakEditing,
  soakRecording,
} from './soak.ts';
export { type Task, suffer, taskOf } from './victim.ts';
export { type Seeded, seeded } from './seeded.ts';
