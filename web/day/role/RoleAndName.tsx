/** Who directs, the handing over of the role, one's own name, and another revision of the plan. */
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import { Crew } from '../part/Crew.tsx';
import { type Deed, Keys } from '../part/Keys.tsx';
import { dayServer } from '../state/api.ts';
import { useDay } from '../state/live.ts';
import { give, nameMyself, useName } from '../state/orders.ts';
import { useAsked } from '../state/useAsked.ts';
import { useRevise } from './useRevise.tsx';

export function RoleAndName() {
  const role = useDay((d) => d.role);
  const own = useDay((d) => d.own);
  const handOver = useHandOver();
  const reclaim = useReclaim();
  const revise = useRevise();
  const deeds = [
    role === 'director' ? handOver : undefined,
    own ? reclaim : undefined,
    role === 'director' ? revise : undefined,
  ];
  return (
    <section className="role-and-name">
      <Crew />
      <Name />
      <Keys deeds={deeds.filter((deed) => deed !== undefined)} />
    </section>
  );
}

function Name() {
  const name = useName();
  const fixed = useDay((d) => d.name);
  const [typed, setTyped] = useState<string>();
  return (
    <label className="line-field">
      <span>
        {say('yourName')}. {say('yourNameWhy')}
      </span>
      <input
        type="text"
        maxLength={60}
        disabled={fixed !== undefined}
        value={typed ?? name}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={() => {
          if (typed !== undefined) nameMyself(typed);
          setTyped(undefined);
        }}
      />
    </label>
  );
}

/** To whoever holds another link; the laptop knows their names, elsewhere the name is typed. */
function useHandOver(): Deed {
  const record = useDay((d) => d.record);
  const own = useDay((d) => d.own);
  const by = useName();
  const [to, setTo] = useState('');
  const links = useAsked(own ? () => dayServer.links(record) : undefined, record) ?? [];
  const names = links.filter(
    (one) => one.revoked_ms === undefined && one.role !== 'viewer' && one.role !== 'source',
  );
  const chosen = to === '' ? (names[0]?.name ?? '') : to;
  const more = (
    <label className="line-field">
      <span>{say('handOverTo')}</span>
      {names.length === 0 ? (
        <input type="text" value={to} maxLength={60} onChange={(event) => setTo(event.target.value)} />
      ) : (
        <select value={chosen} onChange={(event) => setTo(event.target.value)}>
          {names.map(({ id, name }) => (
            <option key={id} value={name}>
              {name}
            </option>
          ))}
        </select>
      )}
    </label>
  );
  return {
    name: 'hand over',
    label: say('handOver'),
    will: say('handOverWill', { name: chosen === '' ? '…' : chosen }),
    more,
    onDo: async () => {
      // The name is kept for when the role is taken back.
      if (own) nameMyself(by);
      return chosen !== '' && (await give({ order: 'hand over', by, to: chosen })) !== undefined;
    },
  };
}

/** Undefined while the laptop directs. */
export function useReclaim(): Deed | undefined {
  const crew = useDay((d) => d.state?.crew);
  const own = useDay((d) => d.own);
  const by = useName();
  if (!own || crew === undefined || crew.held === 'laptop') return undefined;
  return {
    name: 'reclaim',
    label: say('reclaim'),
    will: say('reclaimWill', { name: crew.director ?? say('nobody') }),
    onDo: async () => (await give({ order: 'hand over', by, to: by })) !== undefined,
  };
}
