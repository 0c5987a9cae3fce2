/** Girths, content and wall: as welded, under pressure, left. */
import { useBoard } from '../../state/board.ts';
import type { MomentView } from '../../work/ask.ts';
import { words } from '../../words/say.ts';
import { Change, Value } from '../said/Figures.tsx';
import { Term } from '../said/Term.tsx';
import { Wide } from './Wide.tsx';

export function GirthTable() {
  const drawn = useBoard((b) => b.drawn);
  if (drawn === undefined) return null;
  const { forecast, tank } = drawn;
  const under = forecast.held ?? forecast.arrived;
  const left = forecast.released?.left;
  return (
    <Wide label={words('girthTable')}>
      <table className="figures">
        <caption className="unseen">{words('girthTable')}</caption>
        <thead>
          <tr>
            <th scope="col">
              <Term name="girth" />
            </th>
            <th scope="col">{words('colWelded')}</th>
            <th scope="col" colSpan={2}>
              {words('colUnder')}
            </th>
            <th scope="col" colSpan={2}>
              <Term name="left">{words('colLeft')}</Term>
            </th>
          </tr>
        </thead>
        <tbody>
          {tank.girths.map(({ name }, i) => (
            <tr key={name} data-row={name}>
              <th scope="row">{name}</th>
              <td>
                <Value quantity="girth" value={forecast.girths[i]} />
              </td>
              <Pair quantity="girth" value={under?.girths[i].girth} change={under?.girths[i].growth} />
              <Pair quantity="girth" value={left?.girths[i].girth} change={left?.girths[i].growth} />
            </tr>
          ))}
          <Largest under={under} left={left} />
          <tr data-row="content">
            <th scope="row">{words('rowContent')}</th>
            <td>
              <Value quantity="content" value={forecast.volume} />
            </td>
            <Content volume={forecast.volume} moment={under} />
            <Content volume={forecast.volume} moment={left} />
          </tr>
          <tr data-row="thinnest">
            <th scope="row">{words('rowThinnest')}</th>
            <td>
              <Value quantity="wall" value={drawn.thinnest} />
            </td>
            <Pair quantity="wall" value={under?.thinnest} change={undefined} />
            <Pair quantity="wall" value={left?.thinnest} change={undefined} />
          </tr>
          <tr data-row="pumped">
            <th scope="row">
              <Term name="pumped">{words('rowPumped')}</Term>
            </th>
            <td />
            <Pair quantity="volume" value={under?.pumped.all} change={undefined} />
            <td colSpan={2} />
          </tr>
        </tbody>
      </table>
    </Wide>
  );
}

interface PairProps {
  readonly quantity: 'girth' | 'wall' | 'content' | 'volume';
  readonly value: number | undefined;
  readonly change: number | undefined;
}

function Pair({ quantity, value, change }: PairProps) {
  return (
    <>
      <td>
        <Value quantity={quantity} value={value} />
      </td>
      <td className="change">
        <Change quantity="growth" value={change} />
      </td>
    </>
  );
}

function Content({ volume, moment }: { readonly volume: number; readonly moment: MomentView | undefined }) {
  return (
    <Pair
      quantity="content"
      value={moment === undefined ? undefined : volume + moment.growth}
      change={moment === undefined ? undefined : moment.growth / volume}
    />
  );
}

function Largest({
  under,
  left,
}: {
  readonly under: MomentView | undefined;
  readonly left: MomentView | undefined;
}) {
  if (under === undefined) return null;
  return (
    <tr className="ruled" data-row="largest">
      <th scope="row">
        {words('rowLargestPlain')} <Value quantity="length" value={under.largest.at} />
      </th>
      <td />
      <td />
      <td className="change">
        <Change quantity="growth" value={under.largest.growth} />
      </td>
      <td />
      <td className="change">
        <Change quantity="growth" value={left?.largest.growth} />
      </td>
    </tr>
  );
}
