/** Figures with their units, the unit set lighter. */
import { type Figure, figure, type Quantity, signedFigure } from '@hoopwright/report/figure';
import { useManner } from '../../state/manner.ts';
import { words } from '../../words/say.ts';

export function Value({
  quantity,
  value,
}: {
  readonly quantity: Quantity;
  readonly value: number | undefined;
}) {
  const manner = useManner();
  return value === undefined ? (
    <>{words('blockNothing')}</>
  ) : (
    <Written figure={figure(manner, quantity, value)} />
  );
}

/** With its sign: a change. */
export function Change({
  quantity,
  value,
}: {
  readonly quantity: Quantity;
  readonly value: number | undefined;
}) {
  const manner = useManner();
  return value === undefined ? null : <Written figure={signedFigure(manner, quantity, value)} />;
}

const Written = ({ figure: { text, unit } }: { readonly figure: Figure }) => (
  <span className="figure-text">
    {text}
    {unit === '' ? null : <span className="unit">{unit === '°' ? unit : ` ${unit}`}</span>}
  </span>
);
