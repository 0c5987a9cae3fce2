/** One number, large, with its unit and its age. Too old: struck out, and its age stands in its place. */
import type { Figure } from '@hoopwright/report/figure';
import type { FigureNow } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import { ageText, shortAge } from '../said/figures.ts';
import { useNow } from '../state/clock.ts';
import { agedAt } from '../tells/aged.ts';
import { useDay } from '../state/live.ts';

export interface BigFigureProps {
  readonly label: string;
  readonly now: FigureNow | undefined;
  readonly figure: (value: number) => Figure;
  readonly name: string;
  /** `age`: the label names the channel already. */
  readonly says?: 'channel' | 'age';
}

export function BigFigure({ label, now, figure, name, says = 'channel' }: BigFigureProps) {
  const clock = useNow();
  const link = useDay((d) => d.link);
  if (now === undefined)
    return (
      <div className="big-figure" data-figure={name} data-old="never">
        <span className="label">{label}</span>
        <span className="number none">–</span>
        <span className="age">{say('notRead')}</span>
      </div>
    );
  const { text, unit } = figure(now.value);
  const { age_s, old } = agedAt(now, clock, link);
  const value = unit === '' ? text : `${text} ${unit}`;
  const short = shortAge(age_s);
  if (old)
    return (
      <div className="big-figure" data-figure={name} data-old="true">
        <span className="label">{label}</span>
        <span className="unseen">{say('struck', { what: label, age: ageText(age_s), value })}</span>
        <span className="number" aria-hidden="true">
          {short.text}
          <span className="unit">{say('oldUnit', { unit: short.unit })}</span>
        </span>
        <s className="was" aria-hidden="true">
          {value}
        </s>
      </div>
    );
  return (
    <div className="big-figure" data-figure={name} data-old="false">
      <span className="label">{label}</span>
      <span className="number">
        {text}
        <span className="unit">{unit}</span>
      </span>
      <span className="age">
        {says === 'age'
          ? say('ago', { age: ageText(age_s) })
          : say('agoBy', { age: ageText(age_s), channel: now.channel })}
      </span>
    </div>
  );
}
