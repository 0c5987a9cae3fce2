/** What must be true of a store after its server was killed: nothing acknowledged is lost, nothing half is there. */
import { sha256 } from '../store/hash.ts';
import type { Store } from '../store/store.ts';
import { type Window, Wrong } from './window.ts';

/** Throws where something acknowledged is missing or something stands that nobody sent. */
export const check = (store: Store, windows: readonly Window[]): void => {
  for (const window of windows) {
    checkVersions(store, window);
    checkAttachments(store, window);
    if (!window.shared) checkStanding(store, window);
  }
  checkStrangers(store, windows);
};

/** The windows after the kill: they ask what stands, as a page does that is opened again. */
export const reopen = (store: Store, windows: readonly Window[]): void => {
  for (const window of windows) {
    window.standing = store.projects.find(window.project)?.current ?? window.standing;
    window.flying = undefined;
    for (const { sha256: digest } of store.attachments.list(window.project, 'kept'))
      window.attached.add(digest);
  }
};

const checkVersions = (store: Store, { name, project, known }: Window): void => {
  for (const [number, { file, parent }] of known) {
    const version = store.projects.version(project, number);
    if (version?.file !== file)
      throw new Wrong(`${name}: version ${number} was acknowledged and is not what was sent`);
    if (version.parent !== parent) {
      throw new Wrong(`${name}: version ${number} was based on ${parent} and hangs on ${version.parent}`);
    }
  }
};

const checkAttachments = (store: Store, { name, project, attached, flying }: Window): void => {
  const kept = store.attachments.list(project, 'kept');
  for (const digest of attached) {
    const found = kept.find((one) => one.sha256 === digest);
    const bytes = found && store.attachments.bytes(project, found.id);
    if (!bytes || sha256(bytes) !== digest)
      throw new Wrong(`${name}: attachment ${digest} was acknowledged and is lost`);
  }
  const most = attached.size + (flying?.kind === 'attach' ? 1 : 0);
  const own = new Set(kept.map((one) => one.sha256)).size;
  if (own > most) throw new Wrong(`${name}: ${own} attachments stand, ${most} were sent`);
};

/** What stands is what was last acknowledged, or what the edit under way would have made of it. */
const checkStanding = (store: Store, { name, project, standing, flying }: Window): void => {
  const opened = store.projects.open(project);
  if (!opened) throw new Wrong(`${name}: the project is lost`);
  const { version } = opened;
  if (version.number === standing) return;
  if (flying?.kind === 'save' && version.file === flying.file && version.parent === standing) return;
  const before = store.projects.version(project, standing)?.parent;
  if (flying?.kind === 'undo' && version.number === before) return;
  throw new Wrong(`${name}: version ${version.number} stands, ${standing} was acknowledged last`);
};

/** Every version is known to some window, or was under way. */
const checkStrangers = (store: Store, windows: readonly Window[]): void => {
  for (const project of new Set(windows.map((window) => window.project))) {
    const own = windows.filter((window) => window.project === project);
    for (const { number } of store.projects.versions(project)) {
      if (own.some(({ known }) => known.has(number))) continue;
      const version = store.projects.version(project, number);
      const sender = own.find(({ flying }) => version !== undefined && flying?.file === version.file);
      if (!version || !sender) throw new Wrong(`version ${number} of project ${project} was sent by nobody`);
      const { file, parent } = version;
      sender.known.set(number, { file, ...(parent === undefined ? {} : { parent }) });
    }
  }
};
