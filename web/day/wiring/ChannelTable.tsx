/** Channels of the day: where each comes from, and what is typed over what the plan has. */
import { type Channel, CHANNEL_READS, type ChannelReads } from '@hoopwright/wire/reading';
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import type { ChannelRead } from './channelOf.ts';
import { CHANNEL_FIELDS, type TypedChannel, type TypedWires } from './typed.ts';
import { comesBy, type WiresRead } from './wiresOf.ts';

export interface WiresProps {
  readonly own: readonly Channel[];
  readonly typed: TypedWires;
  readonly read: WiresRead;
  readonly onTyped: (typed: TypedWires) => void;
}

export function ChannelTable({ own, typed, read, onTyped }: WiresProps) {
  const by = comesBy(read);
  const added = typed.channels.filter(({ name }) => !own.some((one) => one.name === name));
  const put = (one: TypedChannel): void =>
    onTyped({ ...typed, channels: [...typed.channels.filter(({ name }) => name !== one.name), one] });
  const of = (name: string): TypedChannel =>
    typed.channels.find((one) => one.name === name) ?? { name, fields: {} };
  const remove = (name: string): void =>
    onTyped({ ...typed, channels: typed.channels.filter((one) => one.name !== name) });
  const rows = [
    ...own.map((base) => ({ one: of(base.name), reads: base.reads, base })),
    ...added.map((one) => ({ one, reads: readsOf(one.reads), base: undefined })),
  ];
  return (
    <>
      <h3>{say('channelsTitle')}</h3>
      <p className="quiet">{say('channelsWhy')}</p>
      <div className="wide-table">
        <table className="figures channel-set-up">
          <caption className="unseen">{say('channelsTitle')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('colChannel')}</th>
              <th scope="col">{say('colComes')}</th>
              {CHANNEL_FIELDS.map((field) => (
                <th key={field} scope="col">
                  {say(`col ${field}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ one, reads, base }) => (
              <ChannelLine
                key={one.name}
                one={one}
                reads={reads}
                base={base}
                comes={by.get(one.name) ?? say('byHand')}
                faults={faultsOf(read.channels.get(one.name))}
                onTyped={put}
                onRemove={base === undefined ? () => remove(one.name) : undefined}
              />
            ))}
          </tbody>
        </table>
      </div>
      <AddChannel taken={rows.map(({ one }) => one.name)} onAdd={put} />
    </>
  );
}

const readsOf = (reads: string | undefined): ChannelReads =>
  CHANNEL_READS.find((one) => one === reads) ?? 'temperature';

const faultsOf = (read: ChannelRead | undefined) => (read === undefined || read.ok ? {} : read.faults);

interface ChannelLineProps {
  readonly one: TypedChannel;
  readonly reads: ChannelReads;
  readonly base: Channel | undefined;
  readonly comes: string;
  readonly faults: Readonly<Record<string, string>>;
  readonly onTyped: (one: TypedChannel) => void;
  readonly onRemove: (() => void) | undefined;
}

function ChannelLine({ one, reads, base, comes, faults, onTyped, onRemove }: ChannelLineProps) {
  const wrong = Object.values(faults);
  return (
    <>
      <tr data-channel-set-up={one.name}>
        <th scope="row">
          {one.name} <span className="quiet">{say(`reads ${reads}`)}</span>
        </th>
        <td>{comes}</td>
        {CHANNEL_FIELDS.map((field) => (
          <td key={field}>
            <input
              type="text"
              className="small-field"
              aria-label={say('channelField', { field: say(`col ${field}`), name: one.name })}
              aria-invalid={faults[field] !== undefined}
              placeholder={hintOf(base, field)}
              value={one.fields[field] ?? ''}
              onChange={(event) =>
                onTyped({ ...one, fields: { ...one.fields, [field]: event.target.value } })
              }
            />
          </td>
        ))}
      </tr>
      {wrong.length === 0 && onRemove === undefined ? null : (
        <tr className="says-row">
          <td colSpan={CHANNEL_FIELDS.length + 2}>
            {wrong.map((says) => (
              <span key={says} className="fault">
                {says}{' '}
              </span>
            ))}
            {onRemove === undefined ? null : (
              <button
                type="button"
                className="key"
                aria-label={say('channelRemoveNamed', { name: one.name })}
                onClick={onRemove}
              >
                {say('wireRemove')}
              </button>
            )}
          </td>
        </tr>
      )}
    </>
  );
}

/** What stands where nothing is typed. */
function hintOf(base: Channel | undefined, field: (typeof CHANNEL_FIELDS)[number]): string {
  if (base === undefined) return '';
  const { by, resolution, noise, range, fresh_s } = base;
  const known = { by, resolution, noise, from: range?.from, to: range?.to, gain: 1, offset: 0, fresh_s }[
    field
  ];
  return known === undefined ? '' : String(known);
}

interface AddChannelProps {
  readonly taken: readonly string[];
  readonly onAdd: (one: TypedChannel) => void;
}

function AddChannel({ taken, onAdd }: AddChannelProps) {
  const [name, setName] = useState('');
  const [reads, setReads] = useState<ChannelReads>('temperature');
  const there = taken.includes(name.trim());
  return (
    <div className="add-line">
      <label className="line-field">
        <span>{say('channelName')}</span>
        <input type="text" value={name} maxLength={60} onChange={(event) => setName(event.target.value)} />
        <span className="fault">{there ? say('channelThere', { name: name.trim() }) : null}</span>
      </label>
      <label className="line-field">
        <span>{say('channelReads')}</span>
        <select value={reads} onChange={(event) => setReads(readsOf(event.target.value))}>
          {CHANNEL_READS.map((one) => (
            <option key={one} value={one}>
              {say(`reads ${one}`)}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className="key"
        data-act="add-channel"
        disabled={there || name.trim() === ''}
        onClick={() => {
          onAdd({ name: name.trim(), reads, fields: {} });
          setName('');
        }}
      >
        {say('channelAdd')}
      </button>
    </div>
  );
}
