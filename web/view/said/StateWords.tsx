/** What is so, in words, set large; why, under it. */
import { say } from '@hoopwright/report/figure';
import type { Manner } from '@hoopwright/report/figure';
import { remarkSentence } from '@hoopwright/report/answer';
import { forecastState, useBoard } from '../../state/board.ts';
import { hasEvidence, useSteel } from '../../state/server/steel.ts';
import { useStretchRange } from '../../state/server/useStretchRange.ts';
import { useManner } from '../../state/manner.ts';
import { issueSentence } from '../../words/issue.ts';
import { nameOf } from '../../words/names.ts';
import { words } from '../../words/say.ts';
import { Term } from './Term.tsx';
import type { Drawn } from '../../work/ask.ts';

export function StateWords() {
  const drawn = useBoard((b) => b.drawn);
  const state = useBoard(forecastState);
  const manner = useManner();
  if (drawn === undefined)
    return (
      <div className="state">
        <p className="large">{words('working')}</p>
        <Issues />
      </div>
    );
  const [what, why] = stateOf(drawn, manner);
  return (
    <div className={`state${state === 'out of date' ? ' outdated' : ''}`}>
      <p className="large">{what}</p>
      <p>
        {state === 'out of date' ? words('outOfDateReason') : why} <InRange />
      </p>
      <Issues />
    </div>
  );
}

function stateOf({ forecast }: Drawn, manner: Manner): readonly [what: string, why: string] {
  const { target, arrived, held, released, maximum, remarks } = forecast;
  if (target === undefined) return [words('noDuty'), words('noDutyReason')];
  const now = held ?? arrived;
  const burst = remarks.find(
    (remark) => remark.code === 'bursts before target' || remark.code === 'path stuck',
  );
  if (now === undefined) return [words('bursts'), burst === undefined ? '' : remarkSentence(burst, manner)];
  const growth = say(manner, 'growth', now.largest.growth);
  const what =
    released === undefined
      ? words('growsUnder', { growth })
      : words('grows', { growth, left: say(manner, 'growth', released.left.largest.growth) });
  const at = say(manner, 'pressure', target);
  if (maximum === undefined) return [what, words('growsNoMaximum', { target: at })];
  const ratio = say(manner, 'ratio', maximum.pressure / target);
  return [
    what,
    words(held === undefined ? 'growsReasonBare' : 'growsReason', {
      target: at,
      maximum: say(manner, 'pressure', maximum.pressure),
      ratio,
    }),
  ];
}

/** From where to where nine of ten such tanks grow, where there is evidence for it. */
function InRange() {
  const range = useStretchRange();
  const working = useSteel((s) => s.working);
  const manner = useManner();
  const evidence = useBoard((b) => hasEvidence(b.draft));
  if (!evidence) return <Term name="steelSays">{words('steelAssumedShort')}</Term>;
  if (range === undefined) return working ? <span className="quiet">{words('steelWorking')}</span> : null;
  const [low, high] = range.underPressure.growth_percent.nineOfTen;
  if (low === null || high === null) return null;
  const percent = (x: number): string => say(manner, 'growth', x / 100);
  return <Term name="range">{words('steelNineOfTen', { low: percent(low), high: percent(high) })}</Term>;
}

/** What stands against the draft, each with its place. */
function Issues() {
  const issues = useBoard((b) => b.issues);
  const faults = useBoard((b) => b.faults);
  if (issues.length === 0 && Object.keys(faults).length === 0) return null;
  return (
    <div className="issues" role="alert">
      <p className="strong">{words('mend')}</p>
      <ul>
        {Object.entries(faults).map(([path, sentence]) => (
          <li key={path}>
            <strong>{nameOf(path)}</strong> {sentence}
          </li>
        ))}
        {issues.map((issue) => (
          <li key={issue.path + issue.expected}>
            <strong>{nameOf(issue.path)}</strong> {issueSentence(issue)}
          </li>
        ))}
      </ul>
    </div>
  );
}
