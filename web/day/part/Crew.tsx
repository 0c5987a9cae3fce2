/** Who does what today. */
import { say } from '../../words/day/say.ts';
import { useDay } from '../state/live.ts';

export function Crew() {
  const crew = useDay((d) => d.state?.crew);
  const lines = [
    ['director', crew?.director],
    ['note taker', crew?.noteTaker],
    ['pump', crew?.pump],
  ] as const;
  return (
    <ul className="crew-list">
      {lines.map(([role, name]) => (
        <li key={role}>{say('crewIs', { role: say(`role ${role}`), name: name ?? say('nobody') })}</li>
      ))}
    </ul>
  );
}
