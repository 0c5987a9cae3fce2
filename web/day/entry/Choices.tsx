/** One of a few, all of them in sight. */

interface ChoicesProps<K extends string> {
  readonly legend: string;
  readonly chosen: K;
  readonly options: readonly (readonly [K, string])[];
  readonly onChoose: (one: K) => void;
}

export function Choices<K extends string>({ legend, chosen, options, onChoose }: ChoicesProps<K>) {
  return (
    <fieldset className="choices">
      <legend>{legend}</legend>
      {options.map(([key, text]) => (
        <label key={key} className={key === chosen ? 'chosen' : ''}>
          <input type="radio" name={legend} checked={key === chosen} onChange={() => onChoose(key)} />
          {text}
        </label>
      ))}
    </fieldset>
  );
}
