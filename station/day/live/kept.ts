/** What is kept of a running day: the fold of what is durable, and what was taken and waits for the disk. */
import { type Fold, fold, startFold } from '@hoopwright/wire/day';
import { type About, aboutDigest, type Draft, type Link, tie } from '@hoopwright/wire/record';
import { chainHash } from '../../store/hash.ts';

/** The fold before the first entry. */
export const emptyFold = (about: About): { readonly fold: Fold; readonly digest: string } => {
  const digest = aboutDigest(about, chainHash);
  return { fold: startFold(about, digest), digest };
};

/** Guards both. */
export class Kept {
  durable: Fold;
  private digest: string;
  private waiting: Draft[] = [];
  private ahead: Fold | undefined;

  /** @param digest of the last entry */
  constructor(before: Fold, digest: string) {
    this.durable = before;
    this.digest = digest;
  }

  /** The state to be shown. */
  get now(): Fold {
    return this.ahead ?? this.durable;
  }

  get isAhead(): boolean {
    return this.ahead !== undefined;
  }

  /** An entry about this channel waits. */
  waits(channel: string): boolean {
    return this.waiting.some(({ body }) => body['channel'] === channel);
  }

  queued(draft: Draft): void {
    this.waiting.push(draft);
    if (this.ahead !== undefined) this.ahead = this.onTop(this.ahead, [draft]);
  }

  wrote(link: Link): { readonly before: Fold; readonly after: Fold } {
    const before = this.durable;
    this.waiting.shift();
    this.durable = fold(before, link);
    this.digest = link.digest;
    return { before, after: this.durable };
  }

  /** The record cannot be written: from now on what waits is shown, too. */
  goAhead(): void {
    this.ahead ??= this.onTop(this.durable, this.waiting);
  }

  cleared(): void {
    this.ahead = undefined;
  }

  private onTop(from: Fold, drafts: readonly Draft[]): Fold {
    let now = from;
    for (const link of tie({ seq: from.state.seq, digest: this.digest }, drafts, chainHash))
      now = fold(now, link);
    // Only what is durable has a head to be copied.
    const { head, heads } = this.durable.state;
    return { ...now, state: { ...now.state, head, heads } };
  }
}
