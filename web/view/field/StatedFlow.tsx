/** A flow curve that the file states itself: its numbers, and the way to let the evidence speak. */
import { useBoard } from '../../state/board.ts';
import { changeDraft } from '../../state/file/change.ts';
import { isRecord, valueAt, withValue } from '../../state/file/edit.ts';
import { hasEvidence } from '../../state/server/steel.ts';
import { words } from '../../words/say.ts';
import { FileField } from './FileField.tsx';

export function StatedFlow() {
  const flow = useBoard((b) => valueAt(b.draft, 'steel.flow'));
  const evidence = useBoard((b) => hasEvidence(b.draft));
  if (!isRecord(flow)) return null;
  const { law, ...rest } = flow;
  const numbers = Object.entries(rest).flatMap(([key, value]) => (typeof value === 'number' ? [key] : []));
  return (
    <section aria-label={words('flowTitle')} className="stated-flow">
      <h2>{words('flowTitle')}</h2>
      <p>{words('flowLaw', { law: typeof law === 'string' ? law : '' })}</p>
      {numbers.map((key) => (
        <FileField
          key={key}
          path={`steel.flow.${key}`}
          label={key.replace(/_MPa$/, '')}
          {...(key.endsWith('_MPa') ? { quantity: 'stress' as const } : {})}
        />
      ))}
      {evidence ? (
        <button
          type="button"
          onClick={() => changeDraft(withValue(useBoard.getState().draft, 'steel.flow', undefined))}
        >
          {words('flowRemove')}
        </button>
      ) : (
        <p className="quiet">{words('flowAlone')}</p>
      )}
    </section>
  );
}
