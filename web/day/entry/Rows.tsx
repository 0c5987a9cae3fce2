/** Rows that people have written, on whatever screen, and their corrections: a correction adds, and replaces nothing. */
import type { WrittenRow } from '@hoopwright/wire/day';
import { type FormEvent, useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { channelText, clockText } from '../said/figures.ts';
import { useDay } from '../state/live.ts';
import { give, tell, useName } from '../state/orders.ts';
import { ChannelField } from './ChannelField.tsx';
import { valuesOf } from './Row.tsx';

/** Rows that are listed at first: the last ones. */
const LISTED = 8;

export function Rows() {
  const rows = useDay((d) => d.state?.rows) ?? [];
  const [correcting, setCorrecting] = useState<number>();
  const [all, setAll] = useState(false);
  const row = rows.find(({ seq }) => seq === correcting);
  if (row !== undefined)
    return <Correction key={row.seq} row={row} onDone={() => setCorrecting(undefined)} />;
  return (
    <section className="rows" aria-label={say('rowsTitle')}>
      <h2>{say('rowsTitle')}</h2>
      {rows.length === 0 ? <p className="quiet">{say('rowsNone')}</p> : null}
      <ol>
        {rows.slice(0, all ? rows.length : LISTED).map((one) => (
          <li key={one.seq} data-row={one.seq}>
            <OneRow row={one} />
            <button
              type="button"
              className="key"
              aria-label={say('rowCorrectNamed', { seq: one.seq })}
              onClick={() => setCorrecting(one.seq)}
            >
              {say('rowCorrect')}
            </button>
          </li>
        ))}
      </ol>
      {rows.length > LISTED ? (
        <button type="button" className="key" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? say('rowsLast') : say('rowsAll', { count: rows.length })}
        </button>
      ) : null}
    </section>
  );
}

function OneRow({ row: { seq, wall_ms, by, step, values, corrections } }: { readonly row: WrittenRow }) {
  return (
    <span>
      <span className="quiet">{say('rowBy', { seq, time: clockText(wall_ms), step, by })}</span>
      <Values values={values} />
      {corrections.map((one) => (
        <span key={one.seq} className="added">
          <span className="one-value strong">{say('correctedTo', { seq: one.seq, by: one.by })}</span>
          <Values values={one.values} />
        </span>
      ))}
    </span>
  );
}

function Values({ values }: { readonly values: WrittenRow['values'] }) {
  const channels = useDay((d) => d.state?.channels);
  const manner = useManner();
  return Object.entries(values).map(([name, value]) => {
    const reads = channels?.find(({ channel }) => channel.name === name)?.channel.reads;
    return (
      <span key={name} className="one-value">
        {name} {reads === undefined ? value : channelText(manner, reads, value)}
      </span>
    );
  });
}

function Correction({ row, onDone }: { readonly row: WrittenRow; readonly onDone: () => void }) {
  const all = useDay((d) => d.state?.channels) ?? [];
  const manner = useManner();
  const by = useName();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [why, setWhy] = useState(say('correctWhyUsual'));
  const channels = all.map(({ channel }) => channel).filter(({ name }) => row.values[name] !== undefined);
  const write = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const values = valuesOf(channels, typed, manner);
    if (typeof values === 'string') return tell(values);
    const seq = await give({ order: 'correct', by, corrects: row.seq, values, why });
    if (seq === undefined) return undefined;
    return onDone();
  };
  return (
    <form className="rows correction" onSubmit={(event) => void write(event)}>
      <h2>{say('correctTitle', { seq: row.seq })}</h2>
      <div className="row-fields">
        {channels.map((channel) => (
          <ChannelField
            key={channel.name}
            channel={channel}
            typed={typed[channel.name] ?? ''}
            onTyped={(text) => setTyped({ ...typed, [channel.name]: text })}
          >
            {say('oldWas', { value: channelText(manner, channel.reads, row.values[channel.name]) })}
          </ChannelField>
        ))}
      </div>
      <label className="line-field">
        <span>{say('correctWhy')}</span>
        <input type="text" value={why} maxLength={500} onChange={(event) => setWhy(event.target.value)} />
      </label>
      <div className="row-end">
        <button type="button" className="key" onClick={onDone}>
          {say('back')}
        </button>
        <button type="submit" className="key decide" disabled={why.trim() === ''} data-act="correct">
          {say('correctWrite')}
        </button>
      </div>
    </form>
  );
}
