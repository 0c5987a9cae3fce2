/** Every day of this laptop, and the beginning of a new one. */
import { say } from '../../words/day/say.ts';
import { Looks } from '../part/Frame.tsx';
import { clockText, dateText } from '../said/figures.ts';
import { dayServer } from '../state/api.ts';
import { useTold } from '../state/orders.ts';
import { addressOf } from '../state/place.ts';
import { useAsked } from '../state/useAsked.ts';
import { BeginForm } from './BeginForm.tsx';

export function DaysPage() {
  const days = useAsked(() => dayServer.days(), 'days');
  const told = useTold((t) => t.told);
  return (
    <>
      <header className="bar">
        <span className="product">{say('product')}</span>
        <nav>
          <a href="/">{say('board')}</a>
          <a href="/days" aria-current="page">
            {say('daysHere')}
          </a>
        </nav>
        <Looks />
      </header>
      <main className="sheet days-page">
        <h1 className="large">{say('daysTitle')}</h1>
        {told === undefined ? null : (
          <p className="fault" role="alert">
            {told}
          </p>
        )}
        <div className="days-two">
          <section aria-label={say('daysTitle')}>
            {days?.length === 0 ? <p>{say('daysNone')}</p> : null}
            {days === undefined || days.length === 0 ? null : <DayTable days={days} />}
          </section>
          <BeginForm />
        </div>
      </main>
    </>
  );
}

type Lines = Awaited<ReturnType<typeof dayServer.days>>;

function DayTable({ days }: { readonly days: Lines }) {
  return (
    <table className="figures projects day-list">
      <caption className="unseen">{say('daysTitle')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('colDay')}</th>
          <th scope="col">{say('colKind')}</th>
          <th scope="col">{say('colTitle')}</th>
          <th scope="col">{say('colPhase')}</th>
          <th scope="col">{say('colEntries')}</th>
          <th scope="col">{say('colDo')}</th>
        </tr>
      </thead>
      <tbody>
        {days.map(({ record, kind, title, began_ms, phase, entries, live }) => (
          <tr key={record} data-record={record} data-kind={kind}>
            <td>
              {dateText(began_ms)} {clockText(began_ms)}
            </td>
            <td className={kind === 'test' ? '' : 'simulated'}>{say(`kind ${kind}`)}</td>
            <th scope="row">{title}</th>
            <td>{say(live ? 'phaseHere' : 'phaseBare', { phase: say(`phase ${phase}`) })}</td>
            <td>{say('dayEntries', { count: entries })}</td>
            <td>
              {live ? (
                <a
                  className="key"
                  href={addressOf({ record, replay: false })}
                  aria-label={say('dayOpenNamed', { title })}
                >
                  {say('dayOpen')}
                </a>
              ) : null}
              <a
                className="key"
                href={addressOf({ record, replay: true })}
                aria-label={say('dayReplayNamed', { title })}
              >
                {say('dayReplay')}
              </a>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
