/** What the tests say, in words: the growth with its range, or why there is none. */
import { say } from '@hoopwright/report/figure';
import { useBoard } from '../../state/board.ts';
import { useManner } from '../../state/manner.ts';
import { hasEvidence, rangeIsOf, useSteel } from '../../state/server/steel.ts';
import { words } from '../../words/say.ts';
import { Term } from './Term.tsx';

export function SteelWords() {
  const draft = useBoard((b) => b.draft);
  return (
    <div className="state">
      {hasEvidence(draft) ? (
        <RangeWords />
      ) : (
        <>
          <p className="large">{words('steelAssumed')}</p>
          <p>{words('steelAssumedReason')}</p>
        </>
      )}
    </div>
  );
}

function RangeWords() {
  const draft = useBoard((b) => b.draft);
  const manner = useManner();
  const range = useSteel((s) => s.range);
  const working = useSteel((s) => s.working);
  const stretch = range?.stretch ?? undefined;
  if (stretch === undefined)
    return <p className="large">{words(working ? 'steelWorking' : 'steelNoRange')}</p>;
  const { growth_percent: growth, bursts_percent: bursts } = stretch.underPressure;
  const [low, high] = growth.nineOfTen;
  const percent = (x: number): string => say(manner, 'growth', x / 100);
  return (
    <div className={rangeIsOf(draft) ? '' : 'outdated'}>
      <p className="large">
        {low === null
          ? words('steelBursts', { share: say(manner, 'share', bursts / 100) })
          : high === null
            ? words('steelGrowsOpen', { low: percent(low), share: say(manner, 'share', bursts / 100) })
            : words('steelGrows', { low: percent(low), high: percent(high) })}
      </p>
      <p>
        {words('steelSurvives', { pressure: say(manner, 'pressure', stretch.survive99.pressure_bar / 10) })}{' '}
        <Term name="range">{words('steelRangeMeans')}</Term>
      </p>
      {working ? <p className="quiet">{words('steelWorking')}</p> : null}
    </div>
  );
}
