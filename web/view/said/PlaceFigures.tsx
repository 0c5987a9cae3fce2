/** The figures of the place that is pointed at. */
import { figure, type Quantity } from '@hoopwright/report/figure';
import { useBoard } from '../../state/board.ts';
import { useManner } from '../../state/manner.ts';
import { useLooking } from '../../state/view.ts';
import { partName } from '../../words/part.ts';
import { words } from '../../words/say.ts';
import { Value } from './Figures.tsx';
import { Term } from './Term.tsx';

interface Through {
  readonly inside: number;
  readonly mid: number;
  readonly outside: number;
}

export function PlaceFigures() {
  const place = useLooking((l) => l.place);
  const stance = useBoard((b) => b.stance);
  if (place === undefined) return <p className="quiet">{words('placeNone')}</p>;
  const at = stance?.profile.reduce((best, one) => (far(one, place) < far(best, place) ? one : best));
  return (
    <div className="place">
      <p className="strong">{words('placeTitle')}</p>
      <p>
        {partName(place.part)}, <Value quantity="length" value={place.z} />
      </p>
      {at === undefined ? null : (
        <dl className="lines">
          <dt>
            <Term name="wall" />
          </dt>
          <dd>
            <Value quantity="wall" value={at.wall} />
          </dd>
          <dt>
            <Term name="strain">{words('placeHoop')}</Term>
          </dt>
          <dd>
            <Faces quantity="strain" through={at.hoop} />
          </dd>
          <dt>{words('placeMeridional')}</dt>
          <dd>
            <Faces quantity="strain" through={at.meridional} />
          </dd>
          <dt>
            <Term name="plastic" />
          </dt>
          <dd>
            <Faces quantity="strain" through={at.plastic} />
          </dd>
        </dl>
      )}
    </div>
  );
}

function Faces({ quantity, through }: { readonly quantity: Quantity; readonly through: Through }) {
  const manner = useManner();
  const [inside, mid, outside] = [through.inside, through.mid, through.outside].map((v) =>
    figure(manner, quantity, v),
  );
  return (
    <span title={words('placeFaces')}>
      {words('faces', { inside: inside.text, middle: mid.text, outside: outside.text })}{' '}
      <span className="unit">{outside.unit}</span>
    </span>
  );
}

/**
 * Distance along the tank as welded. A straight flange is drawn as part of its head and counted with the barrel between
 * the tangent lines, so heights decide, and parts only where they are the two heads.
 */
const far = (
  one: { readonly part: string; readonly z0: number },
  place: { readonly part: string; readonly z: number },
): number => {
  const otherHead = one.part !== place.part && one.part !== 'barrel' && place.part !== 'barrel';
  return Math.abs(one.z0 - place.z) + (otherHead ? 1e6 : 0);
};
