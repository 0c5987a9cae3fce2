/** Versions of the project on the board, what changed from one to the next, and the way back. */
import type { Project, VersionLine } from '@hoopwright/wire/project';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { putBack } from '../../state/server/projects.ts';
import { server } from '../../state/server/server.ts';
import { differenceSentence } from '../../words/difference.ts';
import { words } from '../../words/say.ts';
import { Wide } from './Wide.tsx';

export function Versions({ project }: { readonly project: Project }) {
  const versions = useQuery({
    queryKey: ['versions', project.id, project.current],
    queryFn: () => server.versions(project.id),
  });
  return (
    <section aria-label={words('versionsTitle', { name: project.name })}>
      <h2>{words('versionsTitle', { name: project.name })}</h2>
      <Wide label={words('versionsTitle', { name: project.name })}>
        <table className="figures projects">
          <caption className="unseen">{words('versionsTitle', { name: project.name })}</caption>
          <thead>
            <tr>
              <th scope="col">{words('blockRevision')}</th>
              <th scope="col">{words('versionSaved')}</th>
              <th scope="col">{words('versionBy')}</th>
              <th scope="col">{words('versionChange')}</th>
              <th scope="col" />
            </tr>
          </thead>
          <tbody>
            {(versions.data ?? []).slice(0, MOST).map((line) => (
              <Row key={line.number} project={project} line={line} />
            ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}

/** Versions listed; older ones are in the project file with all versions. */
const MOST = 60;

function Row({ project, line }: { readonly project: Project; readonly line: VersionLine }) {
  const [open, setOpen] = useState(false);
  const { number, parent } = line;
  const stands = number === project.current;
  return (
    <tr data-version={number}>
      <th scope="row">{number}</th>
      <td>{timeOf(line.saved_ms)}</td>
      <td className="quiet">{line.by ?? words('blockNothing')}</td>
      <td className="change-cell">
        {parent === undefined ? (
          words('versionFirst')
        ) : open ? (
          <Changes id={project.id} from={parent} to={number} />
        ) : (
          <button type="button" onClick={() => setOpen(true)}>
            {words('versionFrom', { number: parent })}
          </button>
        )}
      </td>
      <td>
        {stands ? (
          words('versionStands')
        ) : (
          <button
            type="button"
            aria-label={words('versionPutBackNamed', { number })}
            onClick={() => void putBack(project.id, number)}
          >
            {words('versionPutBack')}
          </button>
        )}
      </td>
    </tr>
  );
}

function Changes({ id, from, to }: { readonly id: string; readonly from: number; readonly to: number }) {
  const manner = useManner();
  const changes = useQuery({
    queryKey: ['difference', id, from, to],
    queryFn: () => server.difference(id, from, to),
  });
  if (changes.data?.length === 0) return <>{words('versionSame')}</>;
  return (
    <ul>
      {(changes.data ?? []).map((one) => (
        <li key={one.path}>{differenceSentence(manner, one)}</li>
      ))}
    </ul>
  );
}

/** ISO 8601 to the second, in the time of this laptop. */
function timeOf(ms: number): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  const t = new Date(ms);
  return `${t.getFullYear()}-${two(t.getMonth() + 1)}-${two(t.getDate())} ${two(t.getHours())}:${two(t.getMinutes())}:${two(t.getSeconds())}`;
}
