/** The figures on which a team decides, each with its term. */
import { PUBLISHED_CEILING } from '@hoopwright/report/curve';
import type { SpanFile } from '@hoopwright/wire/forecast';
import { useStretchRange } from '../../state/server/useStretchRange.ts';
import { useBoard } from '../../state/board.ts';
import { words } from '../../words/say.ts';
import { partName } from '../../words/part.ts';
import { Value } from './Figures.tsx';
import { NineOfTen, type SpanProps } from './Span.tsx';
import { Term } from './Term.tsx';

const MAXIMA = {
  'pressure maximum': 'maximumPressure',
  'local necking': 'maximumNecking',
  seam: 'maximumSeam',
} as const;

/** Nine of ten, behind the figure they belong to. */
function Nine({ quantity, span, one }: Omit<SpanProps, 'span'> & { readonly span: SpanFile | undefined }) {
  return span === undefined ? null : (
    <span className="small nine">
      {' ('}
      <NineOfTen quantity={quantity} span={span} one={one} />)
    </span>
  );
}

export function KeyFigures() {
  const drawn = useBoard((b) => b.drawn);
  const range = useStretchRange();
  if (drawn === undefined) return null;
  const { target, firstYield, barrelYield, maximum, released, unstretched, mass, held, arrived } =
    drawn.forecast;
  const under = held ?? arrived;
  const nine = range?.underPressure;
  return (
    <dl className="lines key-figures">
      <dt>
        <Term name="firstYield" />
      </dt>
      <dd data-figure="firstYield">
        <Value quantity="pressure" value={firstYield?.pressure} />
        <Nine quantity="pressure" span={nine?.firstYield_bar} one={0.1} />
        {firstYield === undefined ? null : <span className="small"> {partName(firstYield.at.part)}</span>}
      </dd>
      <dt>
        <Term name="barrelYield" />
      </dt>
      <dd data-figure="barrelYield">
        <Value quantity="pressure" value={barrelYield} />
      </dd>
      <dt>
        <Term name="stretch" />
      </dt>
      <dd data-figure="target">
        <Value quantity="pressure" value={target} />
      </dd>
      <dt>
        <Term name="growth">{words('growthUnder')}</Term>
      </dt>
      <dd data-figure="under">
        <Value quantity="growth" value={under?.largest.growth} />
        <Nine quantity="growth" span={nine?.growth_percent} one={0.01} />
      </dd>
      <dt>
        <Term name="left">{words('growthLeft')}</Term>
      </dt>
      <dd data-figure="left">
        <Value quantity="growth" value={released?.left.largest.growth} />
      </dd>
      <dt>
        <Term name="ceiling">{words('ceilingLeft')}</Term>
      </dt>
      <dd>
        <Value quantity="growth" value={PUBLISHED_CEILING.growth} />
      </dd>
      <dt>
        <Term name="maximum">{words(maximum === undefined ? 'maximumNone' : MAXIMA[maximum.kind])}</Term>
      </dt>
      <dd data-figure="maximum">
        <Value quantity="pressure" value={maximum?.pressure} />
        <Nine quantity="pressure" span={nine?.maximum_bar} one={0.1} />
      </dd>
      <dt>
        <Term name="margin" />
      </dt>
      <dd data-figure="margin">
        <Value
          quantity="ratio"
          value={maximum === undefined || target === undefined ? undefined : maximum.pressure / target}
        />
      </dd>
      {range === undefined ? null : (
        <>
          <dt>
            <Term name="survived" />
          </dt>
          <dd data-figure="survived">
            <Value quantity="pressure" value={range.survive99.pressure_bar / 10} />
          </dd>
        </>
      )}
      <dt>{words('massNow')}</dt>
      <dd data-figure="mass">
        <Value quantity="mass" value={mass} />
      </dd>
      <dt>
        <Term name="unstretched" />
      </dt>
      <dd data-figure="unstretched">
        <Value quantity="wall" value={unstretched?.wall} />,{' '}
        <Value quantity="mass" value={unstretched?.mass} />
      </dd>
    </dl>
  );
}
