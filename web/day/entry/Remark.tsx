/** A remark, and photos as the camera made them, tied to a step and a place. */
import { type FormEvent, useRef, useState } from 'react';
import { say } from '../../words/day/say.ts';
import { clockText } from '../said/figures.ts';
import { dayServer } from '../state/api.ts';
import { useDay } from '../state/live.ts';
import { give, refusal, tell, useName } from '../state/orders.ts';

export function RemarkForm() {
  const record = useDay((d) => d.record);
  const channels = useDay((d) => d.state?.channels) ?? [];
  const by = useName();
  const [text, setText] = useState('');
  const [place, setPlace] = useState('');
  const [photo, setPhoto] = useState<File>();
  const [busy, setBusy] = useState(false);
  const [written, setWritten] = useState<number>();
  const input = useRef<HTMLInputElement>(null);
  const write = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setBusy(true);
    try {
      const at = place === '' ? {} : { place };
      const kept = photo === undefined ? undefined : await dayServer.photo(record, photo, { by, ...at });
      const tied = kept === undefined ? {} : { photo: kept.sha256 };
      const words = text.trim();
      const seq = words === '' ? kept?.seq : await give({ order: 'remark', by, text: words, ...tied, ...at });
      if (seq === undefined) return;
      setWritten(seq);
      setText('');
      setPhoto(undefined);
      if (input.current !== null) input.current.value = '';
    } catch (error) {
      tell(refusal(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <form className="remark" onSubmit={(event) => void write(event)} aria-label={say('remarkTitle')}>
      <h2>{say('remarkTitle')}</h2>
      <label className="line-field">
        <span>{say('remarkText')}</span>
        <input type="text" value={text} maxLength={500} onChange={(event) => setText(event.target.value)} />
      </label>
      <div className="photo-line">
        <label className="line-field">
          <span>{say('remarkPhoto')}</span>
          <input
            ref={input}
            type="file"
            accept="image/*"
            capture="environment"
            onChange={(event) => setPhoto(event.target.files?.[0])}
          />
        </label>
        <label className="line-field">
          <span>{say('remarkPlace')}</span>
          <select value={place} onChange={(event) => setPlace(event.target.value)}>
            <option value="">{say('remarkNoPlace')}</option>
            {channels
              .filter(({ channel }) => channel.reads === 'girth' || channel.reads === 'wall')
              .map(({ channel: { name } }) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
          </select>
        </label>
      </div>
      <div className="row-end">
        <button
          type="submit"
          className="key"
          disabled={busy || (text.trim() === '' && photo === undefined)}
          data-act="remark"
        >
          {busy ? say('sending') : say('remarkWrite')}
        </button>
        <span role="status">{written === undefined ? null : say('remarkWritten', { seq: written })}</span>
      </div>
    </form>
  );
}

export function Remarks() {
  const remarks = useDay((d) => d.state?.remarks) ?? [];
  const record = useDay((d) => d.record);
  if (remarks.length === 0) return <p className="quiet">{say('remarksNone')}</p>;
  return (
    <ol className="remarks">
      {[...remarks].reverse().map(({ seq, wall_ms, by, text, photo }) => (
        <li key={seq}>
          <span className="quiet">{say('remarkBy', { time: clockText(wall_ms), by })}</span> {text}
          {photo === undefined ? null : (
            <a href={dayServer.photoAddress(record, photo)} target="_blank" rel="noreferrer">
              {say('remarkPhoto')}
            </a>
          )}
        </li>
      ))}
    </ol>
  );
}
