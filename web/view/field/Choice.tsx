/** One of a few words, all of them in sight; the chosen one is underlined. */
import { useId } from 'react';

export interface ChoiceProps<T extends string | number> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly onChoice: (value: T) => void;
}

export function Choice<T extends string | number>({ label, value, choices, onChoice }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend>{label}</legend>
      {choices.map((choice) => (
        <label key={choice.value} className={choice.value === value ? 'chosen' : ''}>
          <input
            type="radio"
            name={name}
            checked={choice.value === value}
            onChange={() => onChoice(choice.value)}
          />
          {choice.words}
        </label>
      ))}
    </fieldset>
  );
}
