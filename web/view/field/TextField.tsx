/** A line of text of the tank file: a name, a heat, a plate. */
import { useId, useState } from 'react';
import { useBoard } from '../../state/board.ts';
import { changeDraft } from '../../state/file/change.ts';
import { valueAt, withValue } from '../../state/file/edit.ts';
import { issueSentence } from '../../words/issue.ts';

export interface TextFieldProps {
  readonly path: string;
  readonly label: string;
}

export function TextField({ path, label }: TextFieldProps) {
  const id = useId();
  const stated = useBoard((b) => valueAt(b.draft, path));
  const issue = useBoard((b) => b.issues.find((one) => one.path === path));
  const [typed, setTyped] = useState<string>();
  const keep = (): void => {
    if (typed === undefined) return;
    const text = typed.trim();
    if (text !== (stated ?? ''))
      changeDraft(withValue(useBoard.getState().draft, path, text === '' ? undefined : text));
    setTyped(undefined);
  };
  return (
    <div className={`field${issue === undefined ? '' : ' faulty'}`}>
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          className="words"
          aria-invalid={issue !== undefined}
          aria-describedby={`${id}-says`}
          value={typed ?? (typeof stated === 'string' ? stated : '')}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === 'Enter') keep();
            if (event.key === 'Escape') setTyped(undefined);
          }}
        />
      </span>
      <span className="says" id={`${id}-says`} aria-live="polite">
        {issue === undefined ? null : <span className="fault">{issueSentence(issue)}</span>}
      </span>
    </div>
  );
}
