/** This step and the next, as the plan has them. */
import { figuresFor, type Figures } from '@hoopwright/report/plan';
import type { DayState } from '@hoopwright/wire/day';
import type { Plan, Step } from '@hoopwright/wire/plan';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { ageText, growthText, pressureText } from '../said/figures.ts';
import { stepLine, stepWords } from '../said/steps.ts';
import { foreseenNow } from '../said/foresight.ts';
import { useNow } from '../state/clock.ts';
import { useDay } from '../state/live.ts';
import { askedNow } from '../tells/permitted.ts';
import { plannedStep } from '../tells/pumpOrder.ts';

export function Steps() {
  const state = useDay((d) => d.state);
  const manner = useManner();
  const now = useNow();
  if (state?.plan === undefined) return null;
  const { plan } = state.plan;
  const f = figuresFor(manner, plan.unit_bar);
  const here = plannedStep(state, state.step?.number);
  const next = plannedStep(state, state.next);
  const end = foreseenNow(state, manner);
  return (
    <div className="steps">
      <section className="this-step">
        <h2>
          {state.step === undefined
            ? say('thisStep')
            : say('thisStepSince', { time: ageText((now - state.step.begun_ms) / 1000) })}
        </h2>
        {here === undefined ? <p>{say('noStep')}</p> : <OneStep step={here} plan={plan} f={f} />}
        <NotNow />
      </section>
      {end === undefined ? <NotYet readying={state.readying} /> : <p className="foreseen-now">{end}</p>}
      <section className="next-step">
        <h2>{say('nextStep')}</h2>
        {next === undefined ? <p>{say('lastStep')}</p> : <OneStep step={next} plan={plan} f={f} />}
      </section>
    </div>
  );
}

/** That nothing will be foreseen, and why; how far the making ready is stands at the top. */
const NotYet = ({ readying }: { readonly readying: DayState['readying'] }) =>
  readying?.failed === true ? <p className="foreseen-now">{readying.says}</p> : null;

interface OneStepProps {
  readonly step: Step;
  readonly plan: Plan;
  readonly f: Figures;
}

function OneStep({ step, plan, f }: OneStepProps) {
  const manner = useManner();
  const girth = step.expected?.girths.reduce((a, b) =>
    b.growth_percent.value > a.growth_percent.value ? b : a,
  );
  return (
    <>
      <p className="step-title">{stepLine(step, f)}</p>
      <p>{stepWords(step, plan, f)}</p>
      {girth === undefined || step.expected === undefined ? null : (
        <dl className="lines">
          <dt>{say('foreseen')}</dt>
          <dd>
            {say('foreseenBoth', {
              girth: girth.name,
              growth: rangeText(manner, girth.growth_percent),
              litres: f.litres(step.expected.pumped_L.value),
            })}
          </dd>
        </dl>
      )}
    </>
  );
}

const rangeText = (
  manner: ReturnType<typeof useManner>,
  { value, low, high }: { readonly value: number; readonly low?: number; readonly high?: number },
): string => {
  const bare = (percent: number): string => growthText(manner, percent).replace(' %', '');
  return low === undefined || high === undefined
    ? growthText(manner, value)
    : `${bare(value)} (${bare(low)}–${bare(high)}) %`;
};

/** What is read in this step, and what nobody may read at this pressure. */
export function ReadNow() {
  const state = useDay((d) => d.state);
  const now = useNow();
  if (state === undefined) return null;
  return (
    <>
      <dl className="lines read-now">
        <dt>{say('readsNow')}</dt>
        <dd data-asked="now">
          {askedNow(state, now)
            .now.map(({ channel }) => channel.name)
            .join(', ')}
        </dd>
      </dl>
      <NotNow />
    </>
  );
}

/** Nothing where everything may be read. */
export function NotNow() {
  const state = useDay((d) => d.state);
  const now = useNow();
  const manner = useManner();
  const barred = state === undefined ? [] : askedNow(state, now).barred;
  if (barred.length === 0) return null;
  return (
    <dl className="lines not-now">
      <dt>{say('notNow')}</dt>
      <dd data-asked="barred">
        {barred.map(({ channel: { name, upTo_bar } }) => (
          <span key={name}>{say('notNowAt', { name, pressure: pressureText(manner, upTo_bar) })}</span>
        ))}
      </dd>
    </dl>
  );
}
