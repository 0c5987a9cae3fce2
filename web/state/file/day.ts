/** The set-up of the day in the tank file: what can be added to it, each as it usually is. */
import { type FileDraft, isList, isRecord, type Json, valueAt, withValue, without } from './edit.ts';

export type DayList = 'day.gauges' | 'day.readings' | 'day.plugs';

export const countOf = (draft: FileDraft, list: DayList): number => {
  const value = valueAt(draft, list);
  return isList(value) ? value.length : 0;
};

/** Names of the girths of the tank; where the file names none there is one in the middle. */
export function girthsOf(draft: FileDraft): string[] {
  const girths = draft['girths'];
  const names = isList(girths)
    ? girths.flatMap((one) => (isRecord(one) && typeof one['name'] === 'string' ? [one['name']] : []))
    : [];
  return names.length === 0 ? ['middle'] : names;
}

export function withOneMore(draft: FileDraft, list: DayList): FileDraft {
  const there = valueAt(draft, list);
  return withValue(draft, list, [...(isList(there) ? there : []), usual(draft, list)]);
}

export const withOneLess = (draft: FileDraft, list: DayList, index: number): FileDraft =>
  without(draft, `${list}[${index}]`);

/** Nominal ranges of gauges, bar (EN 837-1, from memory). */
const RANGES = [1, 1.6, 2.5, 4, 6, 10, 16, 25, 40, 60, 100, 160, 250, 400];
/** Range over stretch pressure, and steps on the scale: common practice, no source. */
const ROOM = 1.25;
const STEPS = 200;

function usual(draft: FileDraft, list: DayList): Json {
  const number = countOf(draft, list) + 1;
  switch (list) {
    case 'day.gauges': {
      const wanted = ROOM * stretchOf(draft);
      const range = RANGES.find((bar) => bar >= wanted) ?? Math.ceil(wanted);
      return { name: `gauge ${number}`, range_bar: range, resolution_bar: range / STEPS };
    }
    case 'day.readings':
      return { girth: unread(draft), by: 'taped scale and camera', resolution_mm: 0.5 };
    case 'day.plugs':
      return { name: `plug ${number}`, diameter_mm: 50 };
  }
}

const stretchOf = (draft: FileDraft): number => {
  const [working, factor] = [
    valueAt(draft, 'duty.workingPressure_bar'),
    valueAt(draft, 'duty.stretchFactor'),
  ];
  return (typeof working === 'number' ? working : 10) * (typeof factor === 'number' ? factor : 1.5);
};

function unread(draft: FileDraft): string {
  const readings = valueAt(draft, 'day.readings');
  const read = isList(readings) ? readings.map((one) => (isRecord(one) ? one['girth'] : undefined)) : [];
  const girths = girthsOf(draft);
  return girths.find((name) => !read.includes(name)) ?? girths[0];
}

/** Smallest step in which drawn water is known, mL, where nothing else is said: common practice, no source. */
const SUPPLY_STEP = { strokes: 25, weighing: 50, meter: 10 } as const;
export type SupplyBy = keyof typeof SUPPLY_STEP;

export function withSupply(draft: FileDraft, by: SupplyBy | undefined): FileDraft {
  if (by === undefined) return without(draft, 'day.supply');
  const stroke = valueAt(draft, 'day.pump.mL_per_stroke');
  const step = by === 'strokes' && typeof stroke === 'number' ? stroke : SUPPLY_STEP[by];
  return withValue(draft, 'day.supply', { by, resolution_mL: step });
}
