/** A range as it is read: the middle, and from where to where nine of ten lie. */
import { figure, type Quantity, say } from '@hoopwright/report/figure';
import type { SpanFile } from '@hoopwright/wire/forecast';
import { useManner } from '../../state/manner.ts';
import { words } from '../../words/say.ts';

export interface SpanProps {
  readonly quantity: Quantity;
  readonly span: SpanFile;
  /** Inside value of one of the unit of the span. */
  readonly one: number;
}

/** "1.89 to 4.52 %". */
export function NineOfTen({ quantity, span, one }: SpanProps) {
  const manner = useManner();
  const [low, high] = span.nineOfTen;
  if (low === null) return <>{words('bound')}</>;
  const from = figure(manner, quantity, low * one);
  if (high === null) return <>{words('spanOpen', { low: say(manner, quantity, low * one) })}</>;
  return (
    <span className="figure-text">
      {words('spanOf', { low: from.text, high: figure(manner, quantity, high * one).text })}
      <span className="unit"> {from.unit}</span>
    </span>
  );
}
