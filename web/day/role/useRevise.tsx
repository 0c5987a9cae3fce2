/** Another frozen plan of the same tank, made on the day: told with its reason. */
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import type { Deed } from '../part/Keys.tsx';
import { dayServer } from '../state/api.ts';
import { useDay } from '../state/live.ts';
import { give, useName } from '../state/orders.ts';
import { useAsked } from '../state/useAsked.ts';

/** Undefined where there is no other plan. */
export function useRevise(): Deed | undefined {
  const project = useDay((d) => d.state?.about.project);
  const now = useDay((d) => d.state?.plan?.frozen.digest);
  const own = useDay((d) => d.own);
  const by = useName();
  const [chosen, setChosen] = useState<string>();
  const ask = own && project !== undefined ? () => dayServer.plans(project) : undefined;
  const plans = (useAsked(ask, project ?? '') ?? []).filter(({ digest }) => digest !== now);
  const plan = plans.find(({ digest }) => digest === chosen) ?? plans[0];
  if (plan === undefined) return undefined;
  const more = (
    <label className="line-field">
      <span>{say('reviseWhich')}</span>
      <select value={plan.digest} onChange={(event) => setChosen(event.target.value)}>
        {plans.map(({ digest, name, revision, date }) => (
          <option key={digest} value={digest}>
            {say('beginPlanLine', { name, revision, date })}
          </option>
        ))}
      </select>
    </label>
  );
  return {
    name: 'new revision',
    label: say('revise'),
    will: say('reviseWill', { revision: plan.revision }),
    why: '',
    more,
    onDo: async (why) => (await give({ order: 'new revision', by, digest: plan.digest, why })) !== undefined,
  };
}
