/** A day rehearsed: a hidden tank, the frozen plan, the crew, and what the record of it holds. Same seed, same bytes. */
import { diceOf } from '@hoopwright/core/gauge';
import { type BuiltIn, hiddenTank, livedTank } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { fromLitre, toLitre } from '@hoopwright/core/units';
import { Adviser, type Stretchable } from '@hoopwright/wire/advice';
import { type FrozenPlan, freeze, type Plan, type TextHash } from '@hoopwright/wire/plan';
import { channelsOf } from '@hoopwright/wire/reading';
import type { About, Body, Draft } from '@hoopwright/wire/record';
import { Crew } from './crew.ts';
import type { Fault, FaultName } from './fault.ts';
import type { DayEnd, Happening } from './happening.ts';
import { Judge } from './judge.ts';
import { Site } from './site.ts';

export interface RehearsalParts {
  /** The tank as it really is, but for air and faults. */
  readonly tank: Tank;
  readonly plan: Plan;
  readonly seed: number;
  readonly faults: readonly Fault[];
  readonly hash: TextHash;
  /** Version of the program. */
  readonly program: string;
  /** Of the shell behind the simulated tank. */
  /** Quick tank and steels of the plan: with them the day is foreseen. */
  readonly stretch?: Stretchable;
  readonly mesh?: { readonly elements: number; readonly layers: number };
}

export interface Rehearsal {
  readonly about: About;
  readonly frozen: FrozenPlan;
  /** Drafts of the record in order, each with a line for the person who looks on. */
  readonly happenings: Generator<Rehearsed, DayEnd>;
}

export interface Rehearsed {
  readonly draft: Draft;
  /** s since the record began. */
  readonly seconds: number;
  readonly line?: string;
}

/** Rehearsals happen on a stated day, so that the same seed gives the same record: 2026-05-02, 09:00 UTC. */
export const REHEARSED_AT = Date.UTC(2026, 4, 2, 9);

/** Elements along half the meridian: 0.1 % off in pressure, and four days a second. */
const MESH = { elements: 80, layers: 5 } as const;
/** Relief valve over the stretch pressure where the plan names none. */
const RELIEF = 1.05;
/** Litres a minute of a pump that the plan does not know. */
const USUAL_FLOW = 1;
const USUAL_STROKE = 50;
/** Share of the air that water takes up per second and MPa: a tenth in an hour at 27 bar. Invented for rehearsals. */
const DISSOLVES = 1e-5;

export function rehearsal(parts: RehearsalParts): Rehearsal {
  const { plan, seed, hash } = parts;
  const frozen = freeze(plan, { name: 'rehearsal', revision: 'R', date: '2026-05-02' }, hash);
  const name = `rehearsal-${frozen.frozen.digest.slice(0, 8)}-${seed}`;
  const about: About = {
    format: 'hoopwright record',
    version: 1,
    record: name,
    kind: 'rehearsal',
    title: `${plan.tank.name}, rehearsed with seed ${seed}`,
    began_ms: REHEARSED_AT,
  };
  return { about, frozen, happenings: happeningsOf(parts, frozen) };
}

const BUILT_IN: Readonly<Partial<Record<FaultName, BuiltIn>>> = {
  'soft-course': 'soft course',
  'weak-seam': 'weak seam',
};

function* happeningsOf(parts: RehearsalParts, frozen: FrozenPlan): Generator<Rehearsed, DayEnd> {
  const site = siteOf(parts);
  const { channels } = site.parts;
  const restart = parts.faults.find(({ name }) => name === 'server-restart')?.at;
  const { plan, stretch } = parts;
  const adviser = new Adviser({ plan, channels, ...(stretch === undefined ? {} : { stretch }) });
  const stamp = stamper();
  const first = opening(parts, { frozen, site });
  const crew = new Crew({
    frozen,
    site,
    channels,
    judge: new Judge(adviser),
    entriesBefore: first.length,
    ...(restart === undefined ? {} : { restart }),
  });
  for (const one of first) yield stamp({ seconds: 0, run: 1, ...one });
  const day = crew.day();
  let next = day.next();
  while (next.done !== true) {
    yield stamp(next.value);
    next = day.next();
  }
  const end = { ...next.value, hidden: secretsOf(parts, site) };
  yield stamp(crew.happening('end', end, `end: ${end.end}; ${end.why}`));
  return next.value;
}

function siteOf({ tank, plan, seed, faults, mesh = MESH }: RehearsalParts): Site {
  const dice = diceOf(seed);
  const builtIn = faults.flatMap(({ name }) => BUILT_IN[name] ?? []);
  return new Site({
    lived: livedTank(hiddenTank(tank, dice, builtIn), { shell: mesh, dissolves: DISSOLVES }),
    channels: channelsOf(plan),
    stroke: plan.water.stroke_mL ?? USUAL_STROKE,
    dice: dice.named('site'),
    faults: faults.filter(({ name }) => name !== 'server-restart' && BUILT_IN[name] === undefined),
    flow: fromLitre(plan.water.flow_L_per_min ?? USUAL_FLOW) / 60,
    relief: RELIEF * plan.target.pressure_bar,
  });
}

interface Opening {
  readonly frozen: FrozenPlan;
  readonly site: Site;
}

function opening(
  { program, seed, plan }: RehearsalParts,
  { frozen, site }: Opening,
): Pick<Happening, 'kind' | 'body' | 'line'>[] {
  const { name, revision, digest } = frozen.frozen;
  const rig = { flow_L_per_min: (60 * site.parts.flow) / 1e6, relief_bar: site.parts.relief };
  const setUp = { tank: plan.tank, channels: site.parts.channels, roles: plan.roles, rig };
  return [
    { kind: 'start', body: { program, rehearsed: true, seed } },
    { kind: 'set-up', body: asBody(setUp) },
    { kind: 'plan', body: asBody(frozen), line: `plan ${name} ${revision}, digest ${digest.slice(0, 16)}` },
  ];
}

/** Records hold JSON: what is undefined is left out. */
const asBody = (value: object): Body => JSON.parse(JSON.stringify(value));

/** What the crew did not know, for the talk afterwards. */
export function secretsOf(
  { tank, seed, faults }: Pick<RehearsalParts, 'tank' | 'seed' | 'faults'>,
  { real, parts }: Site,
): Body {
  const [course] = tank.courses;
  return {
    seed,
    faults: faults.map(({ name, at }) => ({ name, at_s: at })),
    wall_mm: course.wall,
    biaxialFactor: course.steel.biaxialFactor,
    perEfold_MPa: course.steel.rate?.perEfold ?? 0,
    trappedAir_L: toLitre(parts.lived.tank.water.trappedAir),
    growth_percent: 100 * real.growth,
    lost_L: toLitre(real.lost),
  };
}

/** Gives each happening its two clocks. The monotonic one starts anew with each run. */
function stamper(): (happening: Happening) => Rehearsed {
  let run = 0;
  let began = 0;
  return ({ seconds, run: now, kind, body, line }) => {
    if (now !== run) [run, began] = [now, seconds];
    const mono_ms = Math.round(1000 * (seconds - began));
    const wall_ms = REHEARSED_AT + Math.round(1000 * seconds);
    const draft = { run, mono_ms, wall_ms, kind, body };
    return { draft, seconds, ...(line === undefined ? {} : { line }) };
  };
}
