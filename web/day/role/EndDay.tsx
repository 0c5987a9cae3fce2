/** The end has a name. */
import { ENDS, type EndName } from '@hoopwright/wire/reading';
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import type { Deed } from '../part/Keys.tsx';
import { useDay } from '../state/live.ts';
import { give, useName } from '../state/orders.ts';

/** Undefined while the plan runs: it is stopped first. */
export function useEnd(): Deed | undefined {
  const phase = useDay((d) => d.state?.phase);
  const next = useDay((d) => d.state?.next);
  const [end, setEnd] = useState<EndName>('done');
  const by = useName();
  const may = phase === 'after' || phase === 'stopping' || (phase === 'under way' && next === undefined);
  if (!may) return undefined;
  const more = (
    <label className="line-field">
      <span>{say('endHow')}</span>
      <select
        value={end}
        onChange={(event) => setEnd(ENDS.find((one) => one === event.target.value) ?? 'done')}
      >
        {ENDS.map((one) => (
          <option key={one} value={one}>
            {say(`end ${one}`)}
          </option>
        ))}
      </select>
    </label>
  );
  return {
    name: 'end',
    label: say('end'),
    will: say('endWill'),
    why: say('endUsual'),
    more,
    onDo: async (why) => (await give({ order: 'end', by, end, why })) !== undefined,
  };
}
