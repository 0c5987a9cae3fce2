/** From a tank file to its plan, or to the reasons why there is none. */
import { type Forecast, type Stored, storedAt } from '@hoopwright/core/stretch';
import { type Duty, stretchPressure, type Tank } from '@hoopwright/core/tank';
import { fromLitre, fromPercent, toPercent } from '@hoopwright/core/units';
import { forecastFile } from '../forecast/forecastFile.ts';
import { canonical } from '../record/canonical.ts';
import type { TankFile } from '../tank/format/tankFile.ts';
import { dangersOf, METAL_FROM } from './part/dangers.ts';
import { firstStepSees } from './part/firstStep.ts';
import { foresee, type ForesightOrders, type Foreseen } from './foresight/foresee.ts';
import { leakSeen, needsOf, placesOf } from './part/instruments.ts';
import { limitsOf, limitValue } from './part/limits.ts';
import type { Danger } from './danger.ts';
import { inBar } from './inBar.ts';
import { allowedBy, type Limit, type Plan, type PlanRemark } from './plan.ts';
import type { PlanRange } from './foresight/range.ts';
import { type Refusal, refusedBurst, refusedForesight, refusedSetUp } from './refusals.ts';
import { type SetUp, setUpOf } from './setup/setUp.ts';
import { stepsOf } from './part/steps.ts';
import { targetOf, waterOf } from './part/target.ts';

/** SHA-256 of the UTF-8 bytes of a text, 64 hex digits; handed in, as each machine has a well-kept one. */
export type TextHash = (text: string) => string;

export interface PlanGivens {
  /** As given: its canonical JSON is what the plan's digest of the tank covers. */
  readonly file: TankFile;
  readonly tank: Tank;
  /** Absent: there is nothing to plan, and the answer says so. */
  readonly duty?: Duty;
  /** Digest of the coupon files behind the steel; undefined: none. */
  readonly evidence?: string;
  readonly program: string;
  readonly hash: TextHash;
  readonly progress?: (fraction: number) => boolean;
  readonly shell?: NonNullable<ForesightOrders['shell']>;
  /** Days of other steels on this day's ladder; without it the plan says that its steel is assumed. */
  readonly range?: (foreseen: Foreseen, orders: ForesightOrders) => PlanRange | undefined;
}

export type PlanAnswer =
  | { readonly kind: 'plan'; readonly plan: Plan; readonly foreseen: Foreseen }
  | { readonly kind: 'refused'; readonly reasons: readonly Refusal[] };

const refused = (reasons: readonly Refusal[]): PlanAnswer => ({ kind: 'refused', reasons });

export function planFor(givens: PlanGivens): PlanAnswer {
  const { file, tank, duty } = givens;
  if (duty === undefined) return refused([{ code: 'no duty' }]);
  const target = stretchPressure(duty);
  const setUp = setUpOf(file, tank, target);
  const early = refusedSetUp(tank, setUp, target);
  const orders: ForesightOrders = {
    duty: { ...duty, ...(setUp.pump.flow === undefined ? {} : { pump: setUp.pump.flow }) },
    target,
    approach: setUp.approach,
    ...(givens.progress === undefined ? {} : { progress: givens.progress }),
    ...(givens.shell === undefined ? {} : { shell: givens.shell }),
  };
  const sight = foresee(tank, orders);
  if (sight.kind === 'bursts before') return refused([...early, refusedBurst(sight.forecast, target)]);
  const range = givens.range?.(sight.foreseen, orders);
  return planOn({ ...givens, duty: orders.duty, setUp, foreseen: sight.foreseen, early, range });
}

interface Foundation extends Omit<PlanGivens, 'range' | 'duty'> {
  readonly duty: Duty;
  readonly setUp: SetUp;
  readonly foreseen: Foreseen;
  readonly early: readonly Refusal[];
  readonly range: PlanRange | undefined;
}

function planOn(base: Foundation): PlanAnswer {
  const { tank, duty, setUp, foreseen, range } = base;
  const stored = storedAt(foreseen.forecast);
  if (stored === undefined) throw new Error('a tank that was foreseen to the end was not released');
  const leak = leakSeen({ foreseen, setUp });
  const limits = limitsOf({ foreseen, setUp, leak, elasticEnergy: stored.wall + stored.water });
  const survives = range?.survive99;
  const late = refusedForesight({
    tank,
    duty,
    setUp,
    foreseen,
    airLimit: fromLitre(limitValue(limits, 'trappedAir_L')),
    ...(survives === undefined || range === undefined
      ? {}
      : {
          survive99: {
            pressure: survives.assured ?? survives.value,
            draws: range.draws.length + range.burst,
          },
        }),
  });
  if (base.early.length + late.length > 0) return refused([...base.early, ...late]);
  return { kind: 'plan', plan: assemble(base, { stored, limits, leak }), foreseen };
}

interface Findings {
  readonly stored: Stored;
  readonly limits: readonly Limit[];
  readonly leak: Plan['leak'];
}

function assemble(base: Foundation, { stored, limits, leak }: Findings): Plan {
  const { file, tank, duty, setUp, foreseen, range, program, hash, evidence } = base;
  const given = { tank, duty, foreseen, ...(range === undefined ? {} : { range }) };
  const dangers = dangersOf({ tank, foreseen, setUp, stored });
  return {
    hoopwrightPlan: 1,
    tank: {
      name: tank.name,
      ...(tank.serial === undefined ? {} : { serial: tank.serial }),
      digest: tankDigest(file, hash),
      ...(evidence === undefined ? {} : { evidence }),
    },
    forecast: {
      program,
      digest: forecastDigest(foreseen.forecast, hash),
      ...(range === undefined
        ? {}
        : {
            range: {
              draws: range.draws.length + range.burst,
              burst: range.burst,
              basis: range.basis,
            },
          }),
    },
    target: targetOf(given),
    water: waterOf(given, setUp),
    steps: stepsOf({ foreseen, setUp, ...(range === undefined ? {} : { range }) }),
    unit_bar: inBar(foreseen.ladder.unit),
    rest: { atLeast_min: foreseen.rule.atLeast / 60, cap_min: foreseen.rule.cap / 60 },
    limits,
    approach_bar: inBar(setUp.approach),
    places: placesOf(setUp, foreseen.ladder.target),
    instruments: needsOf({
      foreseen,
      setUp,
      airLimit: fromLitre(limitValue(limits, 'trappedAir_L')),
      leakLimit: (1e3 * limitValue(limits, 'leak_mL_per_min')) / 60,
      growthLimit: fromPercent(limitValue(limits, 'growthUnderPressure_percent')),
    }),
    firstStep: firstStepSees(foreseen, setUp),
    leak,
    roles: setUp.roles,
    dangers,
    assumed: setUp.assumed,
    open: setUp.open,
    remarks: remarksOf(base, { dangers, limits }),
    paper: setUp.paper,
  };
}

/** Digest of a tank file: of its canonical JSON (RFC 8785), so that blanks and the order of keys do not count. */
export const tankDigest = (file: TankFile, hash: TextHash): string => hash(canonical(file));

const forecastDigest = (forecast: Forecast, hash: TextHash): string =>
  hash(canonical(forecastFile(forecast, { warnings: [], notes: [], profile: false })));

interface Remarked {
  readonly dangers: readonly Danger[];
  readonly limits: readonly Limit[];
}

function remarksOf({ tank, duty, setUp, foreseen }: Foundation, { dangers, limits }: Remarked): PlanRemark[] {
  const { forecast, rest, ladder } = foreseen;
  const mass = dangers.find((d) => d.kind === 'mass');
  const off = dangers.find((d) => d.kind === 'stand-off');
  const coldest = Math.min(tank.water.temperature, setUp.site ?? Infinity);
  const said: readonly (readonly [boolean, PlanRemark])[] = [
    [forecast.datum.solver.shell.metals.every((m) => m.viscosity === 0), 'no rate effect'],
    [!rest.settled, 'does not settle'],
    [(forecast.held ?? forecast.arrived)?.plastic.barrel === 0, 'does not yield'],
    [duty.holds.some((h) => h.pressure <= ladder.first[2] * (1 + 1e-9)), 'hold within first step'],
    [forecast.maximum === undefined, 'no maximum'],
    [forecast.maximum?.extrapolated === true, 'maximum beyond evidence'],
    [(setUp.relief?.opens ?? 0) > 1.1 * ladder.target, 'relief far over'],
    [setUp.gauges.some((g) => g.range > 4 * ladder.target), 'gauge over-ranged'],
    [mass?.carries_kg !== undefined && mass.carries_kg < mass.all_kg, 'floor too weak'],
    [off?.stated_m !== undefined && off.stated_m < off.air.distance_m, 'nearer than the method'],
    [(setUp.chloride ?? 0) > 50, 'chloride over limit'],
    [coldest < METAL_FROM, 'too cold'],
    [seamOver(forecast, limits), 'seam strained over its limit'],
  ];
  return said.flatMap(([is, what]) => (is ? [what] : []));
}

/** The seam of the one forecast, without its range: a seam that parts bursts before and has no plan. */
function seamOver({ seam }: Forecast, limits: readonly Limit[]): boolean {
  const allowed = allowedBy(limits, 'seamStrain_percent');
  return allowed !== undefined && toPercent(Math.expm1(seam?.strain ?? 0)) > allowed;
}
