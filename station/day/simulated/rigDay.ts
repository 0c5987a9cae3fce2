/** The simulated tank behind a rehearsed day: it passes time as the day's clock does, under what the director last ordered. */
import { diceOf } from '@hoopwright/core/gauge';
import { type BuiltIn, hiddenTank, livedTank } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { fromLitre } from '@hoopwright/core/units';
import { type DayState, type Fold, fold, permitted, type Written } from '@hoopwright/wire/day';
import type { Plan } from '@hoopwright/wire/plan';
import type { Channel } from '@hoopwright/wire/reading';
import type { Link } from '@hoopwright/wire/record';
import { rigSource } from '../../instrument/rig.ts';
import type { Later, Source } from '../../instrument/source.ts';
import type { Fault, FaultName } from '../../rig/fault.ts';
import { secretsOf } from '../../rig/rehearsal.ts';
import { type Order, Site } from '../../rig/site.ts';

export interface RigDayParts {
  /** The tank as it really is, but for air and faults. */
  readonly tank: Tank;
  readonly plan: Plan;
  readonly channels: readonly Channel[];
  readonly seed: number;
  readonly speed: number;
  readonly faults: readonly Fault[];
  readonly readings: 'by hand' | 'by wires';
  /** Highest pressure that the tank has seen on an earlier day, bar. */
  readonly seen_bar?: number;
  readonly mesh?: { readonly elements: number; readonly layers: number };
}

/** ms of real time between two looks of the simulated instruments. */
const EVERY_MS = 100;
/** Elements along half the meridian: 0.1 % off in pressure. */
const MESH = { elements: 80, layers: 5 } as const;
const USUAL_FLOW = 1;
const USUAL_STROKE = 50;
const RELIEF = 1.05;
/** Share of the air that water takes up per second and MPa, as in the rehearsal without a screen. */
const DISSOLVES = 1e-5;

const BUILT_IN: Readonly<Partial<Record<FaultName, BuiltIn>>> = {
  'soft-course': 'soft course',
  'weak-seam': 'weak seam',
};

/** Guards the simulated site of a day. */
export class RigDay {
  readonly parts: RigDayParts;
  private readonly site: Site;
  private bled = false;

  constructor(parts: RigDayParts) {
    const { tank, plan, channels, seed, faults, seen_bar, mesh = MESH } = parts;
    this.parts = parts;
    const dice = diceOf(seed);
    const builtIn = faults.flatMap(({ name }) => BUILT_IN[name] ?? []);
    this.site = new Site({
      lived: livedTank(hiddenTank(tank, dice, builtIn), { shell: mesh, dissolves: DISSOLVES }),
      channels,
      stroke: plan.water.stroke_mL ?? USUAL_STROKE,
      dice: dice.named('site'),
      faults: faults.filter(({ name }) => name !== 'server-restart' && BUILT_IN[name] === undefined),
      flow: fromLitre(plan.water.flow_L_per_min ?? USUAL_FLOW) / 60,
      relief: RELIEF * plan.target.pressure_bar,
      ...(seen_bar === undefined ? {} : { seen_bar }),
    });
  }

  get seconds(): number {
    return this.site.seconds;
  }

  /** A fault that was not planned happens now. */
  befall(name: FaultName): boolean {
    if (BUILT_IN[name] !== undefined || name === 'server-restart') return false;
    this.site.suffer({ name, at: this.site.seconds });
    return true;
  }

  /** What was hidden, for the end of the record. */
  secrets(): Written['body'] {
    return secretsOf(this.parts, this.site);
  }

  /** What an instrument shows; undefined where it says nothing. */
  read(name: string): number | undefined {
    return this.site.read(name);
  }

  /** What the instruments show to whoever may look, by hand. */
  shows(state: DayState, now_ms: number): Record<string, number> {
    const shown: Record<string, number> = {};
    for (const { channel } of permitted(state, now_ms)) {
      const value = this.read(channel.name);
      if (value !== undefined) shown[channel.name] = value;
    }
    return shown;
  }

  /** The instruments as a source; by hand they say nothing, and time passes all the same. */
  source(state: () => DayState, later: Later): Source {
    const { readings, speed, channels } = this.parts;
    const byWire = readings === 'by wires' ? channels.map(({ name }) => name) : [];
    return rigSource({
      name: 'rig',
      site: { pass: (seconds) => this.pass(seconds, state()), read: (name) => this.read(name) },
      channels: byWire,
      every_ms: EVERY_MS,
      speed,
      order: () => orderOf(state()),
      later,
    });
  }

  /** Nothing happens to a tank whose vent is open. */
  pass(seconds: number, state: DayState): void {
    if (state.ventShut_ms === undefined || this.site.burst !== undefined) return;
    const seats = state.step?.kind === 'seat';
    const down = isBleeding(state);
    if (down) this.bled = true;
    else if (seats && this.bled) {
      this.site.bleedAir();
      this.bled = false;
    }
    this.site.pass(seconds, orderOf(state));
  }

  /** Brings the site to where the record stands: it passes the same time under the same orders. */
  follow(start: Fold, links: Iterable<Link>): Fold {
    let now = start;
    let owed = 0;
    for (const link of links) {
      const next = fold(now, link);
      if (now.state.ventShut_ms !== undefined) owed += (next.inside.elapsed - now.inside.elapsed) / 1000;
      const turns = next.state.step !== now.state.step || next.state.phase !== now.state.phase;
      if (owed > LEAP || (turns && owed > 0)) {
        this.pass(owed, now.state);
        owed = 0;
      }
      now = next;
    }
    if (owed > 0) this.pass(owed, now.state);
    return now;
  }
}

/** s that are passed at once while a record is followed. */
const LEAP = 20;

const isBleeding = ({ plan, step, next }: DayState): boolean =>
  step !== undefined &&
  next !== undefined &&
  step.kind !== 'fill' &&
  plan?.plan.steps.find(({ number }) => number === next)?.kind === 'seat';

/** What pump and valves are told: by the step that the director has begun, never by the program. */
export function orderOf(state: DayState): Order {
  const { phase, step, plan } = state;
  if (phase === 'stopping' || phase === 'after' || phase === 'ended') return { kind: 'release', to: 0 };
  if (phase !== 'under way' || step === undefined) return { kind: 'shut' };
  if (isBleeding(state)) return { kind: 'release', to: 0 };
  switch (step.kind) {
    case 'seat':
    case 'first step':
    case 'rise':
      return { kind: 'pump', to: step.pressure_bar };
    case 'approach':
    case 'release':
      return { kind: 'release', to: step.pressure_bar };
    case 'hold':
    case 'final hold': {
      const valve = plan?.plan.steps.find(({ number }) => number === step.number)?.hold?.valve;
      return valve === 'open' ? { kind: 'pump', to: step.pressure_bar } : { kind: 'shut' };
    }
    case 'fill':
    case 'drain':
      return { kind: 'shut' };
  }
}
