/** Where the tank stands in the range that was foreseen before the day: noted quietly outside it, an oddity far beyond. */
import {
  type Knowledge,
  levelBehind,
  levelNow,
  quickPath,
  rising,
  type Seen,
  type Unknowns,
} from '@hoopwright/core/stretch';
import type { Facts, Oddity, Stretchable } from '../facts.ts';
import type { Instruments } from '../instruments.ts';

export interface StandingGivens {
  readonly instruments: Instruments;
  readonly unknowns: Unknowns | undefined;
  readonly stretch: Stretchable | undefined;
}

/** Steels that stand for the range of the day before. */
const STEELS = 100;

/** Guards the last look; what stands is said as long as it stands. */
export class Standing {
  private readonly givens: StandingGivens;
  private readonly before: Parameters<typeof levelNow>[0]['before'];
  private last: { readonly oddity: Oddity; readonly says: 'quiet' | 'alarm' } | undefined;

  constructor(givens: StandingGivens) {
    this.givens = givens;
    const { stretch } = givens;
    this.before =
      stretch === undefined
        ? []
        : stretch.draws
            .slice(0, STEELS)
            .map((draw) => ({ draw, path: rising(quickPath(stretch.quick, draw)) }));
  }

  startAnew(): void {
    this.last = undefined;
  }

  look(seen: readonly Seen[], knowledge: Knowledge): void {
    const { unknowns, instruments } = this.givens;
    if (unknowns === undefined) return;
    const level = levelNow({ before: this.before, unknowns, seen });
    this.last = undefined;
    if (level === undefined || level.says === 'inside') return;
    const oddity: Oddity = {
      what: level.clear > 0 ? 'stronger than foreseen' : 'softer than foreseen',
      channels: [instruments.girths[level.girth]?.name ?? ''],
      explained: levelBehind(unknowns, knowledge),
    };
    this.last = { oddity, says: level.says };
  }

  found(aside: ReadonlySet<string>): readonly Oddity[] {
    return this.is('alarm', aside);
  }

  noted(aside: ReadonlySet<string>): Pick<Facts, 'noted'> {
    const [noted] = this.is('quiet', aside);
    return noted === undefined ? {} : { noted };
  }

  private is(says: 'quiet' | 'alarm', aside: ReadonlySet<string>): readonly Oddity[] {
    const { last } = this;
    return last === undefined || last.says !== says || last.oddity.channels.some((name) => aside.has(name))
      ? []
      : [last.oddity];
  }
}
