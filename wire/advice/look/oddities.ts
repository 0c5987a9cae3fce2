/** What sound tanks and instruments do not show, called once each: gauges apart, a wire that slipped, a girth that stands out. */
import {
  elasticBy,
  type ElasticPoint,
  type Explained,
  gaugesApart,
  gaugesExplained,
  partedExplained,
  partedGirth,
  type QuickPath,
  SLIP_READINGS,
  slipOf,
} from '@hoopwright/core/stretch';
import { fromBar } from '@hoopwright/core/units';
import type { Channel } from '../../reading/channel.ts';
import type { Row } from '../../reading/row.ts';
import type { Oddity } from '../facts.ts';

export interface OdditiesGivens {
  /** Finest first. */
  readonly gauges: readonly Channel[];
  readonly girths: readonly (Channel | undefined)[];
  readonly lengths: readonly number[];
  readonly path?: QuickPath;
  /** In the order of the girths: a girth seam lies beside it. */
  readonly nearSeam?: readonly boolean[];
}

/** Gains that sound instruments may be off by. Common practice, no source. */
const GAIN = 0.005;
/** Spread of an elastic slope over the model: wall 2 %, gain of the girths. */
const SLOPE = 0.021;
/** Growth under which the tank is taken as elastic. */
const ELASTIC = 0.0007;
/** Looks in a row that a girth must stand out. */
const IN_A_ROW = 2;
/** s between rows over which a jump is no slip any more: the pump itself may have made it. Our choice. */
const NEXT = 5;

/** Guards what was seen so far. */
export class Oddities {
  private readonly givens: OdditiesGivens;
  private called: Oddity[] = [];
  private elastic: ElasticPoint[] = [];
  private recent: { readonly seconds: number; readonly growths: readonly (number | undefined)[] }[] = [];
  private parted: { by: number; growth: number; girth: number }[] = [];

  constructor(givens: OdditiesGivens) {
    this.givens = givens;
  }

  startAnew(): void {
    [this.called, this.elastic, this.recent, this.parted] = [[], [], [], []];
  }

  /** Those whose channels are still believed. */
  found(aside: ReadonlySet<string>): readonly Oddity[] {
    return this.called.filter(({ channels }) => !channels.some((name) => aside.has(name)));
  }

  take(row: Row, growths: readonly (number | undefined)[]): void {
    this.slips(row, growths);
    this.apart(row, growths);
    this.standsOut(growths);
  }

  private call(what: Oddity['what'], channels: readonly string[], explained: Explained): void {
    if (this.called.some((one) => one.what === what && one.channels.join() === channels.join())) return;
    this.called.push({ what, channels, explained });
  }

  private slips(row: Row, growths: readonly (number | undefined)[]): void {
    const last = this.recent.at(-1);
    if (last !== undefined && row.seconds - last.seconds > NEXT) this.recent = [];
    this.recent.push({ seconds: row.seconds, growths });
    if (this.recent.length > SLIP_READINGS) this.recent.shift();
    const read = this.givens.girths.map((channel, i) =>
      channel === undefined ? [] : this.recent.flatMap((one) => one.growths[i] ?? []),
    );
    const jumps = read.map((readings, i) =>
      slipOf({ readings, blur: this.blur(i), others: read.filter((_, other) => other !== i) }),
    );
    const i = jumps.findIndex((jump) => jump !== undefined);
    if (i < 0 || jumps.filter((jump) => jump !== undefined).length > 1) return;
    const points = [{ by: jumps[i] ?? 0, growth: growths[i] ?? 0 }];
    const explained = partedExplained({
      points,
      blur: this.blur(i),
      nearSeam: this.nearSeam(i),
      jumped: true,
    });
    this.call('wire slipped', [this.name(i)], explained);
  }

  private apart({ values }: Row, growths: readonly (number | undefined)[]): void {
    const [a, b] = this.givens.gauges;
    if (a === undefined || b === undefined) return;
    const [first, second] = [values[a.name], values[b.name]];
    if (first === undefined || second === undefined) return;
    const read = growths.filter((growth) => growth !== undefined);
    const mean = read.reduce((sum, x) => sum + x, 0) / read.length;
    if (mean < ELASTIC) this.elastic.push({ pressures: [fromBar(first), fromBar(second)], growth: mean });
    const step = Math.max(a.resolution, b.resolution);
    const ratio = gaugesApart({
      first: fromBar(first),
      second: fromBar(second),
      count: 1,
      noise: fromBar(Math.hypot(step / Math.sqrt(12), a.noise ?? 0, b.noise ?? 0)),
      zero: fromBar(0.5 * step),
      gain: GAIN,
    });
    if (ratio === undefined) return;
    const { path } = this.givens;
    const slopes =
      path === undefined ? undefined : elasticBy(this.elastic, path.girths[0][0] / path.pressure[0]);
    this.call('gauges apart', [a.name, b.name], gaugesExplained(ratio, slopes, SLOPE));
  }

  private standsOut(growths: readonly (number | undefined)[]): void {
    const { path } = this.givens;
    if (path === undefined) return;
    const blur = Math.max(...growths.map((growth, i) => (growth === undefined ? 0 : this.blur(i))));
    const found = partedGirth({ growths, path, blur, gain: GAIN });
    if (found === undefined) {
      this.parted = [];
      return;
    }
    this.parted.push({ by: found.by, growth: growths[found.girth] ?? 0, girth: found.girth });
    if (this.parted.length < IN_A_ROW) return;
    const explained = partedExplained({
      points: this.parted,
      blur,
      nearSeam: this.nearSeam(found.girth),
      jumped: false,
    });
    this.call('girth stands out', [this.name(found.girth)], explained);
  }

  private nearSeam(i: number): boolean {
    return this.givens.nearSeam?.[i] ?? false;
  }

  private blur(i: number): number {
    const channel = this.givens.girths[i];
    if (channel === undefined) return 1;
    return Math.hypot(channel.noise ?? 0, channel.resolution / Math.sqrt(12)) / this.givens.lengths[i];
  }

  private name(i: number): string {
    return this.givens.girths[i]?.name ?? '';
  }
}
