/** The rest, behind one key: channels, limits, measures, remarks, heads, traces, role. */
import { figuresFor, limitText } from '@hoopwright/report/plan';
import { useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { Strips } from '../chart/Strips.tsx';
import { Links } from '../days/Links.tsx';
import { Crew } from '../part/Crew.tsx';
import { Channels } from '../part/Channels.tsx';
import { Heads } from '../part/Head.tsx';
import { RemarkForm, Remarks } from '../entry/Remark.tsx';
import { dayServer } from '../state/api.ts';
import { useDay } from '../state/live.ts';
import { ReadNow } from '../part/Steps.tsx';
import { RoleAndName } from './RoleAndName.tsx';
import { SetUp } from './SetUp.tsx';

const PARTS = [
  'moreChannels',
  'moreTraces',
  'moreLimits',
  'moreMeasures',
  'moreRemarks',
  'moreHeads',
  'moreRole',
] as const;
type Part = (typeof PARTS)[number];

export function More({ mayAct }: { readonly mayAct: boolean }) {
  const [part, setPart] = useState<Part>('moreChannels');
  return (
    <section className="more-sheet">
      <div className="tabs" role="group" aria-label={say('more')}>
        {PARTS.map((one) => (
          <button
            key={one}
            type="button"
            className="tab"
            aria-pressed={part === one}
            onClick={() => setPart(one)}
          >
            {say(one)}
          </button>
        ))}
      </div>
      <div className="more-part" data-part={part}>
        <PartOf part={part} mayAct={mayAct} />
      </div>
    </section>
  );
}

function PartOf({ part, mayAct }: { readonly part: Part; readonly mayAct: boolean }) {
  const own = useDay((d) => d.own);
  switch (part) {
    case 'moreChannels':
      return (
        <>
          <Explanations />
          <Troubles />
          <ReadNow />
          <Channels mayAct={mayAct} />
        </>
      );
    case 'moreTraces':
      return <Strips />;
    case 'moreLimits':
      return <LimitsNow />;
    case 'moreMeasures':
      return <SetUp mayAct={mayAct} />;
    case 'moreRemarks':
      return (
        <>
          {mayAct ? <RemarkForm /> : null}
          <Remarks />
        </>
      );
    case 'moreHeads':
      return (
        <>
          <Heads />
          <Exports />
        </>
      );
    case 'moreRole':
      return (
        <>
          {mayAct ? <RoleAndName /> : <Crew />}
          {own && mayAct ? <Links /> : null}
        </>
      );
  }
}

/** What the advice leaves open, and the reading that would close it. */
function Explanations() {
  const advice = useDay((d) => d.state?.advice);
  if (advice?.explanations === undefined || advice.explanations.length === 0) return null;
  return (
    <section className="troubles" aria-label={say('explained')}>
      <h2>{say('explained')}</h2>
      <ul>
        {advice.explanations.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      {advice.tellApart === undefined ? null : (
        <p>
          <strong>{say('tellApart')}</strong> {advice.tellApart}
        </p>
      )}
    </section>
  );
}

function Troubles() {
  const troubles = useDay((d) => d.state?.troubles) ?? [];
  if (troubles.length === 0) return null;
  return (
    <section className="troubles" aria-label={say('troubles')}>
      <h2>{say('troubles')}</h2>
      <ul>
        {troubles.map(({ seq, says }) => (
          <li key={seq}>{says}</li>
        ))}
      </ul>
    </section>
  );
}

function LimitsNow() {
  const plan = useDay((d) => d.state?.plan?.plan);
  const causes = useDay((d) => d.state?.causes) ?? [];
  const manner = useManner();
  if (plan === undefined) return null;
  const f = figuresFor(manner, plan.unit_bar);
  return (
    <ul className="limits">
      {plan.limits.map((limit) => (
        <li key={limit.limit}>
          {limitText(limit, f)}
          {causes.some((cause) => cause.limit === limit.limit) ? (
            <strong> {say('limitCrossed')}</strong>
          ) : null}
        </li>
      ))}
    </ul>
  );
}

function Exports() {
  const record = useDay((d) => d.record);
  const { decimal } = useManner();
  return (
    <p className="exports">
      <a className="key" href={dayServer.exportAddress(record, 'csv', decimal)} download>
        {say('exportCsv')}
      </a>
      <a className="key" href={dayServer.exportAddress(record, 'ndjson', decimal)} download>
        {say('exportNdjson')}
      </a>
      <a className="key" href={dayServer.exportAddress(record, 'record', decimal)} download>
        {say('exportRecord')}
      </a>
    </p>
  );
}
