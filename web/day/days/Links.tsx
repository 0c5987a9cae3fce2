/** A link for each of the crew: made, shown once, revoked; at the laptop only. */
import { DAY_ROLES, type DayLink } from '@hoopwright/wire/day';
import { type FormEvent, useState } from 'react';
import { say } from '../../words/day/say.ts';
import { dayServer } from '../state/api.ts';
import { useDay } from '../state/live.ts';
import { refusal, tell } from '../state/orders.ts';
import { useAsked } from '../state/useAsked.ts';

/** Whom a link can be made for: the crew, and an instrument that sends by itself, under the name of its wire. */
const LINKED = [...DAY_ROLES, 'source'] as const;

export function Links() {
  const record = useDay((d) => d.record);
  const [version, setVersion] = useState(0);
  const links = useAsked(() => dayServer.links(record), `${record} ${version}`) ?? [];
  const again = (): void => setVersion((before) => before + 1);
  const revoke = async (id: string): Promise<void> => {
    try {
      await dayServer.revoke(record, id);
      again();
    } catch (error) {
      tell(refusal(error));
    }
  };
  return (
    <section className="links" aria-label={say('linksTitle')}>
      <h2>{say('linksTitle')}</h2>
      <p className="quiet">{say('linksWhy')}</p>
      <ul>
        {links.map(({ id, role, name, revoked_ms }) => (
          <li key={id}>
            <span>
              {name}, {role === 'source' ? say('linksSource') : say(`role ${role}`)}
            </span>
            {revoked_ms === undefined ? (
              <button
                type="button"
                className="key"
                aria-label={say('linksRevokeNamed', { name })}
                onClick={() => void revoke(id)}
              >
                {say('linksRevoke')}
              </button>
            ) : (
              <span className="quiet">{say('linksRevoked')}</span>
            )}
          </li>
        ))}
      </ul>
      <MakeLink onMade={again} />
    </section>
  );
}

function MakeLink({ onMade }: { readonly onMade: () => void }) {
  const record = useDay((d) => d.record);
  const [name, setName] = useState('');
  const [role, setRole] = useState<DayLink['role']>('note taker');
  const [made, setMade] = useState<{ readonly links: readonly string[]; readonly name: string }>();
  const make = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    try {
      const { links } = await dayServer.makeLink(record, role, name.trim());
      setMade({ links, name: name.trim() });
      setName('');
      onMade();
    } catch (error) {
      tell(refusal(error));
    }
  };
  return (
    <form className="make-link" onSubmit={(event) => void make(event)}>
      <label className="line-field">
        <span>{say('linksName')}</span>
        <input type="text" value={name} maxLength={60} onChange={(event) => setName(event.target.value)} />
      </label>
      <label className="line-field">
        <span>{say('linksRole')}</span>
        <select
          value={role}
          onChange={(event) => setRole(LINKED.find((one) => one === event.target.value) ?? 'viewer')}
        >
          {LINKED.map((one) => (
            <option key={one} value={one}>
              {one === 'source' ? say('linksSource') : say(`role ${one}`)}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" className="key" disabled={name.trim() === ''} data-act="link">
        {say('linksMake')}
      </button>
      {made === undefined ? null : (
        <p role="status" className="made-link">
          {made.links.length === 0 ? say('linksNotShared') : say('linksMade', { name: made.name })}{' '}
          {made.links.map((link) => (
            <code key={link}>{link}</code>
          ))}
        </p>
      )}
    </form>
  );
}
