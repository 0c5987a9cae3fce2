/** After a restart: a fresh reading of the gauge, and the step that it finds. */
import { figuresFor } from '@hoopwright/report/plan';
import { useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { ChannelField, readEntry } from '../entry/ChannelField.tsx';
import type { Deed } from '../part/Keys.tsx';
import { stepLine } from '../said/steps.ts';
import { useDay } from '../state/live.ts';
import { give, tell, useName } from '../state/orders.ts';

/** Undefined where the day is not broken off. */
export function useConfirmStep(): Deed | undefined {
  const state = useDay((d) => d.state);
  const manner = useManner();
  const by = useName();
  const [typed, setTyped] = useState('');
  const [step, setStep] = useState<string>();
  const gauge = state?.channels.find(
    ({ channel, aside }) => channel.reads === 'pressure' && aside === undefined,
  );
  if (state?.phase !== 'broken off' || state.plan === undefined || gauge === undefined) return undefined;
  const { plan } = state.plan;
  const f = figuresFor(manner, plan.unit_bar);
  const chosen = step ?? state.step?.number ?? plan.steps[0].number;
  const act = async (): Promise<boolean> => {
    const read = readEntry(manner, gauge.channel.reads, typed);
    if (read.kind !== 'value') {
      tell(read.kind === 'fault' ? read.why : say('rowNothing'));
      return false;
    }
    const values = { [gauge.channel.name]: read.value };
    return (await give({ order: 'confirm step', by, step: chosen, values })) !== undefined;
  };
  const more = (
    <div className="confirm-step">
      <ChannelField
        channel={gauge.channel}
        label={say('confirmRead', { channel: gauge.channel.name })}
        typed={typed}
        onTyped={setTyped}
      />
      <label className="line-field">
        <span>{say('confirmStep')}</span>
        <select value={chosen} onChange={(event) => setStep(event.target.value)}>
          {plan.steps.map((one) => (
            <option key={one.number} value={one.number}>
              {stepLine(one, f)}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
  return {
    name: 'confirm step',
    label: say('confirm'),
    will: say('confirmWill', { step: chosen }),
    grave: true,
    more,
    onDo: act,
  };
}
