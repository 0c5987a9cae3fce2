/** The curve as a table, for those who read rather than look: the pressures of the log sheet, holds, release. */
import { useBoard } from '../../state/board.ts';
import type { MomentView } from '../../work/ask.ts';
import { words } from '../../words/say.ts';
import { Change, Value } from '../said/Figures.tsx';
import { Wide } from './Wide.tsx';

const PHASES = { stretch: 'phaseStretch', hold: 'phaseHold', release: 'phaseRelease' } as const;

export function CurveTable() {
  const drawn = useBoard((b) => b.drawn);
  if (drawn === undefined) return null;
  const { forecast, tank } = drawn;
  return (
    <details className="curve-table">
      <summary>{words('curveTable')}</summary>
      <Wide label={words('curveTable')}>
        <table className="figures">
          <caption className="unseen">{words('curveTable')}</caption>
          <thead>
            <tr>
              <th scope="col">{words('colPhase')}</th>
              <th scope="col">{words('linePressure')}</th>
              {tank.girths.map(({ name }) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
              <th scope="col">{words('lineLargest')}</th>
              <th scope="col">{words('lineGrown')}</th>
              <th scope="col">{words('linePumped')}</th>
            </tr>
          </thead>
          <tbody>
            {told(forecast.path).map((m) => (
              <tr key={`${m.phase} ${m.time} ${m.pressure}`}>
                <th scope="row">{words(PHASES[m.phase])}</th>
                <td>
                  <Value quantity="pressure" value={m.pressure} />
                </td>
                {m.girths.map(({ growth }, i) => (
                  <td key={tank.girths[i].name}>
                    <Change quantity="growth" value={growth} />
                  </td>
                ))}
                <td>
                  <Change quantity="growth" value={m.largest.growth} />
                </td>
                <td>
                  <Value quantity="volume" value={m.growth} />
                </td>
                <td>
                  <Value quantity="volume" value={m.pumped.all} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </details>
  );
}

/** A hold is told by its end, the stretch and the release by every step. */
const told = (path: readonly MomentView[]): readonly MomentView[] =>
  path.filter((m, i) => m.phase !== 'hold' || path[i + 1]?.phase !== 'hold');
