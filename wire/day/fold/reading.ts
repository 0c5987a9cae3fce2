/** Readings: the last value of every channel, what ails it, the three numbers, and the rows that the limits are held to. */
import { allowedBy } from '../../plan/plan.ts';
import { type Memory, NO_MEMORY, type Sample, heard, judged } from '../../reading/judge/judge.ts';
import type { Entry } from '../../record/entry.ts';
import type { Fold, FoldedRow, Inside } from './inside.ts';
import type { ChannelNow, DayState } from '../state.ts';
import { figuresOf, zerosWith } from './figures.ts';
import { rateOf } from './rate.ts';
import { text, values } from './read.ts';
import { isWired, ROW_EVERY, stands, together } from './together.ts';
import { rowsCorrected, rowsWith } from './written.ts';

/** Rows that are kept; beyond this the older ones by wire are thinned. Our choice, for a limit judged within 5 ms. */
const MOST_ROWS = 3000;
/** A hold's window goes on over a restart if girths were read this close on both sides, ms. Our choice, no source. */
const CARRIES_MS = 300_000;

export function onReading(now: Fold, entry: Entry): Fold {
  const read = values(entry.body);
  const how = text(entry.body, 'how') ?? 'by hand';
  const [channels, memory] = heardAll(now, entry, read, how);
  const rowed = withRow({ state: { ...now.state, channels }, inside: { ...now.inside, memory } }, entry, {
    read,
    how,
  });
  const state = carried(rowed, now.inside, entry);
  const figures = figuresOf(state, rowed.inside.zeros);
  return {
    state: {
      ...state,
      rows: rowsWith(state, entry),
      figures,
      ...holdWithRate({ ...state, figures }, rowed.inside, now.inside),
    },
    inside: rowed.inside,
  };
}

type Read = Readonly<Record<string, number>>;

function heardAll(
  { state, inside }: Fold,
  { seq, wall_ms, mono_ms }: Entry,
  read: Read,
  how: string,
): readonly [ChannelNow[], Inside['memory']] {
  const memory: Record<string, Memory> = { ...inside.memory };
  const apart = allowedBy(state.plan?.plan.limits ?? [], 'gaugesApart_bar');
  const channels = state.channels.map((one): ChannelNow => {
    const { channel, last } = one;
    const value = read[channel.name];
    if (value === undefined || (last !== undefined && wall_ms < last.wall_ms)) return one;
    const now = mono_ms / 1000;
    const sample: Sample = { seconds: now, value };
    const twin = channel.twin === undefined ? undefined : memory[channel.twin]?.last;
    const near = twin !== undefined && now - twin.seconds <= one.fresh_s ? twin : undefined;
    memory[channel.name] = heard(channel, memory[channel.name] ?? NO_MEMORY, sample, near);
    const ails = judged(channel, memory[channel.name], { now, ...(apart === undefined ? {} : { apart }) });
    const { ails: _, ...rest } = one;
    return { ...rest, last: { value, seq, wall_ms, how }, ...(ails === undefined ? {} : { ails }) };
  });
  return [channels, memory];
}

interface RowRead {
  readonly read: Read;
  readonly how: string;
}

/** Rows count from the shutting of the vent. A wire's readings make a row now and then, of all that is fresh. */
function withRow(now: Fold, entry: Entry, { read, how }: RowRead): Fold {
  const { state, inside } = now;
  if (inside.ventShut === undefined) return now;
  const at = inside.base + entry.mono_ms;
  const byWire = isWired(how);
  const early = byWire && inside.wired !== undefined && at - inside.wired < ROW_EVERY;
  if (early && !isOver(state, read)) return now;
  const row: FoldedRow = {
    seconds: (at - inside.ventShut) / 1000,
    step: text(entry.body, 'step') ?? state.step?.number ?? '',
    ...(byWire ? together(state, entry.wall_ms) : { values: believed(state, read) }),
    seq: entry.seq,
    part: inside.gaps,
  };
  if (row.seconds < 0) return now;
  const rows = [...inside.rows, row];
  // Typed in from paper: rows stand in the order in which they were taken.
  if (inside.rows.length > 0 && row.seconds < inside.rows[inside.rows.length - 1].seconds)
    rows.sort((a, b) => a.seconds - b.seconds);
  const kept = thinned(rows, state);
  return {
    state,
    inside: {
      ...inside,
      rows: kept,
      zeros: zerosWith(inside.zeros, row, state.plan?.plan),
      ...(byWire ? { wired: at } : {}),
    },
  };
}

/** Above the pressure that the plan allows no row is left out, however short it was, until the limit is latched. */
function isOver({ channels, causes, plan }: DayState, read: Read): boolean {
  const allowed = allowedBy(plan?.plan.limits ?? [], 'pressure_bar') ?? Infinity;
  if (causes.some(({ limit }) => limit === 'pressure_bar')) return false;
  return channels.some(
    (one) => one.channel.reads === 'pressure' && stands(one) && read[one.channel.name] > allowed,
  );
}

const believed = ({ channels }: DayState, read: Read): Read => {
  const bad = channels.filter((one) => !stands(one) && read[one.channel.name] !== undefined);
  if (bad.length === 0) return read;
  return Object.fromEntries(
    Object.entries(read).filter(([name]) => !bad.some(({ channel }) => channel.name === name)),
  );
};

/** Every second row goes, but for those of the first step, the newest third and those typed by hand (all of one channel). */
function thinned(rows: FoldedRow[], { plan }: DayState): FoldedRow[] {
  if (rows.length <= MOST_ROWS) return rows;
  const first = new Set(
    plan?.plan.steps.flatMap(({ kind, number }) =>
      kind === 'seat' || kind === 'first step' ? [number] : [],
    ),
  );
  const recent = rows.length - MOST_ROWS / 3;
  return rows.filter(
    (row, i) => i >= recent || i === 0 || i % 2 === 0 || (first.has(row.step) && i % 4 === 1),
  );
}

/** After a restart the window of a hold goes on where girths were read close enough on both sides. */
function carried({ state, inside }: Fold, before: Inside, { wall_ms }: Entry): DayState {
  const { hold, phase } = state;
  const girth = inside.rows === before.rows ? undefined : inside.rows[inside.rows.length - 1];
  const { windowBefore } = before;
  if (hold === undefined || windowBefore === undefined || phase === 'broken off' || girth === undefined)
    return state;
  const isGirth = (name: string): boolean =>
    state.channels.some(({ channel }) => channel.name === name && channel.reads === 'girth');
  if (!Object.keys(girth.values).some(isGirth)) return state;
  const other = before.rows.findLast(
    (row) => row.part < girth.part && Object.keys(row.values).some((name) => isGirth(name)),
  );
  if (other === undefined || 1000 * (girth.seconds - other.seconds) > CARRIES_MS) return state;
  return hold.windowFrom_ms <= wall_ms &&
    hold.windowFrom_ms > windowBefore &&
    state.gaps.at(-1)?.cause === 'restart'
    ? { ...state, hold: { ...hold, windowFrom_ms: windowBefore } }
    : state;
}

function holdWithRate(state: DayState, inside: Inside, before: Inside): Pick<DayState, 'hold'> | object {
  const { hold } = state;
  if (hold === undefined || inside.rows === before.rows) return {};
  const { rate: _, ...rest } = hold;
  const rate = rateOf(state, inside.rows);
  return { hold: rate === undefined ? rest : { ...rest, rate } };
}

/** Adds; the entry it corrects stays. The row and the last value are read with the new figures from now on. */
export function onCorrection({ state, inside }: Fold, entry: Entry): Fold {
  const read = values(entry.body);
  const corrects = entry.body['corrects'];
  const channels = state.channels.map((one): ChannelNow => {
    const value = read[one.channel.name];
    return value === undefined || one.last?.seq !== corrects ? one : { ...one, last: { ...one.last, value } };
  });
  const rows = inside.rows.map((row) =>
    row.seq === corrects ? { ...row, values: { ...row.values, ...read } } : row,
  );
  const zeros = rows.reduce<Inside['zeros']>((all, row) => zerosWith(all, row, state.plan?.plan), {});
  const now = { ...state, channels, rows: rowsCorrected(state, entry) };
  return { state: { ...now, figures: figuresOf(now, zeros) }, inside: { ...inside, rows, zeros } };
}
