/** Lists of the set-up: gauges, how each girth is read, and what the pressure would push out. */
import type { ReactNode } from 'react';
import { useShallow } from 'zustand/react/shallow';
import { useBoard } from '../../state/board.ts';
import { changeWith } from '../../state/file/change.ts';
import { countOf, type DayList, girthsOf, withOneLess, withOneMore } from '../../state/file/day.ts';
import { valueAt, withValue, without } from '../../state/file/edit.ts';
import { words } from '../../words/say.ts';
import { FileField, OptionalField as Optional } from '../field/FileField.tsx';
import { Pick } from '../field/Pick.tsx';
import { TextField } from '../field/TextField.tsx';

export function Gauges() {
  return (
    <List list="day.gauges" title={words('dayGauges')} add={words('dayGaugeAdd')}>
      {(path) => (
        <>
          <TextField path={`${path}.name`} label={words('dayName')} />
          <FileField path={`${path}.range_bar`} label={words('dayRange')} />
          <FileField path={`${path}.resolution_bar`} label={words('dayStepRead')} />
          <Optional path={`${path}.noise_bar`} label={words('dayNoise')} />
          <Optional path={`${path}.error_percent`} label={words('dayError')} />
          <From path={path} />
        </>
      )}
    </List>
  );
}

const MEANS = [
  { value: 'draw-wire', words: words('byWire') },
  { value: 'laser', words: words('byLaser') },
  { value: 'taped scale and camera', words: words('byCamera') },
  { value: 'taped scale and telescope', words: words('byTelescope') },
  { value: 'tape', words: words('byTape') },
] as const;

export function Readings() {
  return (
    <List list="day.readings" title={words('dayGirths')} add={words('dayGirthAdd')}>
      {(path) => (
        <>
          <Girth path={path} />
          <Means path={path} />
          <From path={path} />
          <FileField path={`${path}.resolution_mm`} label={words('dayStepRead')} />
          <Optional path={`${path}.range_mm`} label={words('dayRange')} />
          <Optional path={`${path}.noise_mm`} label={words('dayNoise')} />
          <Optional path={`${path}.every_s`} label={words('dayEvery')} />
        </>
      )}
    </List>
  );
}

export function Plugs() {
  return (
    <List list="day.plugs" title={words('dayPlugs')} add={words('dayPlugAdd')}>
      {(path) => (
        <>
          <TextField path={`${path}.name`} label={words('dayName')} />
          <FileField path={`${path}.diameter_mm`} label={words('dayDiameter')} />
        </>
      )}
    </List>
  );
}

interface PathProps {
  readonly path: string;
}

function Girth({ path }: PathProps) {
  const girths = useBoard(useShallow((b) => girthsOf(b.draft)));
  const stated = useBoard((b) => valueAt(b.draft, `${path}.girth`));
  const own = typeof stated === 'string' ? stated : '';
  const names = girths.includes(own) ? girths : [...girths, own];
  return (
    <Pick
      label={words('dayGirth')}
      value={own}
      choices={names.map((name) => ({ value: name, words: name }))}
      onPick={(name) => changeWith((draft) => withValue(draft, `${path}.girth`, name))}
    />
  );
}

function Means({ path }: PathProps) {
  const by = useBoard((b) => valueAt(b.draft, `${path}.by`));
  return (
    <Pick
      label={words('dayBy')}
      value={MEANS.find(({ value }) => value === by)?.value ?? MEANS[0].value}
      choices={MEANS}
      onPick={(value) => changeWith((draft) => withValue(draft, `${path}.by`, value))}
    />
  );
}

const FROM = ['none', 'behind the wall', 'at the tank'] as const;

function From({ path }: PathProps) {
  const from = useBoard((b) => valueAt(b.draft, `${path}.from`));
  return (
    <Pick
      label={words('dayFrom')}
      value={FROM.find((one) => one === from) ?? 'none'}
      choices={[
        { value: 'none', words: words('notStated') },
        { value: 'behind the wall', words: words('fromWall') },
        { value: 'at the tank', words: words('fromTank') },
      ]}
      onPick={(value) =>
        changeWith((draft) =>
          value === 'none' ? without(draft, `${path}.from`) : withValue(draft, `${path}.from`, value),
        )
      }
    />
  );
}

interface ListProps {
  readonly list: DayList;
  readonly title: string;
  readonly add: string;
  readonly children: (path: string) => ReactNode;
}

function List({ list, title, add, children }: ListProps) {
  const count = useBoard((b) => countOf(b.draft, list));
  return (
    <fieldset className="part">
      <legend>{title}</legend>
      {Array.from({ length: count }, (_, i) => (
        <div key={i} className="one">
          {children(`${list}[${i}]`)}
          <button
            type="button"
            aria-label={words('takeNamed', { title, number: i + 1 })}
            onClick={() => changeWith((draft) => withOneLess(draft, list, i))}
          >
            {words('take')}
          </button>
        </div>
      ))}
      <button type="button" onClick={() => changeWith((draft) => withOneMore(draft, list))}>
        {add}
      </button>
    </fieldset>
  );
}
