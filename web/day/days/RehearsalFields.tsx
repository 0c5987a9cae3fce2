/** What a rehearsal needs besides: what is hidden, how fast, what goes wrong, and who reads. */
import type { Begin } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import { Choices } from '../entry/Choices.tsx';

type Rehearsal = NonNullable<Begin['rehearsal']>;

export interface RehearsalTyped {
  readonly seed: string;
  readonly speed: string;
  readonly faults: string;
  readonly readings: Rehearsal['readings'];
  readonly tank: NonNullable<Rehearsal['tank']>;
}

export const USUAL_REHEARSAL: RehearsalTyped = {
  seed: '1',
  speed: '10',
  faults: '',
  readings: 'by hand',
  tank: 'as welded',
};

const FASTEST = 200;

/** What was typed as the order it makes; a sentence where it cannot be taken. */
export function rehearsalOf({ seed, speed, faults, readings, tank }: RehearsalTyped): Rehearsal | string {
  const hidden = wholeIn(seed, 0, Number.MAX_SAFE_INTEGER);
  const times = wholeIn(speed, 1, FASTEST);
  if (typeof hidden === 'string') return hidden;
  if (typeof times === 'string') return times;
  const lines = faults.split(/[\n,]/).map((line) => line.trim());
  return { seed: hidden, speed: times, faults: lines.filter((line) => line !== ''), readings, tank };
}

function wholeIn(typed: string, least: number, most: number): number | string {
  const value = Number(typed.trim());
  return /^\d+$/.test(typed.trim()) && value >= least && value <= most
    ? value
    : say('beginNoNumber', { typed, least, most });
}

interface RehearsalFieldsProps {
  readonly typed: RehearsalTyped;
  readonly onTyped: (typed: RehearsalTyped) => void;
}

export function RehearsalFields({ typed, onTyped }: RehearsalFieldsProps) {
  return (
    <div className="rehearsal-fields">
      <label className="line-field">
        <span>{say('beginSeed')}</span>
        <input
          type="text"
          inputMode="numeric"
          value={typed.seed}
          onChange={(event) => onTyped({ ...typed, seed: event.target.value })}
        />
      </label>
      <label className="line-field">
        <span>{say('beginSpeed')}</span>
        <input
          type="text"
          inputMode="numeric"
          value={typed.speed}
          onChange={(event) => onTyped({ ...typed, speed: event.target.value })}
        />
      </label>
      <label className="line-field">
        <span>{say('beginFaults')}</span>
        <textarea
          rows={2}
          value={typed.faults}
          onChange={(event) => onTyped({ ...typed, faults: event.target.value })}
        />
        <span className="quiet">{say('beginFaultsHow')}</span>
      </label>
      <Choices
        legend={say('beginReadings')}
        chosen={typed.readings}
        options={[
          ['by hand', say('beginByHand')],
          ['by wires', say('beginByWires')],
        ]}
        onChoose={(readings) => onTyped({ ...typed, readings })}
      />
      <Choices
        legend={say('beginTank')}
        chosen={typed.tank}
        options={[
          ['as welded', say('beginAsWelded')],
          ['as left', say('beginAsLeft')],
        ]}
        onChoose={(tank) => onTyped({ ...typed, tank })}
      />
    </div>
  );
}
