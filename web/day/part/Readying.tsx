/** How far the making ready to foresee is, while it goes on; that there will be none, where it failed. */
import { say } from '../../words/day/say.ts';
import { useDay } from '../state/live.ts';

export function Readying() {
  const readying = useDay((d) => d.state?.readying);
  if (readying === undefined || (readying.percent >= 100 && readying.failed !== true)) return null;
  const { percent, says, failed } = readying;
  return (
    <span className="readying" data-readying={failed === true ? 'failed' : percent} title={says}>
      {failed === true ? (
        <b>{say('readyingFailed')}</b>
      ) : (
        <>
          {say('readying', { percent: String(percent) })}{' '}
          <progress max={100} value={percent} aria-label={says} />
        </>
      )}
    </span>
  );
}
