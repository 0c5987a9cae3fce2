/** The tank on the board: figures are changed where they stand, a place on the wall is pointed at. */
import { scaleOf } from '@hoopwright/report/figure';
import type { Patch, Run, Text } from '@hoopwright/report/sheet';
import { type KeyboardEvent, type RefObject, useCallback, useMemo, useRef } from 'react';
import { drawingOf, legendOf } from '../chart/crop.ts';
import { SceneView } from '../chart/SceneView.tsx';
import { tankScene } from '../chart/tankScene.ts';
import { useBoard } from '../state/board.ts';
import { useManner } from '../state/manner.ts';
import { look, useLooking } from '../state/view.ts';
import { words } from '../words/say.ts';
import { nameOf } from '../words/names.ts';
import { InPlace } from './field/InPlace.tsx';

export function TankDrawing() {
  const drawn = useBoard((b) => b.drawn);
  const stance = useBoard((b) => b.stance);
  const manner = useManner();
  const { times, colour } = useLooking();
  const drawnFor = useBoard((b) => b.drawnFor);
  const around = useRef<HTMLDivElement>(null);
  const whole = useMemo(
    () => (drawn === undefined ? undefined : tankScene({ drawn, stance, times, colour, manner })),
    [drawn, stance, times, colour, manner],
  );
  const cropped = useMemo(() => (whole === undefined ? undefined : drawingOf(whole)), [whole]);
  const legend = useMemo(() => (whole === undefined ? undefined : legendOf(whole)), [whole]);
  const figure = useCallback((run: Run, _: Text, key: string) => <Figure run={run} name={key} />, []);
  if (cropped === undefined || whole === undefined) return <div className="drawing" ref={around} />;
  return (
    <div className="drawing" ref={around} data-drawn={drawnFor} data-fineness={drawn?.fineness}>
      <SceneView scene={cropped.scene} box={cropped.box} className="tank" figure={figure}>
        <Wall patches={whole.patches} />
      </SceneView>
      <p className="scale-notes small">
        {(whole.enlarged ?? []).map((text) => (
          <span key={text}>{text}</span>
        ))}
      </p>
      {legend === undefined ? null : <SceneView scene={legend.scene} box={legend.box} className="legend" />}
      <InPlaceHere around={around} />
    </div>
  );
}

function InPlaceHere({ around }: { readonly around: RefObject<HTMLDivElement | null> }) {
  const editing = useLooking((l) => l.editing);
  return editing === undefined ? null : <InPlace key={editing.name} {...editing} around={around} />;
}

/** A figure of the drawing that the hand can change: a button that reads as the figure it is. */
function Figure({ run, name }: { readonly run: Run; readonly name: string }) {
  const manner = useManner();
  const path = run.figure?.path ?? '';
  const quantity = run.figure?.quantity ?? 'length';
  const { unit } = scaleOf(manner.units, quantity);
  const open = (): void => look({ editing: { path, name } });
  const key = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    open();
  };
  return (
    <tspan
      className={`figure${run.bold === true ? ' strong' : ''}`}
      data-path={path}
      data-name={name}
      data-quantity={quantity}
      role="button"
      tabIndex={0}
      aria-label={words('figureChange', { name: nameOf(path), value: run.text, unit })}
      onClick={open}
      onKeyDown={key}
    >
      {run.text}
    </tspan>
  );
}

/** The wall of the section, to be pointed at: by the hand, or along it with the arrow keys. */
function Wall({ patches }: { readonly patches: readonly Patch[] }) {
  const place = useLooking((l) => l.place);
  const at = place === undefined ? -1 : nearestPatch(patches, place);
  const show = (i: number): void => {
    const patch = patches[Math.max(0, Math.min(patches.length - 1, i))];
    look({ place: { part: patch.part, z: patch.z } });
  };
  const key = (event: KeyboardEvent): void => {
    const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[
      event.key
    ];
    if (event.key === 'Escape') look({ place: undefined });
    if (by === undefined) return;
    event.preventDefault();
    show(at < 0 ? Math.floor(patches.length / 2) : at + by);
  };
  const pointed = at < 0 ? undefined : patches[at];
  return (
    <g
      className="wall"
      role="slider"
      tabIndex={0}
      aria-label={words('wallSlider')}
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={patches.length - 1}
      aria-valuenow={Math.max(0, at)}
      aria-valuetext={
        pointed === undefined
          ? words('wallNowhere')
          : words('wallAt', { part: pointed.part, height: Math.round(pointed.z) })
      }
      onKeyDown={key}
    >
      {patches.map((patch, i) => (
        <path key={i} className="patch" d={outline(patch)} onClick={() => show(i)} />
      ))}
      {pointed === undefined ? null : <path className="pointed" d={outline(pointed)} />}
    </g>
  );
}

const outline = ({ points }: Patch): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}Z`;

const nearestPatch = (
  patches: readonly Patch[],
  { part, z }: { readonly part: string; readonly z: number },
): number => {
  let best = -1;
  patches.forEach((patch, i) => {
    if (patch.part === part && (best < 0 || Math.abs(patch.z - z) < Math.abs(patches[best].z - z))) best = i;
  });
  return best;
};
