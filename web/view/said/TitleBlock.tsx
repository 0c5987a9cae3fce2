/** The title block after ISO 7200, bottom right of every sheet, with what a forecast must say of itself. */
import { type Manner, scaleOf } from '@hoopwright/report/figure';
import type { ReactNode } from 'react';
import { forecastState, type ForecastState, useBoard } from '../../state/board.ts';
import { useManner } from '../../state/manner.ts';
import { words } from '../../words/say.ts';

export interface TitleBlockProps {
  readonly type: string;
  readonly sheet: string;
  /** What this sheet says of its own state instead of that of the forecast. */
  readonly stands?: { readonly label: string; readonly words: string; readonly outdated: boolean };
  /** Instead of the version of the project. */
  readonly revision?: string;
}

/** A name that begins so is of invented data, and every sheet says it. */
const INVENTED = /^INVENTED[:\s]*/;

const STATES = {
  current: 'forecastCurrent',
  'first pass': 'forecastRough',
  'out of date': 'forecastOutdated',
  none: 'forecastNone',
} as const satisfies Record<ForecastState, string>;

export function TitleBlock({ type, sheet, stands, revision }: TitleBlockProps) {
  const project = useBoard((b) => b.project);
  const version = useBoard((b) => b.version);
  const draft = useBoard((b) => b.draft);
  const state = useBoard(forecastState);
  const manner = useManner();
  const name = typeof draft['name'] === 'string' ? draft['name'] : '';
  const serial = typeof draft['serial'] === 'string' ? draft['serial'] : words('blockNothing');
  const old = stands?.outdated ?? state === 'out of date';
  const invented = INVENTED.test(name);
  return (
    <dl className="title-block" aria-label={words('titleBlock')}>
      <Cell label={words('blockProject')} className={invented ? 'w7' : 'w12'}>
        {project?.name ?? words('blockNothing')}
      </Cell>
      {invented ? (
        <div className="w5 invented">
          <dd>{words('invented')}</dd>
        </div>
      ) : null}
      <Cell label={words('blockTitle')} className="w9 title">
        {name.replace(INVENTED, '') || words('blockNothing')}
      </Cell>
      <Cell label={words('blockSerial')} className="w3">
        {serial}
      </Cell>
      <Cell label={words('blockType')} className="w4">
        {type}
      </Cell>
      <Cell label={words('blockUnits')} className="w5">
        {unitsOf(manner)}
      </Cell>
      <Cell
        label={stands?.label ?? words('blockForecast')}
        className={`w3 forecast${old ? ' outdated' : ''}`}
      >
        {stands === undefined ? (
          <span role="status" data-state={state}>
            {words(STATES[state])}
          </span>
        ) : (
          <span role="status">{stands.words}</span>
        )}
      </Cell>
      <Cell label={words('blockRevision')} className="w2">
        {revision ?? version}
      </Cell>
      <Cell label={words('blockDate')} className="w4">
        {dayOf(project?.created_ms)}
      </Cell>
      <Cell label={words('blockSheet')} className="w3">
        {sheet}
      </Cell>
      <Cell label={words('blockLanguage')} className="w3">
        {manner.language}
      </Cell>
    </dl>
  );
}

function Cell({
  label,
  className,
  children,
}: {
  readonly label: string;
  readonly className: string;
  readonly children: ReactNode;
}) {
  return (
    <div className={className}>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}

const unitsOf = (manner: Manner): string => {
  const unit = (quantity: Parameters<typeof scaleOf>[1]): string => scaleOf(manner.units, quantity).unit;
  return words('blockUnitsOf', {
    decimal: manner.decimal,
    length: unit('length'),
    pressure: unit('pressure'),
    volume: unit('volume'),
    mass: unit('mass'),
  });
};

/** ISO 8601, in the time of this laptop. */
const dayOf = (time: number | undefined): string => {
  const day = time === undefined ? undefined : new Date(time);
  return day === undefined
    ? words('blockNothing')
    : `${day.getFullYear()}-${String(day.getMonth() + 1).padStart(2, '0')}-${String(day.getDate()).padStart(2, '0')}`;
};
