/** What happened without this person's doing: said once, until it is understood. */
import { useBoard } from '../../state/board.ts';
import { settle } from '../../state/server/keep.ts';
import { words } from '../../words/say.ts';

export function Told() {
  const told = useBoard((b) => b.told);
  const newer = useBoard((b) => b.newer);
  if (newer !== undefined)
    return (
      <div className="told" role="alert">
        <p className="large">{words('newerTitle')}</p>
        <p>{words('newerBody', { number: newer.version.number })}</p>
        <p>
          <button type="button" onClick={() => void settle('theirs')}>
            {words('newerTheirs', { number: newer.version.number })}
          </button>
          <button type="button" onClick={() => void settle('mine')}>
            {words('newerMine')}
          </button>
        </p>
      </div>
    );
  if (told === undefined) return null;
  return (
    <div className="told" role="status">
      <span>{told}</span>
      <button type="button" onClick={() => useBoard.setState({ told: undefined })}>
        {words('dismiss')}
      </button>
    </div>
  );
}
