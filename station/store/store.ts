/**
 * What the station keeps, whatever keeps it. Synchronous: when a function has returned, what it wrote is durable.
 * What a caller could not know (a project gone meanwhile, a newer version) comes back as a value; a full disk, a locked
 * or damaged base is thrown as a Trouble, and then nothing was kept.
 */
import type {
  Attachment,
  Change,
  Opened,
  Project,
  ProjectFile,
  Role,
  Token,
  Version,
  VersionLine,
} from '@hoopwright/wire/project';
import type { FrozenPlan, PlanLine } from '@hoopwright/wire/plan';
import type { About, Draft, Link, RecordKind } from '@hoopwright/wire/record';
import type { By } from './by.ts';

export interface Store {
  readonly projects: Projects;
  readonly attachments: Attachments;
  readonly plans: Plans;
  readonly records: Records;
  readonly bytes: Bytes;
  readonly tokens: Tokens;
  readonly changes: Changes;
  /** Writes a whole copy to a new file while the store stays in use. Throws where the file exists. */
  backup(file: string): Promise<void>;
  close(): void;
}

export type Which = 'kept' | 'deleted';

export type Projects = ProjectReads & ProjectLife & ProjectEdits;

export interface ProjectReads {
  /** Newest first. */
  list(which: Which): Project[];
  /** Deleted ones too. */
  find(id: string): Project | undefined;
  /** The project with the version that stands. Deleted ones too. */
  open(id: string): Opened | undefined;
  /** Newest first. */
  versions(id: string): VersionLine[];
  version(id: string, number: number): Version | undefined;
}

export interface ProjectLife {
  create(given: By & { readonly name: string; readonly file: string }): Opened;
  /** A project of its own from the version that stands, with the attachments. */
  copy(id: string, given: By & { readonly name: string }): Opened | undefined;
  rename(id: string, given: By & { readonly name: string }): Project | undefined;
  /** A deleted project can no longer be edited; `restore` brings it back whole. */
  remove(id: string, given?: By): Project | undefined;
  restore(id: string, given?: By): Project | undefined;
  /** A project of its own from a project file, versions and attachments included. Digests are not checked here. */
  adopt(file: ProjectFile, given?: By): Opened;
}

export interface ProjectEdits {
  /**
   * Makes a version, if the one it is based on still stands; else the newer one comes back and nothing is written.
   * Saving exactly what stands makes no version.
   */
  save(
    id: string,
    given: By & { readonly basedOn: number; readonly file: string; readonly note?: string },
  ): Edit;
  /** Goes back to the version that the standing one was made from. `from`: version that stands in the window. */
  undo(id: string, given: By & { readonly from: number }): Edit;
  /** Goes on to the newest version made from the standing one. */
  redo(id: string, given: By & { readonly from: number }): Edit;
}

export type Edit =
  | { readonly kind: 'done'; readonly opened: Opened }
  /** Somebody else was faster: `opened` is what stands now. Nothing was written. */
  | { readonly kind: 'stale'; readonly opened: Opened }
  /** There is no version to go to. */
  | { readonly kind: 'nothing' }
  /** There is no such project, or it is deleted. */
  | { readonly kind: 'missing' };

export interface Attachments {
  /** In the order in which they were added. */
  list(project: string, which: Which): Attachment[];
  add(
    project: string,
    given: By & { readonly name: string; readonly bytes: Uint8Array },
  ): Attachment | undefined;
  /** Exactly the bytes that were added. Deleted ones too. */
  bytes(project: string, id: string): Uint8Array | undefined;
  remove(project: string, id: string, given?: By): Attachment | undefined;
  restore(project: string, id: string, given?: By): Attachment | undefined;
}

/** Frozen plans of a project. None is ever changed or deleted: a new one gets a new revision. */
export interface Plans {
  /** Newest first. */
  list(project: string): PlanLine[];
  /** Exactly the plan that was frozen. Of deleted projects too. */
  find(project: string, digest: string): FrozenPlan | undefined;
  /** Whether it is whole, and made from the version that stands, is the caller's to see to. */
  keep(project: string, plan: FrozenPlan, given?: By): PlanKept;
}

export type PlanKept =
  /** Also where the same plan was kept before. */
  | { readonly kind: 'done'; readonly line: PlanLine }
  /** Another plan of the project has this revision. */
  | { readonly kind: 'taken'; readonly line: PlanLine }
  /** There is no such project, or it is deleted. */
  | { readonly kind: 'missing' };

/** Bytes kept as they came, under their SHA-256; photos and attachments. */
export interface Bytes {
  /** Answers the SHA-256, 64 hex digits. The same bytes are kept once. */
  keep(bytes: Uint8Array): string;
  find(sha256: string): Uint8Array | undefined;
}

/** A record as it stands. */
export interface RecordLine {
  readonly about: About;
  readonly entries: number;
  /** Run of the last entry; the next start of the program is one more. 0 before the first entry. */
  readonly run: number;
  /** Digest of the last entry, or of `about`: its head. */
  readonly digest: string;
  /** An imported record is whole and closed: nothing is added to it here. */
  readonly origin: 'here' | 'imported';
}

export interface Records {
  /** Newest first. */
  list(): RecordLine[];
  find(id: string): RecordLine | undefined;
  begin(given: Pick<About, 'kind' | 'title' | 'project' | 'replays'>): RecordLine;
  /**
   * Ties drafts to the chain in one commit. The kind is named again by whoever writes, so that a rehearsal can never
   * write into a test. Throws on an unknown or imported record, another kind, and a run that goes back.
   */
  append(to: { readonly record: string; readonly kind: RecordKind }, drafts: readonly Draft[]): Link[];
  /** Entries after `after`, in order. The record may grow meanwhile; what is new then may come or not. */
  entries(id: string, after?: number): Iterable<Link>;
  /** Takes in a record that was verified, as it is. `false`: a record of that name is here already. */
  adopt(about: About, digest: string, links: Iterable<Link>): boolean;
}

export interface Tokens {
  /** The secret is answered here and never again; only its digest is kept. */
  make(given: { readonly label: string; readonly role: Role; readonly record?: string }): {
    readonly token: Token;
    readonly secret: string;
  };
  /** The token that a secret belongs to, unless it was revoked. */
  check(secret: string): Token | undefined;
  list(): Token[];
  revoke(id: string): Token | undefined;
}

export interface Changes {
  /** Id of the last change, 0 before the first. */
  last(): number;
  since(id: number): Change[];
  /** Calls back after each commit, until the answer is called. */
  watch(listener: (change: Change) => void): () => void;
}

/** What a store asks of its surroundings. */
export interface Surroundings {
  /** Wall clock, ms since 1970-01-01 UTC. */
  readonly clock: () => number;
  /** So many random bytes, from a source fit for secrets. */
  readonly dice: (bytes: number) => Uint8Array;
}
