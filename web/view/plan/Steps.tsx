/** The steps of the day as a table, with the stop limits and what to do when a reading is outside. */
import type { PlanSheet, StepRow } from '@hoopwright/report/plan';
import { words } from '../../words/say.ts';
import { Wide } from '../table/Wide.tsx';

export function Steps({ sheet }: { readonly sheet: PlanSheet }) {
  const { units, girths, counts } = sheet;
  return (
    <section id="steps" className="plan-steps" aria-label={words('planSteps')}>
      <Wide label={words('planSteps')}>
        <table className="figures">
          <caption className="unseen">{words('planSteps')}</caption>
          <thead>
            <tr>
              <th scope="col" colSpan={2}>
                {words('planStep')}
              </th>
              <th scope="col">{words('planPressure', { unit: units.pressure })}</th>
              {girths.map((girth) => (
                <th key={girth} scope="col">
                  {words('planChange', { girth, unit: units.girth })}
                </th>
              ))}
              <th scope="col">{words('planLitres', { unit: units.litres })}</th>
              {counts === 'strokes' ? <th scope="col">{words('planStrokes')}</th> : null}
              <th scope="col">{words('planHold')}</th>
            </tr>
          </thead>
          <tbody>
            {sheet.steps.map((row) => (
              <Row key={row.number} row={row} sheet={sheet} />
            ))}
          </tbody>
        </table>
      </Wide>
      <ul className="cautions" data-part="log">
        {sheet.log.cautions.map(({ id, text }) => (
          <li key={id}>{text}</li>
        ))}
      </ul>
      <div className="beside">
        <div className="stops">
          <h2>{words('planStopOn')}</h2>
          <ul>
            {sheet.card.stops.map((stop) => (
              <li key={stop}>{stop}</li>
            ))}
          </ul>
        </div>
        <div>
          <h2>{words('planOutside')}</h2>
          {sheet.card.ifs.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </div>
    </section>
  );
}

function Row({ row, sheet }: { readonly row: StepRow; readonly sheet: PlanSheet }) {
  return (
    <tr data-step={row.number}>
      <th scope="row">{row.number}</th>
      <td className="does">
        <strong>{row.name}</strong> {row.does}
      </td>
      <td className="strong">{row.pressure}</td>
      {sheet.girths.map((girth, i) =>
        row.forbidden.includes(i) ? (
          <td key={girth} className="forbidden">
            <span className="figure-text">{words('planNotRead')}</span>
          </td>
        ) : (
          <td key={girth}>{row.changes[i] ?? ''}</td>
        ),
      )}
      <td>{row.litres}</td>
      {sheet.counts === 'strokes' ? <td>{row.strokes}</td> : null}
      <td>{row.hold}</td>
    </tr>
  );
}
