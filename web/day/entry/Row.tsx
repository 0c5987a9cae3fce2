/** A row of the log sheet: the channels of this step, only those that may be read, with the time they were taken. */
import type { Channel } from '@hoopwright/wire/reading';
import { type FormEvent, useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { channelText, clockText, litresFigure } from '../said/figures.ts';
import { useNow } from '../state/clock.ts';
import { useDay } from '../state/live.ts';
import { give, tell, useName } from '../state/orders.ts';
import { askedNow } from '../tells/permitted.ts';
import { timeOfDay } from './timeOfDay.ts';
import { ChannelField, readEntry } from './ChannelField.tsx';
import { Choices } from './Choices.tsx';

export function Row() {
  const state = useDay((d) => d.state);
  const shows = useDay((d) => d.shows);
  const now = useNow();
  const by = useName();
  const manner = useManner();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [when, setWhen] = useState<string>();
  const [paper, setPaper] = useState(false);
  const [busy, setBusy] = useState(false);
  const [written, setWritten] = useState<number>();
  if (state === undefined) return null;
  const asked = askedNow(state, now).now;
  const write = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const values = valuesOf(
      asked.map(({ channel }) => channel),
      typed,
      manner,
    );
    if (typeof values === 'string') return tell(values);
    const at = when === undefined ? undefined : timeOfDay(when, now);
    if (when !== undefined && at === undefined) return tell(say('rowNoClock', { typed: when }));
    if (at !== undefined && at > now + 1000) return tell(say('rowFuture', { time: when ?? '' }));
    setBusy(true);
    const how = paper ? 'typed in from paper' : 'by hand';
    const seq = await give({ order: 'row', by, values, how, ...(at === undefined ? {} : { at_ms: at }) });
    setBusy(false);
    if (seq === undefined) return undefined;
    setWritten(seq);
    setTyped({});
    return undefined;
  };
  return (
    <form className="row" onSubmit={(event) => void write(event)} aria-label={say('rowTitle')}>
      <div className="row-when">
        <h2>{say('rowTitle')}</h2>
        <span>{state.step === undefined ? null : say('rowStep', { step: state.step.number })}</span>
        <Choices
          legend={say('rowWhen')}
          chosen={when === undefined ? 'now' : 'earlier'}
          options={[
            ['now', say('rowNow')],
            ['earlier', say('rowEarlier')],
          ]}
          onChoose={(one) => {
            setWhen(one === 'now' ? undefined : clockText(now));
            if (one === 'now') setPaper(false);
          }}
        />
        {when === undefined ? null : (
          <>
            <input
              className="clock-field"
              type="text"
              aria-label={say('rowClock')}
              value={when}
              onChange={(event) => setWhen(event.target.value)}
            />
            <label className="tick">
              <input type="checkbox" checked={paper} onChange={(event) => setPaper(event.target.checked)} />
              {say('rowPaper')}
            </label>
          </>
        )}
      </div>
      {asked.length === 0 ? <p>{say('rowNoChannels')}</p> : null}
      <div className="row-fields">
        {asked.map(({ channel, last }) => (
          <ChannelField
            key={channel.name}
            channel={channel}
            typed={typed[channel.name] ?? ''}
            onTyped={(text) => {
              setWritten(undefined);
              setTyped({ ...typed, [channel.name]: text });
            }}
          >
            <Hint
              channel={channel}
              typed={typed[channel.name] ?? ''}
              shown={shows?.[channel.name]}
              wired={last?.how === 'by wire'}
            />
          </ChannelField>
        ))}
      </div>
      <div className="row-end">
        <button type="submit" className="key decide" disabled={busy || asked.length === 0} data-act="row">
          {busy ? say('sending') : say('rowWrite')}
        </button>
        <span role="status">{written === undefined ? null : say('rowWritten', { seq: written })}</span>
      </div>
    </form>
  );
}

interface HintProps {
  readonly channel: Channel;
  readonly typed: string;
  readonly shown: number | undefined;
  readonly wired: boolean;
}

/** What a stroke is worth, what a simulated instrument shows, or that nobody need type it. */
function Hint({ channel, typed, shown, wired }: HintProps) {
  const manner = useManner();
  const mL = useDay((d) => d.state?.plan?.plan.water.stroke_mL);
  const entry = readEntry(manner, channel.reads, typed);
  if (channel.reads === 'strokes' && mL !== undefined && entry.kind === 'value') {
    const { text, unit } = litresFigure(manner, (entry.value * mL) / 1000);
    return <> {say('rowPerStroke', { mL: `${mL} mL`, litres: `${text} ${unit}` })}</>;
  }
  if (shown !== undefined && entry.kind === 'nothing')
    return (
      <span className="simulated">
        {say('rowShows', { value: channelText(manner, channel.reads, shown) })}
      </span>
    );
  return wired && entry.kind === 'nothing' ? <>{say('rowByWire')}</> : null;
}

type Values = Readonly<Record<string, number>>;

/** What was typed, in the units of the record; a sentence where something cannot be taken. */
export function valuesOf(
  channels: readonly Channel[],
  typed: Readonly<Record<string, string>>,
  manner: Parameters<typeof readEntry>[0],
): Values | string {
  const values: Record<string, number> = {};
  for (const { name, reads } of channels) {
    const entry = readEntry(manner, reads, typed[name] ?? '');
    if (entry.kind === 'fault') return entry.why;
    if (entry.kind === 'value') values[name] = entry.value;
  }
  return Object.keys(values).length === 0 ? say('rowNothing') : values;
}
