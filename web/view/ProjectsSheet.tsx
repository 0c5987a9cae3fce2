/** The sheet of projects: draw one's own, take in and hand on, copy, rename, delete and bring back, versions. */
import type { Project } from '@hoopwright/wire/project';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useId, useState } from 'react';
import { useBoard } from '../state/board.ts';
import { copyProject, importText, noOf, openProject } from '../state/server/projects.ts';
import { server } from '../state/server/server.ts';
import { words } from '../words/say.ts';
import { OwnTank } from './field/OwnTank.tsx';
import { TitleBlock } from './said/TitleBlock.tsx';
import { Versions } from './table/Versions.tsx';
import { Wide } from './table/Wide.tsx';

export function ProjectsSheet() {
  const kept = useQuery({ queryKey: ['projects', 'kept'], queryFn: () => server.projects('kept') });
  const deleted = useQuery({ queryKey: ['projects', 'deleted'], queryFn: () => server.projects('deleted') });
  const project = useBoard((b) => b.project);
  return (
    <main className="sheet projects-sheet">
      <h1 className="large">{words('projectsTitle')}</h1>
      <div className="beside">
        <div>
          {kept.data?.length === 0 ? <p>{words('noProjects')}</p> : null}
          <Wide label={words('projectsTitle')}>
            <table className="figures projects">
              <caption className="unseen">{words('projectsTitle')}</caption>
              <tbody>
                {(kept.data ?? []).map((one) => (
                  <KeptRow key={one.id} project={one} />
                ))}
              </tbody>
            </table>
          </Wide>
          <Import />
          {deleted.data === undefined || deleted.data.length === 0 ? null : (
            <Deleted projects={deleted.data} />
          )}
        </div>
        <OwnTank />
      </div>
      {project === undefined ? null : <Versions project={project} />}
      <TitleBlock type={words('typeProjects')} sheet="4" />
    </main>
  );
}

function KeptRow({ project }: { readonly project: Project }) {
  const [renaming, setRenaming] = useState(false);
  const queries = useQueryClient();
  const { id, name } = project;
  const remove = async (): Promise<void> => {
    await server.remove(id);
    await queries.invalidateQueries({ queryKey: ['projects'] });
    useBoard.setState({ told: words('projectDeleted', { name }) });
  };
  return (
    <tr data-project={name}>
      <th scope="row">{renaming ? <Rename project={project} onDone={() => setRenaming(false)} /> : name}</th>
      <td className="quiet">{words('projectVersion', { number: project.current })}</td>
      <td>
        <Act words="projectOpen" named="projectOpenNamed" name={name} onAct={() => openProject(id)} />
        <Act words="projectCopy" named="projectCopyNamed" name={name} onAct={() => copyProject(project)} />
        <Act words="projectRename" named="projectRenameNamed" name={name} onAct={() => setRenaming(true)} />
        <Act words="projectDelete" named="projectDeleteNamed" name={name} onAct={remove} />
      </td>
      <td>
        <a href={`/api/projects/${id}/file`} download>
          {words('exportTank')}
        </a>{' '}
        <a href={`/api/projects/${id}/export`} download>
          {words('exportProject')}
        </a>{' '}
        <a href={`/api/projects/${id}/export?versions=all`} download>
          {words('exportAll')}
        </a>
      </td>
    </tr>
  );
}

interface ActProps {
  readonly words: 'projectOpen' | 'projectCopy' | 'projectRename' | 'projectDelete' | 'projectRestore';
  readonly named:
    | 'projectOpenNamed'
    | 'projectCopyNamed'
    | 'projectRenameNamed'
    | 'projectDeleteNamed'
    | 'projectRestoreNamed';
  readonly name: string;
  /** May give a sentence that says why it was not done. */
  readonly onAct: () => void | Promise<string | undefined | void>;
}

function Act({ words: word, named, name, onAct }: ActProps) {
  const act = async (): Promise<void> => {
    try {
      const told = await onAct();
      if (typeof told === 'string') useBoard.setState({ told });
    } catch (error) {
      useBoard.setState({ told: noOf(error) });
    }
  };
  return (
    <button type="button" aria-label={words(named, { name })} onClick={() => void act()}>
      {words(word)}
    </button>
  );
}

function Rename({ project, onDone }: { readonly project: Project; readonly onDone: () => void }) {
  const id = useId();
  const [name, setName] = useState(project.name);
  const queries = useQueryClient();
  const blank = name.trim() === '';
  const keep = async (): Promise<void> => {
    const trimmed = name.trim();
    if (blank) return;
    if (trimmed !== project.name) {
      const renamed = await server.rename(project.id, trimmed);
      if (useBoard.getState().project?.id === project.id) useBoard.setState({ project: renamed });
      await queries.invalidateQueries({ queryKey: ['projects'] });
    }
    onDone();
  };
  return (
    <span className={blank ? 'faulty' : ''}>
      <span className="entry">
        <input
          // oxlint-disable-next-line jsx-a11y/no-autofocus -- the person has just asked for this field
          autoFocus
          className="words"
          aria-label={words('projectNewName')}
          aria-invalid={blank}
          aria-describedby={id}
          maxLength={120}
          value={name}
          onChange={(event) => setName(event.target.value)}
          onBlur={() => void keep()}
          onKeyDown={(event) => {
            if (event.key === 'Enter') void keep();
            if (event.key === 'Escape') onDone();
          }}
        />
      </span>
      <span id={id} aria-live="polite">
        {blank ? <span className="fault">{words('projectNoName')}</span> : null}
      </span>
    </span>
  );
}

function Import() {
  const [fault, setFault] = useState<string>();
  const take = async (files: FileList | null): Promise<void> => {
    const [file] = files ?? [];
    if (file !== undefined) setFault(await importText(file.name, await file.text()));
  };
  return (
    <div
      className="drop"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void take(event.dataTransfer.files);
      }}
    >
      <label htmlFor="import">{words('importTitle')}</label>
      <input
        id="import"
        type="file"
        accept=".json,application/json"
        onChange={(event) => void take(event.target.files)}
      />
      {fault === undefined ? null : (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}

function Deleted({ projects }: { readonly projects: readonly Project[] }) {
  const queries = useQueryClient();
  const restore = async (id: string): Promise<void> => {
    await server.restore(id);
    await queries.invalidateQueries({ queryKey: ['projects'] });
  };
  return (
    <section aria-label={words('deletedTitle')}>
      <h2>{words('deletedTitle')}</h2>
      <table className="figures projects">
        <caption className="unseen">{words('deletedTitle')}</caption>
        <tbody>
          {projects.map(({ id, name }) => (
            <tr key={id} data-deleted={name}>
              <th scope="row">{name}</th>
              <td>
                <Act
                  words="projectRestore"
                  named="projectRestoreNamed"
                  name={name}
                  onAct={() => restore(id)}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
