/** The set-up of a test before it begins: its wires one by one, then its channels. */
import type { SourceKind } from '@hoopwright/wire/reading';
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import { ChannelTable, type WiresProps } from './ChannelTable.tsx';
import { SourceForm } from './SourceForm.tsx';
import { SOURCE_FIELDS, SOURCE_KINDS, type TypedSource } from './typed.ts';

export function Wires({ own, typed, read, onTyped }: WiresProps) {
  const { sources } = typed;
  const put = (next: readonly TypedSource[]): void => onTyped({ ...typed, sources: next });
  return (
    <section className="wires" aria-label={say('wiresTitle')}>
      <h3>{say('wiresTitle')}</h3>
      <p className="quiet">{say('wiresWhy')}</p>
      {sources.map((source, i) => {
        const one = read.sources[i];
        return (
          <SourceForm
            key={i}
            source={source}
            faults={one.ok ? {} : one.faults}
            onTyped={(next) => put(sources.map((before, j) => (j === i ? next : before)))}
            onRemove={() => put(sources.filter((_, j) => j !== i))}
          />
        );
      })}
      <AddWire onAdd={(kind) => put([...sources, { kind, fields: SOURCE_FIELDS[kind] }])} />
      <ChannelTable own={own} typed={typed} read={read} onTyped={onTyped} />
    </section>
  );
}

function AddWire({ onAdd }: { readonly onAdd: (kind: SourceKind) => void }) {
  const [kind, setKind] = useState<SourceKind>('csv');
  return (
    <div className="add-line">
      <label className="line-field">
        <span>{say('wireKind')}</span>
        <select
          value={kind}
          onChange={(event) => setKind(SOURCE_KINDS.find((one) => one === event.target.value) ?? 'csv')}
        >
          {SOURCE_KINDS.map((one) => (
            <option key={one} value={one}>
              {say(`wire ${one}`)}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="key" data-act="add-wire" onClick={() => onAdd(kind)}>
        {say('wireAdd')}
      </button>
    </div>
  );
}
