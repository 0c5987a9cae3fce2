/** A record as it grows, in lines for people: what is decided, advised and wrong at once, the figures now and then. */
import { forecastLine } from '@hoopwright/wire/advice';
import { type DayState, type FigureNow, type Fold, fold } from '@hoopwright/wire/day';
import type { Entry, Link } from '@hoopwright/wire/record';
import { emptyFold } from '../../day/live/kept.ts';
import type { Later } from '../../instrument/source.ts';
import type { Records } from '../../store/store.ts';
import { entryText } from './entryText.ts';

const LOOK_MS = 250;

export interface FollowParts {
  readonly records: Records;
  readonly record: string;
  readonly out: (line: string) => void;
  readonly later: Later;
  /** s of the day between two lines of figures. */
  readonly every: number;
}

export interface Following {
  /** Settles when the day has ended. */
  readonly ended: Promise<DayState>;
  stop(): void;
}

/** Whoever writes the record, this program or another one: only what is durable is told. */
export function follow({ records, record, out, later, every }: FollowParts): Following {
  const about = records.find(record)?.about;
  if (about === undefined) throw new Error(`there is no record ${record}`);
  const mark = about.kind === 'test' ? '' : `${about.kind.toUpperCase()}  `;
  let now: Fold = emptyFold(about).fold;
  let figuresAt = -Infinity;
  let foreseen = { at: -Infinity, says: '' };
  let callOff: (() => void) | undefined;
  let settle: (state: DayState) => void = () => {};
  const ended = new Promise<DayState>((resolve) => (settle = resolve));
  const line = (text: string): void => out(`${mark}${text}`);

  /** One that says the same again, or comes sooner than the next figures would, is for `record show`. */
  const foretold = (entry: Entry): void => {
    const says = forecastLine(entry.body);
    if (entry.body['ready'] !== undefined) return line(entryText(entry, about.began_ms));
    if (says === '' || says === foreseen.says || entry.wall_ms - foreseen.at < 1000 * every) return;
    foreseen = { at: entry.wall_ms, says };
    line(entryText(entry, about.began_ms));
  };
  const take = (link: Link): void => {
    const before = now.state;
    now = fold(now, link);
    const { state } = now;
    if (isTold(link.entry)) line(entryText(link.entry, about.began_ms));
    if (link.entry.kind === 'forecast') foretold(link.entry);
    if (state.phase !== before.phase || state.step?.number !== before.step?.number) line(standing(state));
    const shown = state.heads.at(-1);
    if (state.heads.length > before.heads.length) line(`head ${shown?.groups ?? ''}`);
    if (link.entry.kind !== 'reading' || link.entry.wall_ms - figuresAt < 1000 * every) return;
    figuresAt = link.entry.wall_ms;
    line(figures(state));
  };
  const look = (): void => {
    for (const link of records.entries(record, now.state.seq)) take(link);
    if (now.state.phase === 'ended') return settle(now.state);
    callOff = later(LOOK_MS, look);
  };
  look();
  return { ended, stop: () => callOff?.() };
}

/** Readings are told as figures, forecasts now and then; what a set-up holds is for `record show`. */
const isTold = ({ kind }: Entry): boolean =>
  !['reading', 'step', 'set-up', 'start', 'forecast'].includes(kind);

function standing({ phase, step, next }: DayState): string {
  const at = step === undefined ? '' : `  step ${step.number}, ${step.kind}, ${step.pressure_bar} bar`;
  return `${phase.toUpperCase()}${at}${next === undefined ? '' : `; next ${next}`}`;
}

function figures(state: DayState): string {
  const { pressure, growth, litres } = state.figures;
  const parts = [
    told(state, pressure, 'bar', 2),
    growth === undefined ? undefined : `growth of ${growth.girth} ${told(state, growth, '%', 3)}`,
    told(state, litres, 'L', 3),
    state.hold?.rate === undefined ? undefined : `${state.hold.rate.value.toFixed(2)} %/h`,
  ];
  const bad = state.channels.flatMap(({ channel, aside, unproved }) =>
    aside === undefined && unproved === undefined ? [] : [`${channel.name} not believed`],
  );
  return [...parts, ...bad].filter((part) => part !== undefined).join('  ') || 'nothing to go by yet';
}

/** With its age where it is not of this moment; older than its limit it is no number any more. */
function told({ wall_ms }: DayState, figure: FigureNow | undefined, unit: string, digits: number) {
  if (figure === undefined) return undefined;
  const age = Math.round((wall_ms - figure.wall_ms) / 1000);
  if (age > figure.fresh_s) return `-- ${unit} (${age} s old)`;
  return `${figure.value.toFixed(digits)} ${unit}${age > 1 ? ` (${age} s)` : ''}`;
}
