/** A project and what belongs to it, as they cross between station and page. Times are ms since 1970-01-01 UTC. */

export interface Project {
  readonly id: string;
  readonly name: string;
  readonly created_ms: number;
  /** There while the project lies among the deleted ones. */
  readonly deleted_ms?: number;
  /** Number of the version that stands. */
  readonly current: number;
  /** Version that an undo leads to, and one that a redo leads to. */
  readonly undo?: number;
  readonly redo?: number;
}

/** One save: a line in the list of versions. Numbers count up and are never given twice. */
export interface VersionLine {
  readonly number: number;
  /** Version it was made from; the first has none. */
  readonly parent?: number;
  readonly saved_ms: number;
  /** Window or person that saved. */
  readonly by?: string;
  readonly note?: string;
}

export interface Version extends VersionLine {
  /** The tank file, character for character as it was given. */
  readonly file: string;
}

export interface Opened {
  readonly project: Project;
  readonly version: Version;
}

/** A file that belongs to a project, such as a coupon's CSV; its bytes are kept as they came. */
export interface Attachment {
  readonly id: string;
  readonly name: string;
  readonly bytes: number;
  /** SHA-256 of the bytes, 64 hex digits. */
  readonly sha256: string;
  readonly added_ms: number;
  readonly deleted_ms?: number;
}

export const CHANGE_KINDS = [
  'created',
  'renamed',
  'saved',
  'undone',
  'redone',
  'deleted',
  'restored',
  'attached',
  'detached',
  'frozen',
] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];

/** Something that happened to a project; the event stream carries these, and may be resumed after any `id`. */
export interface Change {
  readonly id: number;
  readonly project: string;
  readonly kind: ChangeKind;
  /** Version that stands after it. */
  readonly current: number;
  readonly by?: string;
  readonly wall_ms: number;
}

/** Who may do what from another machine. */
/** Beside them the crew of a test day, and a source that sends its readings: they reach nothing but the day. */
export const ROLES = ['viewer', 'writer', 'director', 'note taker', 'pump', 'source'] as const;
export type Role = (typeof ROLES)[number];

/** A token as the list shows it: the secret itself is shown once, when it is made, and kept nowhere. */
export interface Token {
  readonly id: string;
  readonly role: Role;
  readonly label: string;
  /** Day that it was made for: it sends to no other one. */
  readonly record?: string;
  readonly created_ms: number;
  readonly revoked_ms?: number;
}
