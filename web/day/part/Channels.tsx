/** Every channel: last reading, age, what is against it; set aside, taken back, accepted by the director. */
import type { ChannelNow } from '@hoopwright/wire/day';
import { useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { ageText, channelText } from '../said/figures.ts';
import { useNow } from '../state/clock.ts';
import { agedAt } from '../tells/aged.ts';
import { useDay } from '../state/live.ts';
import { give, useName } from '../state/orders.ts';
import { type Deed, Question } from './Keys.tsx';

export function Channels({ mayAct }: { readonly mayAct: boolean }) {
  const channels = useDay((d) => d.state?.channels) ?? [];
  const role = useDay((d) => d.role);
  const [asked, setAsked] = useState<string>();
  const acts = mayAct && role === 'director';
  const one = channels.find(({ channel }) => channel.name === asked);
  const deed = useDeed(one);
  if (deed !== undefined) return <Question key={deed.name} deed={deed} onDone={() => setAsked(undefined)} />;
  return (
    <table className="figures channels">
      <caption className="unseen">{say('moreChannels')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('colChannel')}</th>
          <th scope="col">{say('colReads')}</th>
          <th scope="col">{say('colAge')}</th>
          <th scope="col">{say('colState')}</th>
          {acts ? <th scope="col">{say('colDo')}</th> : null}
        </tr>
      </thead>
      <tbody>
        {channels.map((each) => (
          <ChannelRow key={each.channel.name} now={each} acts={acts} onAsk={setAsked} />
        ))}
      </tbody>
    </table>
  );
}

interface ChannelRowProps {
  readonly now: ChannelNow;
  readonly acts: boolean;
  readonly onAsk: (name: string) => void;
}

function ChannelRow({ now, acts, onAsk }: ChannelRowProps) {
  const clock = useNow();
  const link = useDay((d) => d.link);
  const manner = useManner();
  const { channel, last, fresh_s } = now;
  const aged = last === undefined ? undefined : agedAt({ wall_ms: last.wall_ms, fresh_s }, clock, link);
  const value = last === undefined ? '–' : channelText(manner, channel.reads, last.value);
  return (
    <tr data-channel-row={channel.name}>
      <th scope="row">{channel.name}</th>
      <td>{aged?.old === true || now.aside !== undefined ? <s>{value}</s> : value}</td>
      <td>{aged === undefined ? '–' : ageText(aged.age_s)}</td>
      <td className="words-cell">{stateText(now, aged?.old === true)}</td>
      {acts ? (
        <td>
          <button
            type="button"
            className="key"
            aria-label={say(namedOf(now), { name: channel.name })}
            onClick={() => onAsk(channel.name)}
          >
            {say(keyOf(now))}
          </button>
        </td>
      ) : null}
    </tr>
  );
}

function stateText({ aside, unproved, ails }: ChannelNow, old: boolean): string {
  const unsure = unproved === undefined ? '' : say('channelUnproved', { why: unproved });
  if (aside !== undefined) return `${say('channelAside', aside)} ${unsure}`;
  if (unsure !== '') return unsure;
  if (ails !== undefined) return say(`ails ${ails.what}`);
  return say(old ? 'channelOld' : 'channelGood');
}

const keyOf = ({ aside, unproved }: ChannelNow) =>
  unproved !== undefined ? 'accept' : aside !== undefined ? 'takeBack' : 'aside';

const namedOf = (now: ChannelNow) =>
  (({ takeBack: 'takeBackNamed', accept: 'acceptNamed', aside: 'asideNamed' }) as const)[keyOf(now)];

function useDeed(one: ChannelNow | undefined): Deed | undefined {
  const by = useName();
  if (one === undefined) return undefined;
  const { name } = one.channel;
  const { unproved } = one;
  if (unproved !== undefined)
    return {
      name: 'accept source',
      label: say('acceptNamed', { name }),
      will: say('acceptWill'),
      onDo: async () => (await give({ order: 'accept source', by, source: unproved })) !== undefined,
    };
  const back = one.aside !== undefined;
  return {
    name: back ? 'take back' : 'set aside',
    label: say(back ? 'takeBackNamed' : 'asideNamed', { name }),
    will: say(back ? 'takeBackWill' : 'asideWill'),
    why: say(back ? 'takeBackWhy' : 'asideWhy'),
    onDo: async (why) =>
      (await give({ order: back ? 'take back' : 'set aside', by, channel: name, why })) !== undefined,
  };
}
