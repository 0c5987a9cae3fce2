/** What the soak uses. */
export {
  type EditingReport,
  type RecordingReport,
  type SoakOrders,
  soakEditing,
  soakRecording,
} from './soak.ts';
export { type Task, suffer } from './victim.ts';
