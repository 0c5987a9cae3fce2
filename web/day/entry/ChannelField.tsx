/** One reading, typed in the reader's unit, with what it was taken to mean. */
import type { Manner } from '@hoopwright/report/figure';
import { fixed } from '@hoopwright/report/figure';
import type { Channel, ChannelReads } from '@hoopwright/wire/reading';
import { type ReactNode, useId } from 'react';
import { readTyped } from '../../state/file/number.ts';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { channelText, entryOf } from '../said/figures.ts';

export type Entry =
  | { readonly kind: 'nothing' }
  /** In the unit of the record. */
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'fault'; readonly why: string };

export function readEntry(manner: Manner, reads: ChannelReads, typed: string): Entry {
  const read = readTyped(typed);
  const example = fixed(manner, 12.5, 1);
  if (read.kind === 'fault')
    return read.why === 'empty'
      ? { kind: 'nothing' }
      : { kind: 'fault', why: say('rowUnreadable', { typed, example }) };
  if (read.rest !== '') return { kind: 'fault', why: say('rowUnreadable', { typed, example }) };
  if (read.kind === 'asked') {
    const [fraction, thousands] = [fixed(manner, read.fraction, 3), fixed(manner, read.thousands, 0)];
    return { kind: 'fault', why: say('rowAsked', { typed, fraction, thousands }) };
  }
  return { kind: 'value', value: entryOf(manner, reads).recorded(read.value) };
}

export interface ChannelFieldProps {
  readonly channel: Channel;
  readonly label?: string;
  readonly typed: string;
  readonly onTyped: (typed: string) => void;
  readonly children?: ReactNode;
}

export function ChannelField({ channel, label, typed, onTyped, children }: ChannelFieldProps) {
  const manner = useManner();
  const id = useId();
  const { unit } = entryOf(manner, channel.reads);
  const entry = readEntry(manner, channel.reads, typed);
  return (
    <div className={`channel-field${entry.kind === 'fault' ? ' faulty' : ''}`} data-channel={channel.name}>
      <label htmlFor={id}>{label ?? channel.name}</label>
      <span className="entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={typed}
          aria-describedby={`${id}says`}
          onChange={(event) => onTyped(event.target.value)}
        />
        <span className="unit">{unit}</span>
      </span>
      <span className="says" id={`${id}says`}>
        {entry.kind === 'value'
          ? say('rowMeans', { value: channelText(manner, channel.reads, entry.value) })
          : null}
        {entry.kind === 'fault' ? <span className="fault">{entry.why}</span> : null}
        {children}
      </span>
    </div>
  );
}
