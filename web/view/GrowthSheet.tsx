/** The sheet of growth: the curve and its handle, the tank beside it, what it means, and the sheets one can buy. */
import { useMemo, useState } from 'react';
import { rangesOf } from '../chart/bands.ts';
import { metalOf } from '../chart/crop.ts';
import { GrowthChart } from '../chart/GrowthChart.tsx';
import { SceneView } from '../chart/SceneView.tsx';
import { tankScene } from '../chart/tankScene.ts';
import { useBoard } from '../state/board.ts';
import { useManner } from '../state/manner.ts';
import { useStretchRange } from '../state/server/useStretchRange.ts';
import { useLooking } from '../state/view.ts';
import type { MomentView } from '../work/ask.ts';
import { momentOf } from '../work/moment.ts';
import { words } from '../words/say.ts';
import { AtHand } from './said/AtHand.tsx';
import { Comparison } from './table/Comparison.tsx';
import { CurveTable } from './table/CurveTable.tsx';
import { KeyFigures } from './said/KeyFigures.tsx';
import { StateWords } from './said/StateWords.tsx';
import { TitleBlock } from './said/TitleBlock.tsx';

export function GrowthSheet() {
  const drawn = useBoard((b) => b.drawn);
  const cursor = useBoard((b) => b.cursor);
  const stretch = useStretchRange();
  const ranges = useMemo(() => (stretch === undefined ? undefined : rangesOf(stretch)), [stretch]);
  const [hovered, setHovered] = useState<MomentView>();
  const moment =
    drawn === undefined ? undefined : (hovered ?? momentOf(drawn.forecast, cursor) ?? drawn.forecast.start);
  return (
    <main className="sheet growth-sheet">
      <StateWords />
      {drawn === undefined ? <div /> : <GrowthChart drawn={drawn} ranges={ranges} onHover={setHovered} />}
      <div className="beside">
        <SmallTank />
        <div>
          {drawn === undefined || moment === undefined ? null : <AtHand drawn={drawn} moment={moment} />}
        </div>
        <KeyFigures />
      </div>
      <CurveTable />
      <Comparison />
      <TitleBlock type={words('typeGrowth')} sheet="3" />
    </main>
  );
}

function SmallTank() {
  const drawn = useBoard((b) => b.drawn);
  const stance = useBoard((b) => b.stance);
  const manner = useManner();
  const { times, colour } = useLooking();
  const small = useMemo(
    () => (drawn === undefined ? undefined : metalOf(tankScene({ drawn, stance, times, colour, manner }))),
    [drawn, stance, times, colour, manner],
  );
  return small === undefined ? (
    <div />
  ) : (
    <SceneView scene={small.scene} box={small.box} className="small-tank" />
  );
}
