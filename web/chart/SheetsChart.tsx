/**
 * The sheets side by side, a column for each: growth left under the published ceiling, mass under that of the
 * unstretched tank. What a sheet weighs and what it risks stand over each other.
 */
import { PUBLISHED_CEILING } from '@hoopwright/report/curve';
import { fixed, type Manner, say, scaleOf } from '@hoopwright/report/figure';
import type { Compared, SheetRow } from '@hoopwright/wire/compare';
import { useId } from 'react';
import { useManner } from '../state/manner.ts';
import { words } from '../words/say.ts';
import { roundAxis } from './roundAxis.ts';

const WIDTH = 560;
const HEIGHT = 372;
const LEFT = 46;
const RIGHT = WIDTH - 6;
const GROWTH = { top: 26, bottom: 196 };
const MASS = { top: 232, bottom: 330 };

export interface SheetsChartProps {
  readonly rows: readonly SheetRow[];
  readonly unstretched: Compared['unstretched'];
  readonly present: number | undefined;
}

export function SheetsChart({ rows, unstretched, present }: SheetsChartProps) {
  const manner = useManner();
  const hatching = useId();
  const column = (RIGHT - LEFT) / Math.max(1, rows.length);
  const x = (i: number): number => LEFT + (i + 0.5) * column;
  return (
    <svg
      className="scene sheets-chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={words('chartTitle')}
    >
      <defs>
        <pattern
          id={hatching}
          width={8}
          height={8}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="ink-line" d="M0 0V8" strokeWidth={0.8} />
        </pattern>
      </defs>
      <GrowthPanel rows={rows} present={present} x={x} manner={manner} hatching={hatching} />
      <MassPanel
        rows={rows}
        present={present}
        x={x}
        manner={manner}
        unstretched={unstretched}
        column={column}
      />
      {rows.map((row, i) => (
        <text
          key={row.wall_mm}
          className={`ink-fill${row.wall_mm === present ? ' strong' : ''}`}
          x={x(i)}
          y={MASS.bottom + 16}
          fontSize={12}
          textAnchor="middle"
        >
          {say(manner, 'wall', row.wall_mm)}
        </text>
      ))}
      {rows.map((row, i) => (
        <text
          key={row.wall_mm}
          className="ink-fill"
          x={x(i)}
          y={MASS.bottom + 32}
          fontSize={11}
          textAnchor="middle"
        >
          {row.margin === null ? '' : words('chartMargin', { margin: say(manner, 'ratio', row.margin) })}
        </text>
      ))}
    </svg>
  );
}

interface PanelProps {
  readonly rows: readonly SheetRow[];
  readonly present: number | undefined;
  readonly x: (column: number) => number;
  readonly manner: Manner;
}

function GrowthPanel({ rows, present, x, manner, hatching }: PanelProps & { readonly hatching: string }) {
  const { one, unit } = scaleOf(manner.units, 'growth');
  const ceiling = PUBLISHED_CEILING.growth / one;
  const left = rows.map((row) =>
    row.growthLeft_percent === null ? undefined : row.growthLeft_percent / 100 / one,
  );
  const axis = roundAxis(
    Math.min(Math.max(1.25 * ceiling, ...left.map((g) => (g ?? 0) * 1.1)), 2 * ceiling),
    5,
  );
  const y = (value: number): number => GROWTH.bottom - ((GROWTH.bottom - GROWTH.top) * value) / axis.most;
  return (
    <g>
      <rect x={LEFT} y={y(ceiling) - 12} width={RIGHT - LEFT} height={12} fill={`url(#${hatching})`} />
      <path className="line ink-line" strokeWidth={0.8} d={`M${LEFT} ${y(ceiling)}H${RIGHT}`} />
      <text className="ink-fill" x={RIGHT} y={y(ceiling) + 13} fontSize={10.5} textAnchor="end">
        {words('chartCeiling', { growth: say(manner, 'growth', PUBLISHED_CEILING.growth) })}
      </text>
      <Frame top={GROWTH.top} bottom={GROWTH.bottom} title={words('chartLeft', { unit })} />
      {axis.ticks.map((tick) => (
        <text key={tick} className="ink-fill" x={LEFT - 6} y={y(tick) + 4} fontSize={10.5} textAnchor="end">
          {fixed(manner, tick, axis.digits)}
        </text>
      ))}
      {rows.map((row, i) => {
        const growth = left[i];
        const bold = row.wall_mm === present;
        if (growth === undefined || growth > axis.most)
          return (
            <text
              key={row.wall_mm}
              className="ink-fill strong"
              x={x(i)}
              y={GROWTH.top + 12}
              fontSize={11}
              textAnchor="middle"
            >
              {growth === undefined ? words('chartBursts') : `↑ ${say(manner, 'growth', growth * one)}`}
            </text>
          );
        return (
          <g key={row.wall_mm}>
            <path
              className="line faint-line"
              strokeWidth={0.5}
              d={`M${x(i)} ${y(growth)}V${GROWTH.bottom}`}
            />
            <circle
              className={`ink-line ${bold ? 'ink-fill' : 'paper-fill'}`}
              cx={x(i)}
              cy={y(growth)}
              r={4.5}
              strokeWidth={1.4}
            />
            <text className={`ink-fill${bold ? ' strong' : ''}`} x={x(i) + 9} y={y(growth) - 6} fontSize={11}>
              {say(manner, 'growth', growth * one)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

interface MassPanelProps extends PanelProps {
  readonly unstretched: Compared['unstretched'];
  readonly column: number;
}

function MassPanel({ rows, present, x, manner, unstretched, column }: MassPanelProps) {
  const { one, unit } = scaleOf(manner.units, 'mass');
  const mass = (kg: number): number => kg / 1000 / one;
  const heaviest = Math.max(
    1e-9,
    ...rows.map((row) => mass(row.mass_kg ?? 0)),
    mass(unstretched?.mass_kg ?? 0),
  );
  const axis = roundAxis(heaviest * 1.12, 4);
  const y = (value: number): number => MASS.bottom - ((MASS.bottom - MASS.top) * value) / axis.most;
  const half = Math.min(24, 0.3 * column);
  return (
    <g>
      <Frame top={MASS.top} bottom={MASS.bottom} title={words('chartMass', { unit })} />
      {axis.ticks.map((tick) => (
        <text key={tick} className="ink-fill" x={LEFT - 6} y={y(tick) + 4} fontSize={10.5} textAnchor="end">
          {fixed(manner, tick, axis.digits)}
        </text>
      ))}
      {rows.map((row, i) =>
        row.mass_kg === null ? null : (
          <g key={row.wall_mm}>
            <path
              className={`line ink-line${row.wall_mm === present ? ' outline' : ''}`}
              strokeWidth={row.wall_mm === present ? 2 : 0.8}
              d={`M${x(i) - half} ${MASS.bottom}V${y(mass(row.mass_kg))}H${x(i) + half}V${MASS.bottom}`}
            />
            <text
              className="ink-fill"
              x={x(i)}
              y={y(mass(row.mass_kg)) + 13}
              fontSize={11}
              textAnchor="middle"
            >
              {say(manner, 'mass', row.mass_kg / 1000)}
            </text>
          </g>
        ),
      )}
      {unstretched === null ? null : (
        <g>
          <path
            className="line ink-line"
            strokeWidth={0.8}
            strokeDasharray="17 2.6 1.2 2.6 1.2 2.6"
            d={`M${LEFT} ${y(mass(unstretched.mass_kg))}H${RIGHT}`}
          />
          <text className="ink-fill" x={LEFT + 4} y={y(mass(unstretched.mass_kg)) - 4} fontSize={10.5}>
            {words('chartUnstretched', {
              wall: say(manner, 'wall', unstretched.wall_mm),
              mass: say(manner, 'mass', unstretched.mass_kg / 1000),
            })}
          </text>
        </g>
      )}
    </g>
  );
}

function Frame({
  top,
  bottom,
  title,
}: {
  readonly top: number;
  readonly bottom: number;
  readonly title: string;
}) {
  return (
    <>
      <path className="line ink-line" strokeWidth={0.8} d={`M${LEFT} ${top}V${bottom}H${RIGHT}`} />
      <text className="ink-fill" x={4} y={top - 10} fontSize={12}>
        {title}
      </text>
    </>
  );
}
