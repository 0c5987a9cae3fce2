/** The tank as it stands: form from the forecast, growth as measured, drawn some times over and saying so. */
import { tankView } from '@hoopwright/report/drawing';
import type { Scene } from '@hoopwright/report/sheet';
import { useEffect, useMemo } from 'react';
import { metalOf } from '../../chart/crop.ts';
import { SceneView } from '../../chart/SceneView.tsx';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { useDay } from '../state/live.ts';
import { openTank, standAt, useTank } from '../state/tank.ts';
import { girthMarks } from './girthMarks.ts';

/** @param place whose girth is marked: where something is measured */
export function DayTank({ place }: { readonly place?: string | undefined }) {
  const record = useDay((d) => d.record);
  const there = useDay((d) => d.state !== undefined);
  useEffect(() => {
    if (there) void openTank(record);
  }, [record, there]);
  useFollowing();
  const { tank, why } = useTank();
  return (
    <figure className="day-tank" aria-label={say('tankTitle')}>
      {tank === undefined ? (
        <p className="quiet">{say(why === 'none' ? 'tankNone' : 'tankDrawing')}</p>
      ) : (
        <Drawn place={place} />
      )}
    </figure>
  );
}

function useFollowing(): void {
  const growth = useDay((d) => d.state?.figures.growth?.value);
  const bar = useDay((d) => d.state?.figures.pressure?.value);
  const phase = useDay((d) => d.state?.phase);
  const ready = useTank((t) => t.tank !== undefined);
  useEffect(() => {
    if (ready && growth !== undefined && phase !== undefined) void standAt(growth, bar ?? 0, phase);
  }, [ready, growth, bar, phase]);
}

/** How many times the growth is drawn: a few percent of girth fill the room then. */
const TIMES = 5;

function Drawn({ place }: { readonly place: string | undefined }) {
  const { tank, stance, most } = useTank();
  const channels = useDay((d) => d.state?.channels);
  const manner = useManner();
  const sheet = useMemo(
    () =>
      tank === undefined
        ? undefined
        : ({
            tank,
            times: TIMES,
            block: { title: tank.name, forecast: 'current', invented: false },
            ...(most === undefined ? {} : { roomFor: most }),
          } as const),
    [tank, most],
  );
  const box = useMemo(() => {
    if (sheet === undefined) return undefined;
    const { roomFor } = sheet;
    const { metal } = tankView(roomFor === undefined ? sheet : { ...sheet, stance: roomFor });
    return metalOf(sceneOf(metal)).box;
  }, [sheet]);
  const view = useMemo(
    () => (sheet === undefined ? undefined : tankView(stance === undefined ? sheet : { ...sheet, stance })),
    [sheet, stance],
  );
  const state = useDay((d) => d.state);
  const names = useMemo(
    () =>
      view === undefined || tank === undefined || state === undefined
        ? []
        : girthMarks({ tank, state, view: view.laid.view, manner, place }),
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- only the channels of the state are drawn
    [view, tank, channels, manner, place],
  );
  if (view === undefined || box === undefined) return null;
  const wide = {
    left: box.left - NAMES,
    top: box.top - 8,
    width: box.width + NAMES,
    height: box.height + 16,
  };
  return (
    <>
      <SceneView scene={{ marks: [...view.metal, ...names], title: say('tankTitle') }} box={wide} />
      <figcaption>{stance === undefined ? say('tankWelded') : say('tankTimes', { times: TIMES })}</figcaption>
    </>
  );
}

/** Room left of the tank for the names of the girths, sheet units. */
const NAMES = 190;

const sceneOf = (marks: Scene['marks']): Scene => ({ width: 0, height: 0, title: '', marks, patches: [] });
