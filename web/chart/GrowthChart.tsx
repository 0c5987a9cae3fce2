/** The growth curve of the report, with the handle on both of its panels. */
import {
  growthCurve,
  onPanel,
  type Panel,
  panelsFor,
  PUBLISHED_CEILING,
  type Ranges,
} from '@hoopwright/report/curve';
import type { Point } from '@hoopwright/report/sheet';
import { useMemo } from 'react';
import { useManner } from '../state/manner.ts';
import { words } from '../words/say.ts';
import type { Drawn, MomentView } from '../work/ask.ts';
import { chartOf } from './crop.ts';
import { Handle } from './Handle.tsx';
import { SceneView } from './SceneView.tsx';

export interface GrowthChartProps {
  readonly drawn: Drawn;
  readonly ranges?: Ranges | undefined;
  readonly onHover?: (moment: MomentView | undefined) => void;
}

export function GrowthChart({ drawn, ranges, onHover }: GrowthChartProps) {
  const manner = useManner();
  const { forecast, tank } = drawn;
  const { scene, box, girth, volume } = useMemo(() => {
    const panels = panelsFor(forecast, PUBLISHED_CEILING, manner);
    const whole = growthCurve({
      forecast,
      tank,
      ...(ranges === undefined ? {} : { ranges }),
      block: { title: tank.name, forecast: 'current', invented: false },
      manner,
    });
    return { ...chartOf(whole, panels.girth.bottom + 46), ...panels };
  }, [forecast, tank, ranges, manner]);
  const hover = onHover === undefined ? {} : { onHover };
  return (
    <SceneView scene={scene} box={box} className="chart">
      <Handle
        forecast={forecast}
        at={(m) => inside(girth, m.largest.growth, m.pressure)}
        box={girth}
        label={words('handGrowth')}
        {...hover}
      />
      <Handle
        forecast={forecast}
        at={(m) => inside(volume, m.pumped.all, m.pressure)}
        box={volume}
        label={words('handVolume')}
        {...hover}
      />
    </SceneView>
  );
}

const inside = (panel: Panel, x: number, pressure: number): Point | undefined =>
  x > panel.x.most || pressure > panel.y.most ? undefined : onPanel(panel, [Math.max(0, x), pressure]);
