/** One measure at no pressure: what, how it is taken, by whom, with what. */
import type { Measure } from '@hoopwright/wire/day';
import type { Channel } from '@hoopwright/wire/reading';
import { type FormEvent, useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { howText, MEASURE_READS, promptText } from '../said/measures.ts';
import { give, nameMyself, tell, useName } from '../state/orders.ts';
import type { Prompt } from '../tells/measures.ts';
import { ChannelField, readEntry } from './ChannelField.tsx';

export interface MeasureFormProps {
  readonly prompt: Prompt;
  readonly when: Measure['when'];
  /** What else may be measured. */
  readonly all: readonly Prompt[];
  /** Nothing is missing: what is measured now is measured again. */
  readonly done: boolean;
  readonly onChoose: (prompt: Prompt) => void;
  readonly onWritten: () => void;
}

const TOOL = 'hoopwright tool for ';

export function MeasureForm({ prompt, all, when, done, onChoose, onWritten }: MeasureFormProps) {
  const manner = useManner();
  const name = useName();
  const [by, setBy] = useState(name);
  const [tool, setTool] = useState(localStorage.getItem(TOOL + prompt.what) ?? '');
  const [typed, setTyped] = useState('');
  const reads = MEASURE_READS[prompt.what];
  const channel: Channel = {
    name: promptText(prompt),
    reads,
    by: '',
    from: 'at the tank',
    upTo_bar: 0,
    resolution: 0,
  };
  const write = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const entry = readEntry(manner, reads, typed);
    if (entry.kind !== 'value') return tell(entry.kind === 'fault' ? entry.why : say('rowNothing'));
    localStorage.setItem(TOOL + prompt.what, tool);
    if (by !== name) nameMyself(by);
    const place = prompt.place === undefined ? {} : { place: prompt.place };
    const { value } = entry;
    const seq = await give({ order: 'measure', by, when, what: prompt.what, value, with: tool, ...place });
    return seq === undefined ? undefined : onWritten();
  };
  return (
    <form onSubmit={(event) => void write(event)} aria-label={promptText(prompt)}>
      <label className="line-field">
        <span>{say(done ? 'measuresAll' : 'measuresPrompt')}</span>
        <select
          value={all.findIndex((one) => one.what === prompt.what && one.place === prompt.place)}
          onChange={(event) => onChoose(all[Number(event.target.value)] ?? prompt)}
        >
          {all.map((one, i) => (
            <option key={promptText(one)} value={i}>
              {promptText(one)}
            </option>
          ))}
        </select>
      </label>
      <ChannelField channel={channel} label={say('measureValue')} typed={typed} onTyped={setTyped} />
      <p className="quiet">{howText(prompt)}</p>
      <label className="line-field">
        <span>{say('measureWith')}</span>
        <input type="text" value={tool} maxLength={500} onChange={(event) => setTool(event.target.value)} />
      </label>
      <label className="line-field">
        <span>{say('measureBy')}</span>
        <input type="text" value={by} maxLength={60} onChange={(event) => setBy(event.target.value)} />
      </label>
      <button
        type="submit"
        className="key decide"
        disabled={by.trim() === '' || tool.trim() === ''}
        data-act="measure"
      >
        {say('measureWrite')}
      </button>
    </form>
  );
}
