/** Beginning a test or a rehearsal from a frozen plan. */
import type { Begin } from '@hoopwright/wire/day';
import { channelsOf } from '@hoopwright/wire/reading';
import { type FormEvent, useEffect, useState } from 'react';
import { server } from '../../state/server/server.ts';
import { say } from '../../words/day/say.ts';
import { Choices } from '../entry/Choices.tsx';
import { dayServer } from '../state/api.ts';
import { refusal, tell } from '../state/orders.ts';
import { addressOf } from '../state/place.ts';
import { useAsked } from '../state/useAsked.ts';
import { keepWires, NO_WIRES, type TypedWires, wiresOf } from '../wiring/typed.ts';
import { Wires } from '../wiring/Wires.tsx';
import { begunWith, readWires } from '../wiring/wiresOf.ts';
import { RehearsalFields, type RehearsalTyped, rehearsalOf, USUAL_REHEARSAL } from './RehearsalFields.tsx';

export function BeginForm() {
  const projects = useAsked(() => server.projects('kept'), 'projects') ?? [];
  const [project, setProject] = useState<string>();
  const id = project ?? projects[0]?.id;
  const plans = useAsked(id === undefined ? undefined : () => dayServer.plans(id), id ?? '');
  const [digest, setDigest] = useState<string>();
  const plan = plans?.find((one) => one.digest === digest) ?? plans?.[0];
  const [director, setDirector] = useState('');
  const [kind, setKind] = useState<Begin['kind']>('rehearsal');
  const [typed, setTyped] = useState<RehearsalTyped>(USUAL_REHEARSAL);
  const [busy, setBusy] = useState(false);
  const frozen = useAsked(
    id === undefined || plan === undefined ? undefined : () => dayServer.plan(id, plan.digest),
    `${id} ${plan?.digest}`,
  );
  const own = frozen === undefined ? [] : channelsOf(frozen.plan);
  const [wires, setWires] = useState<TypedWires>(NO_WIRES);
  useEffect(() => setWires(id === undefined ? NO_WIRES : wiresOf(id)), [id]);
  const read = readWires(wires, own);

  const begin = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (id === undefined || plan === undefined) return undefined;
    if (director.trim() === '') return tell(say('beginNoName'));
    const rehearsal = kind === 'rehearsal' ? rehearsalOf(typed) : undefined;
    if (typeof rehearsal === 'string') return tell(rehearsal);
    if (kind === 'test' && read.wrong !== undefined) return tell(say('wiresFaulty', { says: read.wrong }));
    setBusy(true);
    try {
      const more = rehearsal === undefined ? begunWith(read) : { rehearsal };
      const by = director.trim();
      const line = await dayServer.begin({ project: id, plan: plan.digest, kind, director: by, ...more });
      window.location.assign(addressOf({ record: line.record, screen: 'director', replay: false }));
    } catch (error) {
      tell(refusal(error));
      setBusy(false);
    }
    return undefined;
  };

  return (
    <form className="begin" onSubmit={(event) => void begin(event)} aria-label={say('beginTitle')}>
      <h2>{say('beginTitle')}</h2>
      <p className="caution">{say('beginCaution')}</p>
      <label className="line-field">
        <span>{say('beginProject')}</span>
        <select value={id ?? ''} onChange={(event) => setProject(event.target.value)}>
          {projects.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
      </label>
      {plans === undefined || plans.length > 0 ? (
        <label className="line-field">
          <span>{say('beginPlan')}</span>
          <select value={plan?.digest ?? ''} onChange={(event) => setDigest(event.target.value)}>
            {(plans ?? []).map((one) => (
              <option key={one.digest} value={one.digest}>
                {say('beginPlanLine', { name: one.name, revision: one.revision, date: one.date })}
              </option>
            ))}
          </select>
        </label>
      ) : (
        <p className="fault">{say('beginNoPlan')}</p>
      )}
      {plan?.outdated === undefined ? null : <p className="fault">{say('beginOutdated')}</p>}
      <label className="line-field">
        <span>{say('beginDirector')}</span>
        <input
          type="text"
          value={director}
          maxLength={60}
          onChange={(event) => setDirector(event.target.value)}
        />
      </label>
      <Choices
        legend={say('beginKind')}
        chosen={kind}
        options={[
          ['rehearsal', say('beginRehearsal')],
          ['test', say('beginTest')],
        ]}
        onChoose={setKind}
      />
      {kind === 'rehearsal' ? <RehearsalFields typed={typed} onTyped={setTyped} /> : null}
      {kind === 'test' && own.length > 0 ? (
        <Wires
          own={own}
          typed={wires}
          read={read}
          onTyped={(next) => {
            setWires(next);
            if (id !== undefined) keepWires(id, next);
          }}
        />
      ) : null}
      <button type="submit" className="key decide" disabled={busy || plan === undefined} data-act="begin">
        {busy ? say('working') : say(kind === 'test' ? 'beginTestNow' : 'beginRehearsalNow')}
      </button>
    </form>
  );
}
