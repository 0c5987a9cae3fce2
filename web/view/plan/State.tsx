/** What the plan is, in words set large, and what keeps people alive under it. */
import { figuresFor, type PlanSheet, refusalText } from '@hoopwright/report/plan';
import type { FrozenPlan } from '@hoopwright/wire/plan';
import { useBoard } from '../../state/board.ts';
import { useManner } from '../../state/manner.ts';
import { go } from '../../state/route.ts';
import { askAgain, type Planned, stopPlan, usePlan } from '../../state/server/plan.ts';
import { nameOf } from '../../words/names.ts';
import { issueSentence } from '../../words/issue.ts';
import { words } from '../../words/say.ts';
import { Contents } from './Contents.tsx';
import { Papers } from './Papers.tsx';

interface DraftStateProps {
  readonly answer: Planned | undefined;
  readonly sheet: PlanSheet | undefined;
  readonly current: boolean;
}

export function DraftState({ answer, sheet, current }: DraftStateProps) {
  const { state } = usePlan();
  return (
    <div className={`state${sheet !== undefined && !current ? ' outdated' : ''}`}>
      {sheet === undefined ? null : <Headline sheet={sheet} why={words(current ? 'planDraft' : 'planOld')} />}
      {answer?.kind === 'refused' ? <Refused reasons={answer.reasons} current={current} /> : null}
      <Contents sheet={sheet}>
        <a href="#freeze">{words('freezeTitle')}</a>
        <a href="#day">{words('daySetUp')}</a>
      </Contents>
      <Making alone={answer === undefined} />
      <Faults />
      {sheet === undefined || (!current && state === 'working') ? null : <Cautions sheet={sheet} />}
    </div>
  );
}

interface FrozenStateProps {
  readonly project: string;
  readonly frozen: FrozenPlan['frozen'];
  readonly sheet: PlanSheet;
}

export function FrozenState({ project, frozen, sheet }: FrozenStateProps) {
  return (
    <div className={`state${sheet.outOfDate === undefined ? '' : ' outdated'}`}>
      <Headline sheet={sheet} why={sheet.outOfDate === undefined ? '' : `${sheet.outOfDate}.`} />
      <p className="strong">{sheet.revision}</p>
      <p className="digest">{sheet.digest}</p>
      <p>
        <button type="button" onClick={() => go({ sheet: 'plan', project })}>
          {words('frozenBack')}
        </button>
        <Papers project={project} line={frozen} />
      </p>
      <Contents sheet={sheet} />
      <Cautions sheet={sheet} />
    </div>
  );
}

function Headline({ sheet, why }: { readonly sheet: PlanSheet; readonly why: string }) {
  const held = sheet.steps.filter(({ hold }) => hold !== '').at(-1);
  return (
    <>
      <p className="large">
        {words('planIs', {
          pressure: `${held?.pressure ?? ''} ${sheet.units.pressure}`,
          hold: held?.hold ?? '',
        })}
      </p>
      <p>
        {why} {sheet.forecast}
      </p>
    </>
  );
}

interface RefusedProps {
  readonly reasons: Extract<Planned, { kind: 'refused' }>['reasons'];
  readonly current: boolean;
}

function Refused({ reasons, current }: RefusedProps) {
  const figures = figuresFor(useManner());
  return (
    <div className={current ? 'refused' : 'refused outdated'} role="alert">
      <p className="large">{words('planNone')}</p>
      <ul>
        {reasons.map((reason) => {
          const text = refusalText(reason, figures);
          return <li key={text}>{text}</li>;
        })}
      </ul>
    </div>
  );
}

/** How far it is, and the way to stop it or to ask again. */
function Making({ alone }: { readonly alone: boolean }) {
  const { state, done } = usePlan();
  if (state === 'idle') return alone ? <p className="large">{words('planWorking')}</p> : null;
  const again = (): void => void askAgain();
  if (state === 'working')
    return (
      <div role="status" className="making">
        <p className={alone ? 'large' : 'strong'}>
          {words('planWorkingAt', { share: `${Math.round(100 * done)} %` })}
        </p>
        <progress value={done} max={1} aria-label={words('planWorking')} />
        <p>
          {words('planWorkingWhy')}{' '}
          <button type="button" onClick={stopPlan}>
            {words('planStop')}
          </button>
        </p>
      </div>
    );
  return (
    <div role="status" className="making">
      <p className="large">{words(state === 'stopped' ? 'planStopped' : 'planFailed')}</p>
      <p>
        {state === 'stopped' ? words('planStoppedWhy') : ''}{' '}
        <button type="button" onClick={again}>
          {words('planMake')}
        </button>
      </p>
    </div>
  );
}

function Faults() {
  const issues = useBoard((b) => b.issues);
  const faults = useBoard((b) => b.faults);
  if (issues.length === 0 && Object.keys(faults).length === 0) return null;
  return (
    <div className="issues" role="alert">
      <p className="strong">{words('mend')}</p>
      <ul>
        {Object.entries(faults).map(([path, sentence]) => (
          <li key={path}>
            <strong>{nameOf(path)}</strong> {sentence}
          </li>
        ))}
        {issues.map((issue) => (
          <li key={issue.path + issue.expected}>
            <strong>{nameOf(issue.path)}</strong> {issueSentence(issue)}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Cautions({ sheet }: { readonly sheet: PlanSheet }) {
  return (
    <ul className="cautions" data-part="card">
      {sheet.card.cautions.map(({ id, text }) => (
        <li key={id} data-caution={id}>
          {text}
        </li>
      ))}
    </ul>
  );
}
