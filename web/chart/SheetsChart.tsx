/** Growth left over mass, a point for each sheet with its margin; hatched beyond the published ceiling. */
import { PUBLISHED_CEILING } from '@hoopwright/report/curve';
import { fixed, say, scaleOf } from '@hoopwright/report/figure';
import type { Compared, SheetRow } from '@hoopwright/wire/compare';
import { useId } from 'react';
import { useManner } from '../state/manner.ts';
import { words } from '../words/say.ts';
import { roundAxis } from './roundAxis.ts';

const WIDTH = 470;
const HEIGHT = 300;
const BOX = { left: 46, right: 452, top: 26, bottom: 262 };

export interface SheetsChartProps {
  readonly rows: readonly SheetRow[];
  readonly unstretched: Compared['unstretched'];
  readonly present: number | undefined;
}

export function SheetsChart({ rows, unstretched, present }: SheetsChartProps) {
  const manner = useManner();
  const id = useId();
  const [mass, growth] = [scaleOf(manner.units, 'mass'), scaleOf(manner.units, 'growth')];
  const kg = (value: number): number => value / 1000 / mass.one;
  const points = rows.flatMap((row) =>
    row.mass_kg === null || row.growthLeft_percent === null
      ? []
      : [{ row, x: kg(row.mass_kg), y: row.growthLeft_percent / 100 / growth.one }],
  );
  const heaviest = Math.max(...points.map((p) => p.x), unstretched === null ? 1 : kg(unstretched.mass_kg));
  const xs = roundAxis(heaviest * 1.04, 6);
  const ceiling = PUBLISHED_CEILING.growth / growth.one;
  const ys = roundAxis(Math.min(Math.max(1.3 * ceiling, ...points.map((p) => p.y * 1.08)), 2.2 * ceiling), 6);
  const x = (value: number): number => BOX.left + ((BOX.right - BOX.left) * value) / xs.most;
  const y = (value: number): number => BOX.bottom - ((BOX.bottom - BOX.top) * value) / ys.most;
  return (
    <svg
      className="scene sheets-chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={words('chartTitle')}
    >
      <defs>
        <pattern id={id} width={8} height={8} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="ink-line" d="M0 0V8" strokeWidth={0.8} />
        </pattern>
      </defs>
      <rect x={BOX.left} y={y(ceiling) - 12} width={BOX.right - BOX.left} height={12} fill={`url(#${id})`} />
      <path className="line ink-line" strokeWidth={0.8} d={`M${BOX.left} ${y(ceiling)}H${BOX.right}`} />
      <text className="ink-fill" x={BOX.right} y={y(ceiling) + 12} fontSize={10.5} textAnchor="end">
        {words('chartCeiling', { growth: say(manner, 'growth', PUBLISHED_CEILING.growth) })}
      </text>
      <path
        className="line ink-line"
        strokeWidth={0.8}
        d={`M${BOX.left} ${BOX.top}V${BOX.bottom}H${BOX.right}`}
      />
      {xs.ticks.map((tick) => (
        <text
          key={tick}
          className="ink-fill"
          x={x(tick)}
          y={BOX.bottom + 14}
          fontSize={10.5}
          textAnchor="middle"
        >
          {fixed(manner, tick, xs.digits)}
        </text>
      ))}
      {ys.ticks.map((tick) => (
        <text
          key={tick}
          className="ink-fill"
          x={BOX.left - 5}
          y={y(tick) + 4}
          fontSize={10.5}
          textAnchor="end"
        >
          {fixed(manner, tick, ys.digits)}
        </text>
      ))}
      <text className="ink-fill" x={BOX.right} y={BOX.bottom + 30} fontSize={12} textAnchor="end">
        {words('chartMass', { unit: mass.unit })}
      </text>
      <text className="ink-fill" x={6} y={14} fontSize={12}>
        {words('chartLeft', { unit: growth.unit })}
      </text>
      {points.map(({ row, x: m, y: g }) =>
        g > ys.most ? (
          <text
            key={row.wall_mm}
            className="ink-fill"
            x={x(m)}
            y={BOX.top - 3}
            fontSize={10.5}
            textAnchor="middle"
          >
            {words('chartAbove', { wall: say(manner, 'wall', row.wall_mm) })}
          </text>
        ) : (
          <g key={row.wall_mm}>
            <circle
              className={`ink-line ${row.wall_mm === present ? 'ink-fill' : 'paper-fill'}`}
              cx={x(m)}
              cy={y(g)}
              r={4.5}
              strokeWidth={1.4}
            />
            <text
              className={`ink-fill${row.wall_mm === present ? ' strong' : ''}`}
              x={x(m) - 9}
              y={y(g) + 4}
              fontSize={11}
              textAnchor="end"
            >
              {words('chartPoint', {
                wall: say(manner, 'wall', row.wall_mm),
                margin: row.margin === null ? words('blockNothing') : say(manner, 'ratio', row.margin),
              })}
            </text>
          </g>
        ),
      )}
      {unstretched === null ? null : (
        <g>
          <path
            className="line ink-line"
            strokeWidth={1.4}
            d={`M${x(kg(unstretched.mass_kg))} ${BOX.bottom}v-16`}
          />
          <text
            className="ink-fill"
            x={x(kg(unstretched.mass_kg))}
            y={BOX.bottom - 21}
            fontSize={11}
            textAnchor="end"
          >
            {words('chartUnstretched', { wall: say(manner, 'wall', unstretched.wall_mm) })}
          </text>
        </g>
      )}
    </svg>
  );
}
