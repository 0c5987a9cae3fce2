/** The three numbers of the director's screen. */
import type { Plan } from '../../plan/plan.ts';
import type { FoldedRow, Inside } from './inside.ts';
import type { ChannelNow, DayState, FigureNow, Figures } from '../state.ts';

/** The first reading of each girth is its zero; what was foreseen up to its step counts as grown. */
export function zerosWith(zeros: Inside['zeros'], row: FoldedRow, plan: Plan | undefined): Inside['zeros'] {
  let after = zeros;
  for (const [name, value] of Object.entries(row.values)) {
    if (after[name] !== undefined || plan === undefined) continue;
    if (!plan.places.some((place) => place.name === name && place.reads === 'girth')) continue;
    const step = plan.steps.find(({ number }) => number === row.step);
    const at = step?.expected?.girths.find((girth) => girth.name === name);
    const grown = at?.growth_percent.value ?? 0;
    const base = at === undefined ? value : at.girth_mm.value / (1 + grown / 100);
    after = { ...after, [name]: { value, base, grown } };
  }
  return after;
}

export function figuresOf({ channels, figures, plan }: DayState, zeros: Inside['zeros']): Figures {
  const told = channels.filter(
    ({ last, aside, unproved }) => last !== undefined && aside === undefined && unproved === undefined,
  );
  const pressure = pressureIn(told) ?? figures.pressure;
  const growth = growthIn(told, zeros) ?? figures.growth;
  const litres = litresIn(told, plan?.plan) ?? figures.litres;
  const highest = Math.max(figures.highest_bar ?? -Infinity, pressure?.value ?? -Infinity);
  return {
    ...(pressure === undefined ? {} : { pressure }),
    ...(growth === undefined ? {} : { growth }),
    ...(litres === undefined ? {} : { litres }),
    ...(Number.isFinite(highest) ? { highest_bar: highest } : {}),
  };
}

const figure = ({ channel, last, fresh_s }: ChannelNow, value: number): FigureNow => ({
  value,
  channel: channel.name,
  wall_ms: last?.wall_ms ?? 0,
  fresh_s,
});

/** The finest gauge that speaks; one that is late gives way to one that is newer by more than it may be old. */
function pressureIn(told: readonly ChannelNow[]): FigureNow | undefined {
  const gauges = told
    .filter(({ channel }) => channel.reads === 'pressure')
    .sort((a, b) => a.channel.resolution - b.channel.resolution);
  const newest = Math.max(...gauges.map(({ last }) => last?.wall_ms ?? 0));
  const best = gauges.find(({ last, fresh_s }) => newest - (last?.wall_ms ?? 0) <= 1000 * fresh_s);
  return best?.last === undefined ? undefined : figure(best, best.last.value);
}

function growthIn(told: readonly ChannelNow[], zeros: Inside['zeros']): Figures['growth'] {
  let most: Figures['growth'];
  for (const one of told) {
    const { channel, last } = one;
    const zero = zeros[channel.name];
    if (channel.reads !== 'girth' || last === undefined || zero === undefined) continue;
    const value = (100 * (last.value - zero.value)) / zero.base + zero.grown;
    if (most === undefined || value > most.value) most = { ...figure(one, value), girth: channel.name };
  }
  return most;
}

function litresIn(told: readonly ChannelNow[], plan: Plan | undefined): FigureNow | undefined {
  for (const one of told) {
    const { channel, last } = one;
    if (last === undefined) continue;
    if (channel.reads === 'litres') return figure(one, last.value);
    if (channel.reads === 'strokes' && plan?.water.stroke_mL !== undefined)
      return figure(one, (last.value * plan.water.stroke_mL) / 1e3);
  }
  return undefined;
}
