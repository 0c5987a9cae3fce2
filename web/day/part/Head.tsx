/** The head of the record, to be copied to the log sheet: at the start, at each hold, at the end. */
import type { HeadShown } from '@hoopwright/wire/day';
import { create } from 'zustand';
import { say } from '../../words/day/say.ts';
import { useDay } from '../state/live.ts';

const KEY = 'hoopwright heads copied';

const useCopied = create<{ readonly copied: readonly string[] }>(() => ({ copied: remembered() }));

function remembered(): readonly string[] {
  const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
  return Array.isArray(kept) ? kept.filter((one): one is string => typeof one === 'string') : [];
}

function copied(groups: string): void {
  const now = [...useCopied.getState().copied, groups];
  localStorage.setItem(KEY, JSON.stringify(now));
  useCopied.setState({ copied: now });
}

const WHERE = { start: 'headStart', hold: 'headHold', end: 'headEnd' } as const;

/** The newest head, until somebody says that it stands on the sheet. */
export function HeadToCopy() {
  const head = useDay((d) => d.state?.heads.at(-1));
  const replay = useDay((d) => d.replay);
  const done = useCopied((c) => c.copied);
  if (head === undefined || replay || done.includes(head.groups)) return null;
  return (
    <section className="head-to-copy" aria-label={say('headTitle', { seq: head.seq })}>
      <span>
        {say(WHERE[head.at])}. {say('headCopy')}
      </span>
      <code>{head.groups}</code>
      <button type="button" className="key" data-act="copied" onClick={() => copied(head.groups)}>
        {say('headCopied')}
      </button>
    </section>
  );
}

/** All that were shown: a viewer's screen keeps them too. */
export function Heads() {
  const heads = useDay((d) => d.state?.heads);
  const head = useDay((d) => d.state?.head);
  const seq = useDay((d) => d.state?.seq);
  return (
    <dl className="lines heads">
      {(heads ?? []).map((one) => (
        <OneHead key={one.seq} head={one} />
      ))}
      <dt>
        {say('headNow')}, {seq}
      </dt>
      <dd>
        <code>{head}</code>
      </dd>
    </dl>
  );
}

const OneHead = ({ head: { at, seq, groups } }: { readonly head: HeadShown }) => (
  <>
    <dt>
      {say(WHERE[at])}, {seq}
    </dt>
    <dd>
      <code>{groups}</code>
    </dd>
  </>
);
