/** A window that edits a project over HTTP and remembers what was acknowledged to it. */
import type { Seeded } from './seeded.ts';

export interface Known {
  readonly file: string;
  /** Version that it was based on. */
  readonly parent?: number;
}

export interface Flying {
  readonly kind: 'save' | 'undo' | 'attach';
  readonly file?: string;
}

/** What a window knows to be durable: the answers that it received. */
export interface Window {
  readonly name: string;
  readonly project: string;
  /** Another window saves into the same project; being refused is right then. */
  readonly shared: boolean;
  /** Version that stands, as last told. */
  standing: number;
  readonly known: Map<number, Known>;
  /** SHA-256 of the attachments that were acknowledged. */
  readonly attached: Set<string>;
  /** The edit that is on its way. */
  flying?: Flying | undefined;
  refused: number;
}

/** An answer that the server must never give. */
export class Wrong extends Error {}

export const openWindow = async (port: number, name: string, shares?: string): Promise<Window> => {
  const blank = { name, standing: 1, attached: new Set<string>(), refused: 0, shared: shares !== undefined };
  if (shares !== undefined) return { ...blank, project: shares, known: new Map() };
  const file = tank(name, 0);
  const { body } = await post(port, '', { name, file });
  return {
    ...blank,
    project: body.project?.id ?? wrong('no project was made'),
    known: new Map([[1, { file }]]),
  };
};

/** Edits without a pause until the server is gone; calls back after each answer that was taken note of. */
export const editOn = async (
  port: number,
  window: Window,
  dice: Seeded,
  acknowledged: () => void,
): Promise<void> => {
  for (;;) {
    try {
      await choose(window, dice)(port, window, dice);
    } catch (error) {
      if (error instanceof Wrong) throw error;
      return;
    }
    window.flying = undefined;
    acknowledged();
  }
};

type Edit = (port: number, window: Window, dice: Seeded) => Promise<void>;

/** Mostly saves. In a shared project nothing else, so that every version there has one right parent. */
const choose = ({ shared }: Window, dice: Seeded): Edit => {
  const chance = shared ? 0 : dice.upTo(10);
  if (chance < 7) return save;
  return chance < 9 ? undo : attach;
};

const save: Edit = async (port, window, dice) => {
  const [file, parent] = [tank(window.name, dice.upTo(1 << 30)), window.standing];
  window.flying = { kind: 'save', file };
  const { status, body } = await post(port, `/${window.project}/versions`, { basedOn: parent, file });
  if (status === 201) {
    window.standing = body.version?.number ?? wrong('a save has no version');
    window.known.set(window.standing, { file, parent });
    return;
  }
  window.refused += 1;
  window.standing = body.newer?.version.number ?? wrong(`a save was answered with ${status}`);
};

const undo: Edit = async (port, window) => {
  window.flying = { kind: 'undo' };
  const { status, body } = await post(port, `/${window.project}/undo`, { from: window.standing });
  if (status === 201) window.standing = body.project?.current ?? wrong('an undo has no project');
};

const attach: Edit = async (port, window, dice) => {
  const base64 = Buffer.from(`load,extension\n${dice.upTo(1 << 30)},1.5\n`.repeat(40)).toString('base64');
  window.flying = { kind: 'attach' };
  const { body } = await post(port, `/${window.project}/attachments`, { name: 'coupon.csv', base64 });
  window.attached.add(body.attachment?.sha256 ?? wrong('an attachment has no digest'));
};

/** Now and then several pages of the base long. */
const tank = (name: string, edit: number): string =>
  `${JSON.stringify({ name, edit, note: 'x'.repeat(200 + (edit % 7) * 900) })}\n`;

interface Answer {
  readonly status: number;
  readonly body: {
    readonly project?: { readonly id: string; readonly current: number };
    readonly version?: { readonly number: number };
    readonly newer?: { readonly version: { readonly number: number } };
    readonly attachment?: { readonly sha256: string };
  };
}

const post = async (port: number, path: string, message: unknown): Promise<Answer> => {
  const answer = await fetch(`http://127.0.0.1:${port}/api/projects${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(message),
  });
  const body: Answer['body'] = JSON.parse(await answer.text());
  return { status: answer.status, body };
};

const wrong = (says: string): never => {
  throw new Wrong(says);
};
