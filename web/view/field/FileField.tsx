/** A field for one number of the tank file. */
import type { Quantity } from '@hoopwright/report/figure';
import { beginEdit, endEdit } from '../../state/file/base.ts';
import { useBoard } from '../../state/board.ts';
import { changeFigure, removeFigure, reportFault } from '../../state/file/change.ts';
import { valueAt } from '../../state/file/edit.ts';
import { tidy, fileUnit } from '../../state/file/unit.ts';
import { quantityOf } from '../../state/file/quantityOf.ts';
import { figureOf } from '../../state/file/figureOf.ts';
import type { TermName } from '../../words/glossary.ts';
import { issueSentence } from '../../words/issue.ts';
import { words } from '../../words/say.ts';
import { NumberField } from './NumberField.tsx';

export interface FileFieldProps {
  readonly path: string;
  /** Absent: read off the key. */
  readonly quantity?: Quantity;
  readonly label: string;
  readonly term?: TermName;
  /** What is taken where the file is silent, as text; absent: the number must be there. */
  readonly otherwise?: string;
  readonly onDone?: () => void;
  readonly grabsFocus?: boolean;
}

export function FileField({ path, quantity, label, term, otherwise, onDone, grabsFocus }: FileFieldProps) {
  const stated = useBoard((b) => valueAt(b.draft, path));
  const computed = useBoard((b) => (b.drawn === undefined ? undefined : figureOf(b.drawn, path)));
  const issue = useBoard((b) => b.issues.find((one) => one.path === path));
  const own = typeof stated === 'number' ? stated : undefined;
  const taken =
    otherwise === undefined && computed !== undefined ? tidy(computed / fileUnit(path)) : undefined;
  return (
    <NumberField
      label={label}
      {...(term === undefined ? {} : { term })}
      kind={{ path, quantity: quantity ?? quantityOf(path) }}
      value={own ?? taken}
      against={issue === undefined ? undefined : issueSentence(issue)}
      {...(otherwise === undefined ? {} : { otherwise })}
      onValue={(value) => (value === undefined ? removeFigure(path) : changeFigure(path, value))}
      onFault={(sentence) => reportFault(path, sentence)}
      onBegin={() => beginEdit(path, useBoard.getState().draft)}
      onDone={() => {
        endEdit();
        onDone?.();
      }}
      {...(grabsFocus === true ? { grabsFocus } : {})}
    />
  );
}

/** A number that need not be stated. */
export const OptionalField = ({ path, label }: Pick<FileFieldProps, 'path' | 'label'>) => (
  <FileField path={path} label={label} otherwise={words('notStated')} />
);
