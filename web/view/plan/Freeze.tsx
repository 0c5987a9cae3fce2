/** Freezing the plan on the sheet, and the plans that were frozen before. */
import { headGroups } from '@hoopwright/wire/record';
import type { Plan } from '@hoopwright/wire/plan';
import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useId, useState } from 'react';
import { useBoard } from '../../state/board.ts';
import { useManner } from '../../state/manner.ts';
import { addressOf, go } from '../../state/route.ts';
import { draftPapers } from '../../state/server/plan.ts';
import { type PlanListed, server, ServerRefusal } from '../../state/server/server.ts';
import { issueSentence } from '../../words/issue.ts';
import { words } from '../../words/say.ts';
import { Wide } from '../table/Wide.tsx';
import { paperQuery, Papers, SIZES } from './Papers.tsx';

interface FreezeProps {
  readonly project: string;
  readonly plans: readonly PlanListed[];
  /** Undefined: there is none, or it is out of date. */
  readonly plan: Plan | undefined;
}

export function Freeze({ project, plans, plan }: FreezeProps) {
  return (
    <section id="freeze" className="freeze" aria-label={words('freezeTitle')}>
      <div className="beside">
        <div>
          <h2>{words('freezeTitle')}</h2>
          <Form key={plans.length} project={project} plans={plans} ready={plan !== undefined} />
          {plan === undefined ? null : <DraftPapers project={project} />}
        </div>
        <div className="frozen-list">
          <h2>{words('frozenTitle')}</h2>
          {plans.length === 0 ? <p>{words('frozenNone')}</p> : <List project={project} plans={plans} />}
        </div>
      </div>
    </section>
  );
}

interface FormProps {
  readonly project: string;
  readonly plans: readonly PlanListed[];
  readonly ready: boolean;
}

function Form({ project, plans, ready }: FormProps) {
  const queries = useQueryClient();
  const saved = useBoard((b) => b.saving === 'saved' && b.newer === undefined);
  const version = useBoard((b) => b.version);
  const [name, setName] = useState(plans[0]?.name ?? '');
  const [revision, setRevision] = useState(nextRevision(plans[0]?.revision));
  const [date, setDate] = useState(today());
  const [told, setTold] = useState<string>();
  const [working, setWorking] = useState(false);
  const freeze = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const seal = { name: name.trim(), revision: revision.trim(), date: date.trim() };
    if (seal.name === '' || seal.revision === '' || seal.date === '') {
      setTold(words('freezeMissing'));
      return;
    }
    setWorking(true);
    setTold(undefined);
    try {
      await server.freeze(project, version, seal);
      await queries.invalidateQueries({ queryKey: ['plans', project] });
    } catch (error) {
      setTold(
        error instanceof ServerRefusal ? error.issues.map(issueSentence).join(' ') : words('unreachable'),
      );
    } finally {
      setWorking(false);
    }
  };
  return (
    <form className="seal" onSubmit={(event) => void freeze(event)}>
      <Entry label={words('freezeName')} value={name} onValue={setName} most={120} />
      <Entry label={words('freezeRevision')} value={revision} onValue={setRevision} most={12} />
      <Entry label={words('freezeDay')} value={date} onValue={setDate} most={10} />
      <button type="submit" disabled={!ready || !saved || working}>
        {words(working ? 'freezeWorking' : 'freeze')}
      </button>
      {ready && saved ? null : <p className="quiet">{words('freezeWaits')}</p>}
      {told === undefined ? null : (
        <p className="fault" role="alert">
          {told}
        </p>
      )}
    </form>
  );
}

interface EntryProps {
  readonly label: string;
  readonly value: string;
  readonly most: number;
  readonly onValue: (value: string) => void;
}

function Entry({ label, value, most, onValue }: EntryProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          className="words"
          maxLength={most}
          value={value}
          onChange={(event) => onValue(event.target.value)}
        />
      </span>
    </div>
  );
}

/** A, B, ... Z as teams count; after anything else the person says. */
const nextRevision = (last: string | undefined): string => {
  if (last === undefined) return 'A';
  return /^[A-Y]$/.test(last) ? String.fromCharCode(last.charCodeAt(0) + 1) : '';
};

/** ISO 8601, in the time of this laptop. */
const today = (): string => {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const STATES = {
  'tank changed': 'frozenTank',
  'evidence changed': 'frozenEvidence',
  'program changed': 'frozenProgram',
} as const;

function List({ project, plans }: Pick<FormProps, 'project' | 'plans'>) {
  return (
    <Wide label={words('frozenTitle')}>
      <table className="figures projects">
        <caption className="unseen">{words('frozenTitle')}</caption>
        <thead>
          <tr>
            <th scope="col">{words('freezeRevision')}</th>
            <th scope="col">{words('dayName')}</th>
            <th scope="col">{words('freezeDay')}</th>
            <th scope="col">{words('frozenDigest')}</th>
            <th scope="col">{words('frozenState')}</th>
            <th scope="col" />
          </tr>
        </thead>
        <tbody>
          {plans.map((one) => (
            <tr key={one.digest} data-revision={one.revision} className={one.outdated ? 'old' : ''}>
              <th scope="row">
                <a
                  href={addressOf({ sheet: 'plan', project, plan: one.digest })}
                  aria-label={words('frozenOpenNamed', { revision: one.revision })}
                  onClick={(event) => {
                    if (event.metaKey || event.ctrlKey || event.shiftKey) return;
                    event.preventDefault();
                    go({ sheet: 'plan', project, plan: one.digest });
                  }}
                >
                  {one.revision}
                </a>
              </th>
              <td>{one.name}</td>
              <td>{one.date}</td>
              <td className="digest" title={headGroups(one.digest)}>
                {headGroups(one.digest).slice(0, 9)}
              </td>
              <td className="change-cell">
                {words(one.outdated === undefined ? 'frozenCurrent' : STATES[one.outdated])}
              </td>
              <td>
                <Papers project={project} line={one} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

/** The papers of the draft say on every sheet that they are one. */
function DraftPapers({ project }: { readonly project: string }) {
  const manner = useManner();
  const [told, setTold] = useState<string>();
  const fetchPapers = async (size: (typeof SIZES)[number]): Promise<void> => {
    setTold(words('papersWorking'));
    try {
      const draft = useBoard.getState().draft;
      save(await draftPapers(project, draft, paperQuery(size, manner)), `draft-${size}.pdf`);
      setTold(undefined);
    } catch (error) {
      setTold(words('papersFailed', { reason: error instanceof Error ? error.message : '' }));
    }
  };
  return (
    <p>
      {words('draftPapers')}{' '}
      {SIZES.map((size) => (
        <button key={size} type="button" onClick={() => void fetchPapers(size)}>
          {size}
        </button>
      ))}
      <span role="status">{told}</span>
    </p>
  );
}

function save(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
