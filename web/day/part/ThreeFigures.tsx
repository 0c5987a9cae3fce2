/** The three numbers: pressure, growth of the girth that matters, litres. */
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { growthFigure, litresFigure, pressureFigure } from '../said/figures.ts';
import { useDay } from '../state/live.ts';
import { BigFigure } from './BigFigure.tsx';

export function ThreeFigures() {
  const figures = useDay((d) => d.state?.figures);
  const manner = useManner();
  const growth = figures?.growth;
  return (
    <div className="three-figures">
      <BigFigure
        name="pressure"
        label={say('pressure')}
        now={figures?.pressure}
        figure={(value) => pressureFigure(manner, value)}
      />
      <BigFigure
        name="growth"
        label={growth === undefined ? say('growthBare') : say('growth', { girth: growth.girth })}
        now={growth}
        says="age"
        figure={(value) => growthFigure(manner, value)}
      />
      <BigFigure
        name="litres"
        label={say('litres')}
        now={figures?.litres}
        figure={(value) => litresFigure(manner, value)}
      />
    </div>
  );
}
