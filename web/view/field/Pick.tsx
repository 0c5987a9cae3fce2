/** One of a closed list, in a field. */

export interface PickProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly onPick: (value: T) => void;
}

export function Pick<T extends string>({ label, value, choices, onPick }: PickProps<T>) {
  return (
    <label className="field">
      <span>{label}</span>
      <span className="entry">
        <select
          value={value}
          onChange={(event) => {
            const chosen = choices.find((one) => one.value === event.target.value);
            if (chosen !== undefined) onPick(chosen.value);
          }}
        >
          {choices.map((one) => (
            <option key={one.value} value={one.value}>
              {one.words}
            </option>
          ))}
        </select>
      </span>
    </label>
  );
}
