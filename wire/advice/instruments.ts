/** The instruments of a plan as the adviser reads them, and what each may be off by. */
import { type GatherRule, type QuickTank, TAPE_LAID } from '@hoopwright/core/stretch';
import { fromBar } from '@hoopwright/core/units';
import type { Plan } from '../plan/plan.ts';
import type { Channel } from '../reading/channel.ts';

/** Gains and zeros that instruments may be off by: class 0.5 for gauges and wires, 0.05 % for tapes. Common practice, no source. */
const GAIN = { gauge: 0.005, wire: 0.005, tape: 0.0005 } as const;
/** Drift of a wire (mm) and of the water's temperature (K) in five minutes that nobody sees. Our estimate. */
export const DRIFT = { time: 300, wire: 0.02, water: 0.2 } as const;
/** Zero of a gauge over a step of its scale. */
const HALF_STEP = 0.5;

export interface Instruments {
  readonly gauges: readonly Channel[];
  /** In the order of the quick tank's girths, or of the plan's where there is none; undefined: not read. */
  readonly girths: readonly (Channel | undefined)[];
  /** Outside girth of each, mm. */
  readonly lengths: readonly number[];
  readonly thermometer?: Channel;
}

/** Standard deviation of one reading, in its unit. */
export const spreadOf = ({ noise, resolution }: Channel): number =>
  Math.max(Math.hypot(noise ?? 0, resolution / Math.sqrt(12)), 1e-9);

export interface InstrumentsGivens {
  readonly plan: Plan;
  readonly channels: readonly Channel[];
  readonly quick?: QuickTank | undefined;
}

export function instrumentsOf({ plan, channels, quick }: InstrumentsGivens): Instruments {
  const girths = channels.filter(({ reads }) => reads === 'girth');
  const names = quick?.tank.girths.map(({ name }) => name) ?? girths.map(({ name }) => name);
  const expected = plan.steps.flatMap(({ expected: all }) => all?.girths ?? []);
  const thermometer = channels.find(({ reads }) => reads === 'temperature');
  return {
    gauges: channels.filter(({ reads }) => reads === 'pressure').sort((a, b) => a.resolution - b.resolution),
    girths: names.map((name) => girths.find((channel) => channel.name === name)),
    lengths: names.map(
      (name) => expected.find((girth) => girth.name === name)?.girth_mm.value ?? USUAL_GIRTH,
    ),
    ...(thermometer === undefined ? {} : { thermometer }),
  };
}
/** mm; only where the plan foresees no girth. */
const USUAL_GIRTH = 1500;

export const errorsOf = ({ gauges, girths, lengths }: Instruments) => ({
  gauge: { gain: GAIN.gauge, zero: gauges.length === 0 ? 0 : fromBar(HALF_STEP * gauges[0].resolution) },
  girths: girths.map((channel, i) => ({
    gain: channel?.by.includes('wire') === true ? GAIN.wire : GAIN.tape,
    zero: channel === undefined ? 1 : spreadOf(channel) / lengths[i],
  })),
});

/** Of one reading among others: a tape is laid anew for each. */
const blurOf = (channel: Channel): number =>
  Math.hypot(spreadOf(channel), channel.by === 'tape' ? TAPE_LAID : 0);

/** Shares of the stretch pressure and of the planned growth that one moment of gathered rows may span. Our choice. */
const SPAN = 0.03;

export const gatherRuleFor = ({ target }: Plan, { gauges, girths, lengths }: Instruments): GatherRule => ({
  noise: {
    pressure: gauges.length === 0 ? 0 : fromBar(spreadOf(gauges[0])),
    girths: girths.map((channel, i) => (channel === undefined ? 1 : blurOf(channel) / lengths[i])),
  },
  span: {
    pressure: SPAN * fromBar(target.pressure_bar),
    growth: (SPAN * target.growth_percent.held.value) / 100,
  },
});
