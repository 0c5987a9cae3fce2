/** Limits that the team sets: only with a name and a reason, and never in silence. */
import type { LimitKey, Plan } from '@hoopwright/wire/plan';
import { useState } from 'react';
import { useShallow } from 'zustand/react/shallow';
import { useBoard } from '../../state/board.ts';
import { changeWith } from '../../state/file/change.ts';
import { isRecord, valueAt, withValue, without } from '../../state/file/edit.ts';
import { quantityOf } from '../../state/file/quantityOf.ts';
import { statedText, unitOf } from '../../state/file/stated.ts';
import { useManner } from '../../state/manner.ts';
import { words } from '../../words/say.ts';
import { NumberField } from '../field/NumberField.tsx';
import { Pick } from '../field/Pick.tsx';

const LIMITS = {
  trappedAir_L: 'limitAir',
  leak_mL_per_min: 'limitLeak',
  growthLeft_percent: 'limitLeft',
  girthsApart_percent: 'limitApart',
  gaugesApart_bar: 'limitGauges',
  slopeShare: 'limitSlope',
  seamStrain_percent: 'limitSeam',
  growthWithoutPressure_percent: 'limitWithout',
  marginToMaximum: 'limitMargin',
} as const satisfies Partial<Record<LimitKey, string>>;

type SetLimit = keyof typeof LIMITS;
const KEYS = [
  'trappedAir_L',
  'leak_mL_per_min',
  'growthLeft_percent',
  'girthsApart_percent',
  'gaugesApart_bar',
  'slopeShare',
  'seamStrain_percent',
  'growthWithoutPressure_percent',
  'marginToMaximum',
] as const satisfies readonly SetLimit[];

export function Limits({ plan }: { readonly plan: Plan | undefined }) {
  const set = useBoard(
    useShallow((b) => KEYS.filter((key) => isRecord(valueAt(b.draft, `day.limits.${key}`)))),
  );
  return (
    <fieldset className="part limits">
      <legend>{words('dayLimits')}</legend>
      {set.map((key) => (
        <SetOne key={key} limit={key} />
      ))}
      <NewLimit plan={plan} />
    </fieldset>
  );
}

function SetOne({ limit }: { readonly limit: SetLimit }) {
  const path = `day.limits.${limit}`;
  const stated = useBoard((b) => valueAt(b.draft, path));
  const manner = useManner();
  if (!isRecord(stated)) return null;
  const { value, by, why } = stated;
  const kind = { path: `${path}.value`, quantity: quantityOf(`${path}.value`) };
  const figure = typeof value === 'number' ? statedText(manner, kind, value) : '';
  return (
    <p>
      {words('limitLine', {
        limit: words(LIMITS[limit]),
        value: `${figure} ${unitOf(manner, kind).unit}`.trim(),
        by: typeof by === 'string' ? by : '',
        why: typeof why === 'string' ? why : '',
      })}{' '}
      <button type="button" onClick={() => changeWith((draft) => without(draft, path))}>
        {words('limitUsual')}
      </button>
    </p>
  );
}

/** Written into the file once value, name and reason are all there. */
function NewLimit({ plan }: { readonly plan: Plan | undefined }) {
  const manner = useManner();
  const [limit, setLimit] = useState<SetLimit>('trappedAir_L');
  const [value, setValue] = useState<number>();
  const [by, setBy] = useState('');
  const [why, setWhy] = useState('');
  const [told, setTold] = useState<string>();
  const path = `day.limits.${limit}.value`;
  const usual = plan?.limits.find((one) => one.limit === limit)?.usual;
  const kind = { path, quantity: quantityOf(path) };
  const usualText =
    usual === undefined ? words('notStated') : statedText(manner, kind, Number(usual.toPrecision(3)));
  const keep = (): void => {
    if (value === undefined || by.trim() === '' || why.trim() === '') {
      setTold(words('limitIncomplete'));
      return;
    }
    const record = { value, by: by.trim(), why: why.trim() };
    changeWith((draft) => withValue(draft, `day.limits.${limit}`, record));
    setValue(undefined);
    setWhy('');
    setTold(undefined);
  };
  return (
    <>
      <Pick
        label={words('limitWhich')}
        value={limit}
        choices={KEYS.map((key) => ({ value: key, words: words(LIMITS[key]) }))}
        onPick={(chosen) => {
          setLimit(chosen);
          setValue(undefined);
        }}
      />
      <NumberField
        key={limit}
        label={words('limitValue')}
        kind={kind}
        value={value}
        otherwise={usualText}
        onValue={setValue}
      />
      <Words label={words('limitBy')} value={by} onValue={setBy} />
      <Words label={words('limitWhy')} value={why} onValue={setWhy} />
      <button type="button" onClick={keep}>
        {words('limitSet')}
      </button>
      {told === undefined ? null : (
        <p className="fault" role="alert">
          {told}
        </p>
      )}
    </>
  );
}

interface WordsProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
}

function Words({ label, value, onValue }: WordsProps) {
  return (
    <label className="field">
      <span>{label}</span>
      <span className="entry">
        <input className="words" value={value} onChange={(event) => onValue(event.target.value)} />
      </span>
    </label>
  );
}
