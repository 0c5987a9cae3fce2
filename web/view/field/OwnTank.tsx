/** A tank of one's own from four numbers. */
import { type FormEvent, useId, useState } from 'react';
import { drawOwn } from '../../state/server/projects.ts';
import { words } from '../../words/say.ts';
import { NumberField } from './NumberField.tsx';

const FIELDS = [
  { key: 'insideDiameter', label: 'ownDiameter', path: 'barrel.insideDiameter_mm', quantity: 'length' },
  { key: 'length', label: 'ownLength', path: 'barrel.length_mm', quantity: 'length' },
  { key: 'wall', label: 'ownWall', path: 'barrel.wall_mm', quantity: 'wall' },
  { key: 'workingPressure', label: 'ownPressure', path: 'duty.workingPressure_bar', quantity: 'pressure' },
] as const;

type Numbers = Partial<Readonly<Record<(typeof FIELDS)[number]['key'], number>>>;

export function OwnTank() {
  const id = useId();
  const [name, setName] = useState('');
  const [numbers, setNumbers] = useState<Numbers>({});
  const [fault, setFault] = useState<string>();
  const put = (key: keyof Numbers, value: number | undefined): void =>
    setNumbers(({ [key]: _before, ...others }) =>
      value === undefined ? others : { ...others, [key]: value },
    );
  const draw = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const { insideDiameter, length, wall, workingPressure } = numbers;
    const whole =
      insideDiameter !== undefined &&
      length !== undefined &&
      wall !== undefined &&
      workingPressure !== undefined;
    if (!whole || name.trim() === '') {
      setFault(words('ownMissing'));
      return;
    }
    setFault(await drawOwn({ name: name.trim(), insideDiameter, length, wall, workingPressure }));
  };
  return (
    <form className="own" aria-label={words('ownTitle')} onSubmit={(event) => void draw(event)}>
      <h2>{words('ownTitle')}</h2>
      <div className="field">
        <label htmlFor={id}>{words('ownName')}</label>
        <span className="entry">
          <input
            id={id}
            className="words"
            maxLength={120}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        </span>
      </div>
      {FIELDS.map(({ key, label, path, quantity }) => (
        <NumberField
          key={key}
          label={words(label)}
          kind={{ path, quantity }}
          value={numbers[key]}
          onValue={(value) => put(key, value)}
          // What cannot be read is no number: the one that stood there before must not be drawn in its place.
          onFault={(sentence) => {
            if (sentence !== undefined) put(key, undefined);
          }}
        />
      ))}
      <button type="submit">{words('ownDraw')}</button>
      {fault === undefined ? null : (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      <p className="quiet">{words('ownUsual')}</p>
    </form>
  );
}
