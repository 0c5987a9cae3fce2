/** Dangers with their figures, one sentence each. */
import type { Danger } from '@hoopwright/wire/plan';
import type { Figures } from '../figures.ts';
import { catalogue } from './fill.ts';

const ENGLISH = {
  wall: 'Energy of the stretched wall: {energy}.',
  water: 'Energy of the compressed water: {energy} in {volume}.',
  air: 'Energy of the trapped air: {energy}. It is {filling} at filling, {under} under pressure. Each litre of air at filling adds {perLitre}; bleeding it takes that away.',
  'air none': 'Energy of trapped air: none is expected. Each litre of air at filling would add {perLitre}.',
  'stand-off':
    'Stand-off by ASME PCC-2 ({edition}): the air alone asks for {byAir}, all the energy as if it were gas {byAll}; {governs}. Distance to keep: {distance}.',
  'edition 2008': 'edition 2008, Article 5.1',
  'edition later': 'later editions, Article 501',
  'floor governs': 'the least distance of the method governs',
  'energy governs': 'the energy governs',
  'stated nearer': 'People are at {stated}: nearer than the method asks.',
  'stated farther': 'People are at {stated}.',
  'stated nothing': 'The distance of people is not stated.',
  plug: 'Force on {name}, diameter {diameter}: {force}. Nobody in its line.',
  hose: 'Force at the end of the hose, inside diameter {diameter}: {force}. Tie it.',
  'hose open': 'The hose is not stated: tie it at both ends and along its way.',
  'release both': 'Release: {first}. If that fails: {second}.',
  'release one': 'Release: {first}. There is no second way: find one.',
  'release none': 'It is not stated how the pressure is let out from behind the wall.',
  relief: 'Relief valve: opens at {opens}, {over} over the stretch pressure.',
  'relief flow':
    'Relief valve: opens at {opens}, {over} over the stretch pressure, and passes {flow} against {pump} of the pump.',
  'relief none':
    'No relief valve is stated. Set one just over {target}, which passes more than the pump gives.',
  mass: 'Filled, the tank weighs {all}: {water} of water, {tank} of tank. What floor and stand carry is not stated.',
  'mass carried':
    'Filled, the tank weighs {all}: {water} of water, {tank} of tank. Floor and stand carry {carries}.',
  'collapse under':
    'Drained with its vent shut, the stretched barrel is crushed at {pressure} of suction, {margin} times one atmosphere: less than an empty tank can draw. Its life hangs on an open vent.',
  'collapse near':
    'From outside a round stretched barrel is crushed at {pressure}, {margin} times one atmosphere. Codes take 3 (from memory), and a stretched barrel is less round: drain it with the vent open only.',
  'collapse ample':
    'From outside a round stretched barrel is crushed at {pressure}, {margin} times one atmosphere: ample for a round one, less for a dented one. Drain it with the vent open all the same.',
  'collapse none': 'The barrel is too short for the published collapse formula: drain it with the vent open.',
  'knuckle outside': 'Knuckle of the {head} head: {because}. Watch it, camera there.',
  'knuckle watch':
    'Knuckle of the {head} head: {at} is over {limit} ({name}), it may wrinkle. Watch it, camera there.',
  'knuckle no':
    'Knuckle of the {head} head: {at} stays under the lowest published pressure, {limit} ({name}). That does not rule wrinkles out.',
  chloride: 'Chloride in the water: {chloride} ppm; usual limit {limit} ppm (from memory).',
  'chloride open': 'Chloride in the water is not stated; usual limit {limit} ppm (from memory).',
  cold: 'Water at {water}, site at {site}. The metal should have {metal} or more (from memory).',
  'cold open':
    'Water at {water}. The metal should have {metal} or more (from memory); the site is not stated.',
} as const;

const filled = catalogue(ENGLISH);

type Of<K extends Danger['kind']> = Extract<Danger, { kind: K }>;

/** @param target stretch pressure, bar */
export function dangerText(danger: Danger, f: Figures, target: number): string {
  switch (danger.kind) {
    case 'energy':
      return energyText(danger, f);
    case 'stand-off':
      return standOffText(danger, f);
    case 'plug':
      return filled('plug', {
        name: danger.name,
        diameter: f.length(danger.diameter_mm),
        force: f.force(danger.force_kN),
      });
    case 'hose':
      return danger.diameter_mm === undefined || danger.force_kN === undefined
        ? filled('hose open')
        : filled('hose', { diameter: f.length(danger.diameter_mm), force: f.force(danger.force_kN) });
    case 'release':
      return releaseText(danger);
    case 'relief':
      return reliefText(danger, f, target);
    case 'mass':
      return massText(danger, f);
    case 'collapse':
      return collapseText(danger, f);
    case 'knuckle':
      return knuckleText(danger, f);
    case 'water':
      return danger.chloride_ppm === undefined
        ? filled('chloride open', { limit: f.count(danger.limit_ppm) })
        : filled('chloride', { chloride: f.count(danger.chloride_ppm), limit: f.count(danger.limit_ppm) });
    case 'cold':
      return coldText(danger, f);
  }
}

/** The sentence, and the one figure of it that the eye looks for; empty where there is none. */
export const dangerRow = (danger: Danger, f: Figures, target: number): { figure: string; text: string } => ({
  figure: figureOf(danger, f),
  text: dangerText(danger, f, target),
});

function figureOf(danger: Danger, f: Figures): string {
  switch (danger.kind) {
    case 'energy':
      return f.energy(danger.energy_J);
    case 'stand-off':
      return f.distance(Math.max(danger.air.distance_m, danger.all.distance_m));
    case 'plug':
      return f.force(danger.force_kN);
    case 'hose':
      return danger.force_kN === undefined ? '' : f.force(danger.force_kN);
    case 'relief':
      return danger.opens_bar === undefined ? '' : f.pressure(danger.opens_bar);
    case 'mass':
      return f.mass(danger.all_kg);
    case 'collapse':
      return danger.pressure_bar === undefined ? '' : f.pressure(danger.pressure_bar);
    default:
      return '';
  }
}

function energyText(danger: Of<'energy'>, f: Figures): string {
  const energy = f.energy(danger.energy_J);
  switch (danger.of) {
    case 'wall':
      return filled('wall', { energy });
    case 'water':
      return filled('water', { energy, volume: f.content(danger.volume_L ?? 0) });
    case 'air': {
      const perLitre = f.energy(danger.perLitre_J);
      if (danger.filling_L === 0) return filled('air none', { perLitre });
      const [filling, under] = [f.litres(danger.filling_L), f.litres(danger.underPressure_L)];
      return filled('air', { energy, filling, under, perLitre });
    }
  }
}

function standOffText({ edition, air, all, stated_m }: Of<'stand-off'>, f: Figures): string {
  const distance = Math.max(air.distance_m, all.distance_m);
  const off = filled('stand-off', {
    edition: filled(`edition ${edition}`),
    byAir: f.distance(air.byEnergy_m),
    byAll: f.distance(all.byEnergy_m),
    governs: filled(all.floorGoverns ? 'floor governs' : 'energy governs'),
    distance: f.distance(distance),
  });
  if (stated_m === undefined) return `${off} ${filled('stated nothing')}`;
  const stated = f.distance(stated_m);
  return `${off} ${filled(stated_m < distance ? 'stated nearer' : 'stated farther', { stated })}`;
}

function releaseText({ first, second }: Of<'release'>): string {
  if (first === undefined) return filled('release none');
  return second === undefined ? filled('release one', { first }) : filled('release both', { first, second });
}

function reliefText(danger: Of<'relief'>, f: Figures, target: number): string {
  const { opens_bar, over_percent = 0, flow_L_per_min, pump_L_per_min } = danger;
  if (opens_bar === undefined) return filled('relief none', { target: f.pressure(target) });
  const [opens, over] = [f.pressure(opens_bar), `${f.plain(over_percent, 1)} %`];
  if (flow_L_per_min === undefined || pump_L_per_min === undefined) return filled('relief', { opens, over });
  return filled('relief flow', { opens, over, flow: f.flow(flow_L_per_min), pump: f.flow(pump_L_per_min) });
}

function massText({ all_kg, water_kg, tank_kg, carries_kg }: Of<'mass'>, f: Figures): string {
  const masses = { all: f.mass(all_kg), water: f.mass(water_kg), tank: f.mass(tank_kg) };
  return carries_kg === undefined
    ? filled('mass', masses)
    : filled('mass carried', { ...masses, carries: f.mass(carries_kg) });
}

function collapseText({ pressure_bar, margin, ventMustBeOpen }: Of<'collapse'>, f: Figures): string {
  if (pressure_bar === undefined || margin === undefined) return filled('collapse none');
  const must = margin < 1 ? 'collapse under' : 'collapse near';
  return filled(ventMustBeOpen ? must : 'collapse ample', {
    pressure: f.pressure(pressure_bar),
    margin: f.plain(margin, 1),
  });
}

function knuckleText({ head, verdict, because, at_bar, lowest }: Of<'knuckle'>, f: Figures): string {
  if (lowest === undefined) return filled('knuckle outside', { head, because });
  const figures = { head, at: f.pressure(at_bar), limit: f.pressure(lowest.pressure_bar), name: lowest.name };
  return filled(verdict === 'no sign' ? 'knuckle no' : 'knuckle watch', figures);
}

function coldText({ site_C, water_C, metalFrom_C }: Of<'cold'>, f: Figures): string {
  const [water, metal] = [f.temperature(water_C), f.temperature(metalFrom_C)];
  return site_C === undefined
    ? filled('cold open', { water, metal })
    : filled('cold', { water, site: f.temperature(site_C), metal });
}
