/** Which sheets to compare: thicknesses parted by spaces or semicolons, decimal point or comma. */
import { scaleOf } from '@hoopwright/report/figure';
import { useId, useState } from 'react';
import { compareWalls, useCompared } from '../../state/server/compare.ts';
import { useManner } from '../../state/manner.ts';
import { readTyped } from '../../state/file/number.ts';
import { statedText } from '../../state/file/stated.ts';
import { tidy } from '../../state/file/unit.ts';
import { words } from '../../words/say.ts';

const WALL = { path: 'barrel.wall_mm', quantity: 'wall' } as const;

export function WallsField() {
  const manner = useManner();
  const id = useId();
  const walls = useCompared((c) => c.walls);
  const [typed, setTyped] = useState<string>();
  const { one, unit } = scaleOf(manner.units, 'wall');
  const shown = typed ?? walls.map((wall) => statedText(manner, WALL, wall)).join('  ');
  const read = typed === undefined ? walls : readWalls(typed, one);
  const take = (): void => {
    if (read === undefined || typed === undefined) return;
    compareWalls(read);
    setTyped(undefined);
  };
  return (
    <div className={`field wide-field${read === undefined ? ' faulty' : ''}`}>
      <label htmlFor={id}>{words(unit === 'in' ? 'compareWallsIn' : 'compareWalls')}</label>
      <span className="entry">
        <input
          id={id}
          value={shown}
          aria-invalid={read === undefined}
          aria-describedby={`${id}-says`}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') take();
            if (event.key === 'Escape') setTyped(undefined);
          }}
          onBlur={take}
        />
      </span>
      <span className="says" id={`${id}-says`} aria-live="polite">
        {read === undefined ? (
          <span className="fault">
            {words('compareWallsFault', {
              example: [1.5, 2, 2.5].map((x) => statedText(manner, WALL, x * one)).join(' '),
            })}
          </span>
        ) : null}
      </span>
    </div>
  );
}

/** Thicknesses in mm, rising, each once; undefined where something is no thickness. Nobody writes thousands here. */
function readWalls(text: string, one: number): readonly number[] | undefined {
  const parts = text.split(/[;\s]+/).filter((part) => part !== '');
  const walls = parts.map((part) => {
    const typed = readTyped(part);
    const value = typed.kind === 'number' ? typed.value : typed.kind === 'asked' ? typed.fraction : NaN;
    return typed.kind !== 'fault' && typed.rest === '' && value > 0 ? tidy(value * one) : NaN;
  });
  if (walls.length === 0 || walls.length > 12 || walls.some(Number.isNaN)) return undefined;
  return [...new Set(walls)].sort((a, b) => a - b);
}
