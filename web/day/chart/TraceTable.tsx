/** The measured curve as a table, for those who cannot see it: the last readings, newest first. */
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { clockText, growthText, pressureText } from '../said/figures.ts';
import { growthOf } from '../tells/curvePoints.ts';
import { useDay } from '../state/live.ts';
import { trace } from '../state/trace.ts';

/** Rows: what somebody listens to. */
const ROWS = 12;

interface Row {
  readonly seconds: number;
  readonly bar: number;
  readonly growth: number | undefined;
}

export function TraceTable() {
  const state = useDay((d) => d.state);
  const manner = useManner();
  if (state === undefined) return null;
  const girth = state.figures.growth?.girth;
  const rows = lastRows(state.figures.pressure?.channel, girth, growthOf(state));
  return (
    <table className="unseen">
      <caption>{say('tableTitle')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('tableTime')}</th>
          <th scope="col">{say('pressure')}</th>
          <th scope="col">{girth === undefined ? say('growthBare') : say('growth', { girth })}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ seconds, bar, growth }) => (
          <tr key={seconds}>
            <th scope="row">{clockText(state.about.began_ms + 1000 * seconds)}</th>
            <td>{pressureText(manner, bar)}</td>
            <td>{growth === undefined ? say('notRead') : growthText(manner, growth)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function lastRows(
  pressure: string | undefined,
  girth: string | undefined,
  percent: ((mm: number) => number) | undefined,
): Row[] {
  const [p, g] = [pressure, girth].map((name) => (name === undefined ? undefined : trace.track(name)));
  const rows: Row[] = [];
  for (let i = trace.length - 1; i >= 0 && rows.length < ROWS; i--) {
    const bar = p?.high[i] ?? NaN;
    if (Number.isNaN(bar)) continue;
    const mm = g?.high[i] ?? NaN;
    rows.push({
      seconds: trace.seconds[i],
      bar,
      growth: Number.isNaN(mm) || percent === undefined ? undefined : percent(mm),
    });
  }
  return rows;
}
