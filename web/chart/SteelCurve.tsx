/** The flow curve with its range: nine of ten, half, and the fine line of the middle. */
import { fixed, scaleOf } from '@hoopwright/report/figure';
import type { SteelAnswer } from '@hoopwright/wire/evidence';
import { useManner } from '../state/manner.ts';
import { words } from '../words/say.ts';
import { roundAxis } from './roundAxis.ts';

const WIDTH = 600;
const HEIGHT = 330;
const BOX = { left: 52, right: 588, top: 26, bottom: 286 };

export interface Dot {
  readonly plastic: number;
  readonly stress: number;
}

export interface SteelCurveProps {
  readonly curve: SteelAnswer['curve'];
  /** True curves as measured, thinned; those that do not count are left out. */
  readonly measured: readonly { readonly name: string; readonly dots: readonly Dot[] }[];
}

export function SteelCurve({ curve, measured }: SteelCurveProps) {
  const manner = useManner();
  const stress = scaleOf(manner.units, 'stress');
  const told = curve.filter(({ plastic_percent: p }) => p <= MOST);
  const top = Math.max(...told.map((c) => c.stress_MPa.nineOfTen[1] ?? 0)) / stress.one;
  const ys = roundAxis(top * 1.03, 6);
  const xs = roundAxis(MOST, 8);
  const x = (percent: number): number => BOX.left + ((BOX.right - BOX.left) * percent) / xs.most;
  const y = (mpa: number): number => BOX.bottom - ((BOX.bottom - BOX.top) * mpa) / stress.one / ys.most;
  const band = (low: (c: Told) => number | null, high: (c: Told) => number | null): string => {
    const up = told.map((c) => `${x(c.plastic_percent)} ${y(high(c) ?? 0)}`);
    const down = told.map((c) => `${x(c.plastic_percent)} ${y(low(c) ?? 0)}`).reverse();
    return `M${[...up, ...down].join('L')}Z`;
  };
  return (
    <svg
      className="scene steel-curve"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={words('steelCurveTitle')}
    >
      {ys.ticks.slice(1).map((tick) => (
        <path
          key={tick}
          className="line faint-line"
          strokeWidth={0.4}
          d={`M${BOX.left} ${y(tick * stress.one)}H${BOX.right}`}
        />
      ))}
      <path
        className="ink-fill"
        fillOpacity={0.1}
        d={band(
          (c) => c.stress_MPa.nineOfTen[0],
          (c) => c.stress_MPa.nineOfTen[1],
        )}
      />
      <path
        className="ink-fill"
        fillOpacity={0.15}
        d={band(
          (c) => c.stress_MPa.half[0],
          (c) => c.stress_MPa.half[1],
        )}
      />
      <path
        className="line ink-line"
        strokeWidth={0.8}
        d={`M${told.map((c) => `${x(c.plastic_percent)} ${y(c.stress_MPa.median ?? 0)}`).join('L')}`}
      />
      {measured.flatMap(({ name, dots }) =>
        dots
          .filter((dot) => dot.plastic * 100 <= MOST)
          .map((dot) => (
            <circle
              key={`${name} ${dot.plastic}`}
              className="ink-fill"
              cx={x(dot.plastic * 100)}
              cy={y(dot.stress)}
              r={1.5}
            />
          )),
      )}
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
          fontSize={11}
          textAnchor="middle"
        >
          {fixed(manner, tick, xs.digits)}
        </text>
      ))}
      {ys.ticks.map((tick) => (
        <text
          key={tick}
          className="ink-fill"
          x={BOX.left - 6}
          y={y(tick * stress.one) + 4}
          fontSize={11}
          textAnchor="end"
        >
          {fixed(manner, tick, ys.digits)}
        </text>
      ))}
      <text className="ink-fill" x={BOX.right} y={BOX.bottom + 32} fontSize={12} textAnchor="end">
        {words('steelAxisStrain')}
      </text>
      <text className="ink-fill" x={4} y={14} fontSize={12}>
        {words('steelAxisStress', { unit: stress.unit })}
      </text>
    </svg>
  );
}

type Told = SteelAnswer['curve'][number];

/** Plastic strain shown, percent: past any stretch. */
const MOST = 20;
