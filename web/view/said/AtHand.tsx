/** The figures of every line where the hand stands. */
import { useBoard } from '../../state/board.ts';
import type { Drawn, MomentView } from '../../work/ask.ts';
import { momentOf } from '../../work/moment.ts';
import { words } from '../../words/say.ts';
import { Change, Value } from './Figures.tsx';

const PHASES = { stretch: 'phaseStretch', hold: 'phaseHold', release: 'phaseRelease' } as const;

export function AtHand({ drawn, moment }: { readonly drawn: Drawn; readonly moment: MomentView }) {
  const { tank, forecast } = drawn;
  const cursor = useBoard((b) => b.cursor);
  const hovered = moment !== (momentOf(forecast, cursor) ?? forecast.start);
  const turn = forecast.held ?? forecast.arrived;
  const beyond =
    turn !== undefined && moment.phase === 'stretch' && moment.largest.growth > turn.largest.growth;
  return (
    <dl className="lines at-hand" aria-live="polite">
      <dt className="strong">{words(hovered ? 'atPointer' : 'atHand')}</dt>
      <dd>{words(beyond ? 'beyond' : PHASES[moment.phase])}</dd>
      <dt>{words('linePressure')}</dt>
      <dd>
        <Value quantity="pressure" value={moment.pressure} />
      </dd>
      {tank.girths.map(({ name }, i) => (
        <Line key={name} name={name} moment={moment} i={i} />
      ))}
      <dt>{words('lineLargest')}</dt>
      <dd>
        <Change quantity="growth" value={moment.largest.growth} />
      </dd>
      <dt>{words('lineGrown')}</dt>
      <dd>
        <Value quantity="volume" value={moment.growth} />
      </dd>
      <dt>{words('linePumped')}</dt>
      <dd>
        <Value quantity="volume" value={moment.pumped.all} />
      </dd>
      <dt>{words('lineThinnest')}</dt>
      <dd>
        <Value quantity="wall" value={moment.thinnest} />
      </dd>
    </dl>
  );
}

function Line({
  name,
  moment,
  i,
}: {
  readonly name: string;
  readonly moment: MomentView;
  readonly i: number;
}) {
  return (
    <>
      <dt>{name}</dt>
      <dd>
        <Value quantity="girth" value={moment.girths[i].girth} />{' '}
        <Change quantity="growth" value={moment.girths[i].growth} />
      </dd>
    </>
  );
}
