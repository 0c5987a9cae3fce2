/** The sheets that one can buy, side by side for the same duty: the picture on which a team chooses. */
import { fromBar } from '@hoopwright/core/units';
import { PUBLISHED_CEILING } from '@hoopwright/report/curve';
import { say } from '@hoopwright/report/figure';
import type { SheetRow } from '@hoopwright/wire/compare';
import { useEffect } from 'react';
import { SheetsChart } from '../../chart/SheetsChart.tsx';
import { forecastState, useBoard } from '../../state/board.ts';
import { changeFigure } from '../../state/file/change.ts';
import { compareNow, useCompared } from '../../state/server/compare.ts';
import { valueAt } from '../../state/file/edit.ts';
import { useManner } from '../../state/manner.ts';
import { words } from '../../words/say.ts';
import { Value } from '../said/Figures.tsx';
import { Term } from '../said/Term.tsx';
import { WallsField } from '../field/WallsField.tsx';
import { Wide } from './Wide.tsx';

export function Comparison() {
  const state = useBoard(forecastState);
  const number = useBoard((b) => b.number);
  const { walls, rows, unstretched } = useCompared();
  const present = useBoard((b) => valueAt(b.draft, 'barrel.wall_mm'));
  useEffect(() => {
    if (state === 'current') void compareNow();
  }, [state, number, walls]);
  const waiting = walls.length - rows.length;
  return (
    <section className="comparison" aria-label={words('compareTitle')}>
      <h2>{words('compareTitle')}</h2>
      <div className="sheets">
        <div>
          <WallsField />
          <Wide label={words('compareTitle')}>
            <table className="figures">
              <caption className="unseen">{words('compareTitle')}</caption>
              <Head />
              <tbody>
                {rows.map((row) => (
                  <Row key={row.wall_mm} row={row} present={present} />
                ))}
                {unstretched === null ? null : (
                  <tr className="ruled" data-sheet="unstretched">
                    <th scope="row">
                      <Term name="unstretched">{words('compareUnstretched')}</Term>,{' '}
                      <Value quantity="wall" value={unstretched.wall_mm} />
                    </th>
                    <td />
                    <td />
                    <td>
                      <Value quantity="mass" value={unstretched.mass_kg / 1000} />
                    </td>
                    <td colSpan={4} />
                  </tr>
                )}
              </tbody>
            </table>
          </Wide>
          <p className="quiet" aria-live="polite">
            {waiting > 0 ? words('compareWorking') : words('compareNote')}
          </p>
        </div>
        <SheetsChart
          rows={rows}
          unstretched={unstretched}
          present={typeof present === 'number' ? present : undefined}
        />
      </div>
    </section>
  );
}

function Head() {
  return (
    <thead>
      <tr>
        <th scope="col">{words('colSheet')}</th>
        <th scope="col">{words('colGrowthUnder')}</th>
        <th scope="col">
          <Term name="left">{words('colGrowthLeft')}</Term>
        </th>
        <th scope="col">{words('colMass')}</th>
        <th scope="col">{words('colSaved')}</th>
        <th scope="col">
          <Term name="maximum">{words('colMaximum')}</Term>
        </th>
        <th scope="col">
          <Term name="margin">{words('colMargin')}</Term>
        </th>
        <th scope="col" aria-label={words('compareUse')} />
      </tr>
    </thead>
  );
}

function Row({ row, present }: { readonly row: SheetRow; readonly present: unknown }) {
  const manner = useManner();
  const left = row.growthLeft_percent === null ? undefined : row.growthLeft_percent / 100;
  return (
    <tr data-sheet={row.wall_mm}>
      <th scope="row">
        <Value quantity="wall" value={row.wall_mm} />
      </th>
      {row.end === 'bursts' || row.end === 'refused' ? (
        <td colSpan={2} className="strong">
          {words(row.end === 'bursts' ? 'compareBursts' : 'compareRefused')}
        </td>
      ) : (
        <>
          <td>
            <Value
              quantity="growth"
              value={row.growthUnder_percent === null ? undefined : row.growthUnder_percent / 100}
            />
          </td>
          <td className={left !== undefined && left > PUBLISHED_CEILING.growth ? 'forbidden' : ''}>
            <Value quantity="growth" value={left} />
          </td>
        </>
      )}
      <td>
        <Value quantity="mass" value={row.mass_kg === null ? undefined : row.mass_kg / 1000} />
      </td>
      <td>
        <Value quantity="share" value={row.overUnstretched ?? undefined} />
      </td>
      <td>
        <Value quantity="pressure" value={row.maximum_bar === null ? undefined : fromBar(row.maximum_bar)} />
      </td>
      <td>
        <Value quantity="ratio" value={row.margin ?? undefined} />
      </td>
      <td>
        {row.wall_mm === present ? (
          words('compareNow')
        ) : row.end === 'refused' ? null : (
          <button
            type="button"
            aria-label={words('compareUseNamed', { wall: say(manner, 'wall', row.wall_mm) })}
            onClick={() => changeFigure('barrel.wall_mm', row.wall_mm)}
          >
            {words('compareUse')}
          </button>
        )}
      </td>
    </tr>
  );
}
