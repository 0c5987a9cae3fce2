/** Where everything stands on the sheet: scale, place of the tank, room for dimensions and names. */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../figure/manner.ts';
import { FRAME, PER_MM } from '../sheet/frame.ts';
import type { Box } from '../sheet/measure.ts';
import { BLOCK_WIDTH } from '../sheet/titleBlock.ts';
import { chainsOf, chainsWidth } from './dimension/chain.ts';
import { headLines, noteHeight } from './dimension/headNotes.ts';
import { levelsWidth, type NamesStand, namesStand } from './dimension/heights.ts';
import { besideWidth } from './dimension/inside.ts';
import { type Level, levelsOf } from './dimension/levels.ts';
import { formedWall } from './shape/formed.ts';
import type { Stance } from './shape/stance.ts';
import { type Extent, extentOf, SCALES, type View, wallTimes } from './shape/view.ts';
import { wallOf, type WallPiece } from './shape/wall.ts';
import { type TankSheet, type Times, TIMES } from './tankSheet.ts';

export const INSET = 16;
export const HEADING = 52;

/** Room for the drawing on the sheet: left of the title block. */
const ON_SHEET: Box = {
  left: FRAME.left + INSET,
  right: FRAME.right - BLOCK_WIDTH - 1.5 * INSET,
  top: FRAME.top + 14,
  bottom: FRAME.bottom - 14,
};

export interface Laid {
  readonly tank: Tank;
  readonly view: View;
  readonly times: Times;
  readonly before: readonly WallPiece[];
  readonly now: readonly WallPiece[];
  readonly extent: Extent;
  /** x where lettering beside the wall and where the chains begin. */
  readonly beside: number;
  readonly chains: number;
  readonly levels: readonly Level[];
  readonly names: NamesStand;
  /** What nothing of the tank passes. */
  readonly room: Box;
}

/** Scale and place: the largest round scale at which tank, dimensions and names stand side by side. */
export function layOut(sheet: TankSheet, manner: Manner): Laid {
  const { tank } = sheet;
  const before = wallOf(tank);
  const whole = sheet.room ?? ON_SHEET;
  const heading = sheet.room === undefined ? HEADING : 0;
  const room = {
    ...whole,
    top: whole.top + Math.max(heading, noteHeight(headLines(tank, 'top', manner))) + 8,
    bottom: whole.bottom - noteHeight(headLines(tank, 'bottom', manner)) - 8,
  };
  const levels = levelsOf(tank, manner);
  const chains = chainsOf(tank, manner);
  const trialAt = trialsFor(sheet, before);
  const tryAt = (scale: number) => {
    const trial = trialAt(scale);
    const { view, extent } = trial;
    const beside = besideWidth(view, tank, manner);
    const names = namesStand(view, tank, levels);
    const left = levelsWidth(levels, names);
    const width = left + 2 * extent.r * view.perMm + beside + chainsWidth(view, chains);
    const height = (extent.high - extent.low) * view.perMm;
    return {
      ...trial,
      beside,
      names,
      left,
      spare: { x: room.right - room.left - width, y: room.bottom - room.top - height },
    };
  };
  const scale = SCALES.find((one) => {
    const { spare } = tryAt(one);
    return spare.x >= 0 && spare.y >= 0;
  });
  const fits = tryAt(scale ?? SCALES[SCALES.length - 1]);
  const { view, extent, spare } = fits;
  const axis = room.left + spare.x / 2 + fits.left + extent.r * view.perMm;
  const base = room.bottom - spare.y / 2 + extent.low * view.perMm;
  const right = axis + extent.r * view.perMm;
  return {
    ...fits,
    tank,
    before,
    levels,
    view: { ...view, axis, base },
    beside: right,
    chains: right + fits.beside,
    room: whole,
  };
}

type Trial = Pick<Laid, 'view' | 'times' | 'now' | 'extent'>;

/** The tank as it would stand at a scale. Walls carried along are kept, for they cost more than all the rest. */
function trialsFor(
  { tank, stance, roomFor, times }: TankSheet,
  before: readonly WallPiece[],
): (scale: number) => Trial {
  const kept = new Map<string, WallPiece[]>();
  const formed = (which: Stance, name: string, chosen: Times): readonly WallPiece[] => {
    const key = `${name} ${chosen}`;
    const known = kept.get(key) ?? formedWall(before, which.profile, chosen);
    kept.set(key, known);
    return known;
  };
  const walls = (kind: (one: WallPiece['kind']) => boolean): number[] =>
    before.filter((piece) => kind(piece.kind)).map(({ points: [first] }) => first.wall);
  const thinnest = Math.min(...walls((kind) => kind !== 'thick'));
  const thickest = Math.max(0, ...walls((kind) => kind === 'thick'));
  return (scale) => {
    const perMm = PER_MM / scale;
    const drawn = wallTimes(thinnest, thickest, perMm);
    const chosen = times ?? timesFor(roomFor ?? stance, perMm);
    const now = stance === undefined ? before : formed(stance, 'now', chosen);
    const most = roomFor === undefined ? now : formed(roomFor, 'most', chosen);
    return {
      times: chosen,
      now,
      extent: extentOf([before, now, most], tank, drawn),
      view: { axis: 0, base: 0, perMm, scale, ...drawn },
    };
  };
}

/** Growth that is seen: this far on the sheet. */
const SEEN = 5;

function timesFor(stance: Stance | undefined, perMm: number): Times {
  if (stance === undefined) return 1;
  const most = Math.max(...stance.profile.map((p) => Math.hypot(p.r - p.r0, p.z - p.z0)));
  return TIMES.find((times) => times * most * perMm >= SEEN) ?? 20;
}
