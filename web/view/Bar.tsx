/** Above every sheet: which sheets there are, what was kept, and how this person reads. */
import type { MouseEvent } from 'react';
import { useBoard } from '../state/board.ts';
import { step } from '../state/server/keep.ts';
import { LOOKS, read, useReading } from '../state/manner.ts';
import { addressOf, go, SHEETS, type SheetName, useRoute } from '../state/route.ts';
import { words } from '../words/say.ts';

const SHEET_WORDS = {
  tank: 'sheetTank',
  steel: 'sheetSteel',
  growth: 'sheetGrowth',
  plan: 'sheetPlan',
  projects: 'sheetProjects',
} as const satisfies Record<SheetName, string>;

export function Bar() {
  const route = useRoute();
  const project = useBoard((b) => b.project?.id) ?? route.project;
  return (
    <header className="bar">
      <span className="product">{words('product')}</span>
      <nav aria-label={words('sheets')}>
        {[...SHEETS, 'projects' as const].map((sheet) => (
          <SheetLink key={sheet} sheet={sheet} project={project} here={route.sheet === sheet} />
        ))}
        <a href="/days">{words('sheetDays')}</a>
      </nav>
      <Kept />
      <ReadingChoices />
    </header>
  );
}

interface SheetLinkProps {
  readonly sheet: SheetName;
  readonly project: string | undefined;
  readonly here: boolean;
}

function SheetLink({ sheet, project, here }: SheetLinkProps) {
  const follow = (event: MouseEvent): void => {
    if (event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    go({ sheet, project });
  };
  return (
    <a
      href={addressOf({ sheet, project })}
      onClick={follow}
      {...(here ? { 'aria-current': 'page' as const } : {})}
    >
      {words(SHEET_WORDS[sheet])}
    </a>
  );
}

/** Undo, redo, and whether what is drawn is kept. */
function Kept() {
  const project = useBoard((b) => b.project);
  const saving = useBoard((b) => b.saving);
  const version = useBoard((b) => b.version);
  const blocked = useBoard((b) => b.issues.length > 0);
  if (project === undefined) return <span className="kept" />;
  const said = {
    saved: words('savedAt', { number: version }),
    unsaved: words(blocked ? 'savedBlocked' : 'savedUnsaved'),
    saving: words('savedSaving'),
    failed: words('savedFailed'),
  }[saving];
  return (
    <span className="kept">
      <button
        type="button"
        disabled={project.undo === undefined && saving === 'saved'}
        onClick={() => void step('undo')}
      >
        {words('undo')}
      </button>
      <button
        type="button"
        disabled={project.redo === undefined || saving !== 'saved'}
        onClick={() => void step('redo')}
      >
        {words('redo')}
      </button>
      <span role="status" className="saving" data-saving={saving}>
        {said}
      </span>
    </span>
  );
}

const UNITS = ['bar', 'MPa', 'psi'] as const;

function ReadingChoices() {
  const { manner, look } = useReading();
  return (
    <span className="reading">
      <label>
        <span>{words('units')}</span>
        <select
          value={manner.units}
          onChange={(e) => read({ units: UNITS.find((one) => one === e.target.value) ?? 'bar' })}
        >
          <option value="bar">{words('unitsBar')}</option>
          <option value="MPa">{words('unitsMPa')}</option>
          <option value="psi">{words('unitsPsi')}</option>
        </select>
      </label>
      <label>
        <span>{words('decimal')}</span>
        <select
          value={manner.decimal}
          onChange={(e) => read({ decimal: e.target.value === ',' ? ',' : '.' })}
        >
          <option value=".">{words('decimalPoint')}</option>
          <option value=",">{words('decimalComma')}</option>
        </select>
      </label>
      <label>
        <span>{words('look')}</span>
        <select
          value={look}
          onChange={(e) => read({ look: LOOKS.find((one) => one === e.target.value) ?? 'daylight' })}
        >
          {LOOKS.map((one) => (
            <option key={one} value={one}>
              {words(({ daylight: 'lookDaylight', night: 'lookNight', sun: 'lookSun' } as const)[one])}
            </option>
          ))}
        </select>
      </label>
    </span>
  );
}
