/** What every source keeps, whatever its protocol: one suite, many instruments. */
import { expect, test } from 'vitest';
import type { Raw } from '@hoopwright/wire/reading';
import type { Running, Source, SourceState, Told } from '../source.ts';

/** An instrument at the other end of the wire. */
export interface Bench {
  readonly source: Source;
  /** Makes the instrument say these; `undefined` where it says something that is no reading. */
  say(values: Raw | undefined): void | Promise<void>;
  /** The wire is cut, or the other end dies. Absent: that cannot happen. */
  readonly cut?: () => Promise<void>;
  /** It is mended; the instrument is the same, and proves it if it can. */
  readonly mend?: () => Promise<void>;
  /** Asks for its state again and again, so it cannot say nonsense, nor two things at once. */
  readonly polled?: boolean;
  close(): Promise<void>;
}

/** Keeps what a source tells, and waits for more of it. */
export class Listener implements Told {
  readonly readings: Raw[] = [];
  readonly states: SourceState[] = [];
  readonly bads: string[] = [];
  private waiting: (() => void)[] = [];

  readonly reading = (raw: Raw): void => {
    this.readings.push(raw);
    this.wake();
  };
  readonly state = (state: SourceState): void => {
    this.states.push(state);
    this.wake();
  };
  readonly bad = (why: string): void => {
    this.bads.push(why);
    this.wake();
  };

  private wake(): void {
    const woken = this.waiting;
    this.waiting = [];
    for (const one of woken) one();
  }

  async until(what: string, is: () => boolean): Promise<void> {
    while (!is()) {
      await new Promise<void>((resolve, reject) => {
        const timer = setTimeout(() => reject(new Error(`waited for ${what}: ${this.told()}`)), PATIENCE_MS);
        this.waiting.push(() => {
          clearTimeout(timer);
          resolve();
        });
      });
    }
  }

  get standing(): SourceState['kind'] | undefined {
    return this.states.at(-1)?.kind;
  }

  private told(): string {
    return JSON.stringify({
      states: this.states,
      readings: this.readings.slice(-3),
      bads: this.bads.slice(-3),
    });
  }
}

const PATIENCE_MS = 3000;

export function sourceContract(open: () => Promise<Bench>): void {
  const during = (
    what: string,
    work: (bench: Bench, told: Listener, running: Running) => Promise<void>,
  ): void =>
    test(what, async () => {
      const bench = await open();
      const told = new Listener();
      const running = bench.source.start(told);
      try {
        await told.until('open', () => told.standing === 'open');
        await work(bench, told, running);
      } finally {
        await running.stop();
        await bench.close();
      }
    });

  const saidAt = async (bench: Bench, told: Listener, values: Raw): Promise<void> => {
    await bench.say(values);
    await told.until(JSON.stringify(values), () => told.readings.some((raw) => same(raw, values)));
  };

  during('what the instrument says arrives, by channel', async (bench, told) => {
    await saidAt(bench, told, { P1: 12.3, G2: 1257.25 });
  });

  during('readings keep their order', async (bench, told) => {
    const said = [3.5, 1.25, 7.75, 2.5].map((P1, i) => ({ P1, G2: 1200.5 + i }));
    for (const values of said) await saidAt(bench, told, values);
    const heard = told.readings.map(({ P1 }) => P1).filter((value, i, all) => value !== all[i - 1]);
    expect(heard.slice(-4)).toEqual([3.5, 1.25, 7.75, 2.5]);
  });

  during('nonsense is told as bad and disturbs nothing', async (bench, told) => {
    if (bench.polled === true) return;
    await bench.say(undefined);
    await told.until('bad', () => told.bads.length > 0);
    await saidAt(bench, told, { P1: 4.5, G2: 1199.75 });
    expect(told.standing).toBe('open');
  });

  during('a cut wire is told, and mended by itself', async (bench, told) => {
    if (bench.cut === undefined || bench.mend === undefined) return;
    await saidAt(bench, told, { P1: 5.25, G2: 1198.5 });
    await bench.cut();
    await told.until('lost', () => told.standing === 'lost');
    await bench.mend();
    await told.until('open again', () => told.standing === 'open');
    await saidAt(bench, told, { P1: 6.5, G2: 1197.25 });
    expect(told.states.map(({ kind }) => kind).filter((kind) => kind === 'lost')).toHaveLength(1);
  });

  during('after it is stopped it tells nothing more', async (bench, told, running) => {
    await saidAt(bench, told, { P1: 8.75, G2: 1196.5 });
    await running.stop();
    const before = [told.readings.length, told.states.length, told.bads.length];
    await bench.say({ P1: 9.5, G2: 1195.25 });
    await new Promise((resolve) => void setImmediate(resolve));
    expect([told.readings.length, told.states.length, told.bads.length]).toEqual(before);
  });

  test('an instrument that is not there yet is waited for', async () => {
    const bench = await open();
    const told = new Listener();
    if (bench.cut === undefined || bench.mend === undefined) return bench.close();
    await bench.cut();
    const running = bench.source.start(told);
    try {
      await told.until('lost', () => told.standing === 'lost');
      await bench.mend();
      await told.until('open', () => told.standing === 'open');
    } finally {
      await running.stop();
      await bench.close();
    }
  });
}

const same = (raw: Raw, values: Raw): boolean =>
  Object.entries(values).every(([channel, value]) => Math.abs(raw[channel] - value) < 1e-9);
