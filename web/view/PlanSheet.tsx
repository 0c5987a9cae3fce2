/** The sheet of the plan: what the day is, its steps, its set-up, its dangers; frozen plans, and their papers. */
import { planSheet as written, type PlanSheet as Written } from '@hoopwright/report/plan';
import type { FrozenPlan } from '@hoopwright/wire/plan';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useMemo } from 'react';
import { useBoard } from '../state/board.ts';
import { useManner } from '../state/manner.ts';
import { askPlan, planKey, usePlan } from '../state/server/plan.ts';
import { type PlanListed, server } from '../state/server/server.ts';
import { words } from '../words/say.ts';
import { DaySetUp } from './plan/DaySetUp.tsx';
import { Freeze } from './plan/Freeze.tsx';
import { Sections } from './plan/Sections.tsx';
import { DraftState, FrozenState } from './plan/State.tsx';
import { Steps } from './plan/Steps.tsx';
import { TitleBlock } from './said/TitleBlock.tsx';

/** @param frozen digest of the frozen plan that is looked at; undefined: the draft */
export function PlanSheet({ frozen }: { readonly frozen: string | undefined }) {
  const project = useBoard((b) => b.project?.id);
  const list = useQuery({
    queryKey: ['plans', project],
    enabled: project !== undefined,
    queryFn: () => server.plans(project ?? ''),
  });
  const plans = list.data ?? [];
  if (project === undefined) return <main className="sheet plan-sheet" />;
  return frozen === undefined ? (
    <Draft project={project} plans={plans} />
  ) : (
    <Frozen key={frozen} project={project} digest={frozen} plans={plans} />
  );
}

interface DraftProps {
  readonly project: string;
  readonly plans: readonly PlanListed[];
}

/** Time without a change after which the plan is made, ms. */
const PAUSE = 600;

function Draft({ project, plans }: DraftProps) {
  const draft = useBoard((b) => b.draft);
  const whole = useBoard(
    (b) => b.drawn !== undefined && b.issues.length === 0 && Object.keys(b.faults).length === 0,
  );
  const manner = useManner();
  const { answer, of } = usePlan();
  const { data: files } = useQuery({
    queryKey: ['attachments', project],
    queryFn: () => server.attachments(project),
  });
  useEffect(() => {
    if (!whole || files === undefined) return undefined;
    const pause = setTimeout(() => void askPlan({ project, draft, files }), PAUSE);
    return () => clearTimeout(pause);
  }, [project, draft, files, whole]);
  const mine = of.startsWith(`${project} `) ? answer : undefined;
  const plan = mine?.kind === 'plan' ? mine.plan : undefined;
  const current = whole && files !== undefined && of === planKey({ project, draft, files });
  const sheet = useMemo(() => (plan === undefined ? undefined : written(plan, { manner })), [plan, manner]);
  const stands = plan === undefined ? words('planNotYet') : words(current ? 'planCurrent' : 'planOutdated');
  return (
    <main className={`sheet plan-sheet${sheet !== undefined && !current ? ' old' : ''}`}>
      <DraftState answer={mine} sheet={sheet} current={current} />
      {sheet === undefined ? null : <Steps sheet={sheet} />}
      {sheet === undefined ? null : <Sections sheet={sheet} />}
      <Freeze project={project} plans={plans} plan={current ? plan : undefined} />
      <DaySetUp plan={plan} />
      <TitleBlock
        type={words('typePlan')}
        sheet="4"
        stands={{
          label: words('sheetPlan'),
          words: stands,
          outdated: plan !== undefined && !current,
        }}
      />
    </main>
  );
}

interface FrozenProps extends DraftProps {
  readonly digest: string;
}

function Frozen({ project, digest, plans }: FrozenProps) {
  const manner = useManner();
  const found = useQuery({
    queryKey: ['plan', project, digest],
    staleTime: Infinity,
    queryFn: () => server.frozen(project, digest),
  });
  const listed = plans.find((one) => one.digest === digest);
  const outdated = listed?.outdated;
  const sheet = useMemo(
    (): Written | undefined =>
      found.data && written(found.data, { manner, ...(outdated === undefined ? {} : { outdated }) }),
    [found.data, manner, outdated],
  );
  if (sheet === undefined || found.data === undefined)
    return (
      <main className="sheet plan-sheet">
        <p className="large">{found.isError ? words('notFoundPlan') : ''}</p>
      </main>
    );
  const { frozen }: FrozenPlan = found.data;
  return (
    <main className={`sheet plan-sheet${outdated === undefined ? '' : ' old'}`}>
      <FrozenState project={project} frozen={frozen} sheet={sheet} />
      <Steps sheet={sheet} />
      <Sections sheet={sheet} />
      <TitleBlock
        type={words('typePlan')}
        sheet="4"
        revision={frozen.revision}
        stands={{
          label: words('sheetPlan'),
          words: words(outdated === undefined ? 'planFrozenState' : 'planOutdated'),
          outdated: outdated !== undefined,
        }}
      />
    </main>
  );
}
