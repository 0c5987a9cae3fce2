/**
 * The tank to scale on a drawing sheet, half in section: as welded (long-dashed double-dotted) and as it stands at one
 * moment of its stretch, with its dimensions, its girths and what they grow to. A pure function from values to a scene.
 */
import type { Tank } from '@hoopwright/core/tank';
import { say, sayStated } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { fixed } from '../figure/figure.ts';
import { FRAME, frame, PER_MM, SHEET_HEIGHT, SHEET_WIDTH } from '../sheet/frame.ts';
import { area, LARGE, lettering, type Mark, type Patch, type Scene, SMALL, stroke } from '../sheet/mark.ts';
import { noteList } from '../sheet/noteList.ts';
import { BLOCK_HEIGHT, BLOCK_WIDTH, type TitleBlock, titleBlock } from '../sheet/titleBlock.ts';
import { sentence } from '../words/sentence.ts';
import { chainMarks, chainsOf, chainsWidth } from './chain.ts';
import { colourOf, type Field } from './field.ts';
import { formedWall } from './formed.ts';
import { headLines, noteHeight, noteMarks, noteWidth } from './headNotes.ts';
import { carriedOutside, levelMarks, levelsOf, levelsWidth, type NamesStand, namesStand } from './heights.ts';
import { besideWidth, diameterMarks, wallMarks } from './inside.ts';
import { outsideContour, outsideFace, outsideMarks } from './outside.ts';
import { baffleMarks, insideFace, patchesOf, sectionMarks, skirtMarks } from './section.ts';
import type { Stance } from './stance.ts';
import { growthTable, legend, type States } from './table.ts';
import { type Extent, extentOf, onLeft, onRight, SCALES, type View, wallTimes } from './view.ts';
import { wallOf, type WallPiece } from './wall.ts';

export interface TankSheet {
  readonly tank: Tank;
  /** What stands on the sheet; absent: the tank as welded. */
  readonly stance?: Stance;
  /** How many times the growth is drawn; absent: the least of 1, 5, 10, 20 that can be seen. */
  readonly times?: Times;
  /** Figures of the table; absent: no table. */
  readonly states?: States;
  /** Colours of the wall instead of hatching; belongs to the profile of `stance`. */
  readonly field?: Field;
  readonly block: TitleBlock;
  readonly manner?: Manner;
}

export type Times = 1 | 5 | 10 | 20;
export const TIMES: readonly Times[] = [1, 5, 10, 20];

const INSET = 16;
const HEADING = 52;

export function tankDrawing(sheet: TankSheet): Scene {
  const manner = sheet.manner ?? USUAL_MANNER;
  const laid = layOut(sheet, manner);
  const { view, tank } = laid;
  const column = { left: FRAME.right - BLOCK_WIDTH + 4, width: BLOCK_WIDTH - INSET - 4 };
  const notes = noteList(column, FRAME.bottom - BLOCK_HEIGHT - 12, notesOf(sheet, laid, manner));
  const table =
    sheet.states === undefined
      ? { marks: [], bottom: FRAME.top + INSET }
      : growthTable(column, FRAME.top + INSET - 4, tank, sheet.states, manner);
  const key = sheet.field === undefined ? [] : legend(column, table.bottom + 14, sheet.field, manner).marks;
  const patches = patchesOf(view, laid.before, laid.now);
  return {
    width: SHEET_WIDTH,
    height: SHEET_HEIGHT,
    title: sentence(manner, 'drawingTitle', { tank: sheet.block.title, state: stateOf(sheet, manner) }),
    patches,
    marks: [
      ...frame(),
      ...heading(sheet, laid, manner),
      ...tankMarks(sheet, laid, patches),
      ...dimensionMarks(laid, manner),
      ...table.marks,
      ...key,
      ...notes.marks,
      ...titleBlock(
        sheet.block,
        {
          documentType: sentence(manner, 'drawingType'),
          scale: scaleText(view.scale, manner),
          sheet: '1/1',
        },
        manner,
        [FRAME.right, FRAME.bottom],
      ),
    ],
  };
}

const scaleText = (scale: number, manner: Manner): string =>
  scale >= 1 ? `1:${fixed(manner, scale, scale % 1 === 0 ? 0 : 1)}` : `${fixed(manner, 1 / scale, 0)}:1`;

interface Laid {
  readonly tank: Tank;
  readonly view: View;
  readonly times: Times;
  readonly before: readonly WallPiece[];
  readonly now: readonly WallPiece[];
  readonly extent: Extent;
  /** x where lettering beside the wall and where the chains begin. */
  readonly beside: number;
  readonly chains: number;
  readonly names: NamesStand;
  /** x that nothing of the tank passes. */
  readonly limit: number;
}

/** Scale and place: the largest round scale at which tank, dimensions and names stand side by side. */
function layOut(sheet: TankSheet, manner: Manner): Laid {
  const { tank } = sheet;
  const before = wallOf(tank);
  const room = {
    left: FRAME.left + INSET,
    right: FRAME.right - BLOCK_WIDTH - 2 * INSET,
    top: FRAME.top + 14 + Math.max(HEADING, noteHeight(headLines(tank, 'top', manner))) + 8,
    bottom: FRAME.bottom - 14 - noteHeight(headLines(tank, 'bottom', manner)) - 8,
  };
  const levels = levelsOf(tank, manner);
  const chains = chainsOf(tank, manner);
  const trials = SCALES.map((scale) => {
    const trial = trialAt(sheet, before, scale);
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
  });
  const fits = trials.find(({ spare }) => spare.x >= 0 && spare.y >= 0) ?? trials[trials.length - 1];
  const { view, extent, spare } = fits;
  const axis = room.left + spare.x / 2 + fits.left + extent.r * view.perMm;
  const base = room.bottom - spare.y / 2 + extent.low * view.perMm;
  const right = axis + extent.r * view.perMm;
  return {
    ...fits,
    tank,
    before,
    view: { ...view, axis, base },
    beside: right,
    chains: right + fits.beside,
    limit: room.right + INSET / 2,
  };
}

function trialAt(
  { tank, stance, times }: TankSheet,
  before: readonly WallPiece[],
  scale: number,
): Pick<Laid, 'view' | 'times' | 'now' | 'extent'> {
  const perMm = PER_MM / scale;
  const drawn = wallTimes(tank, perMm);
  const chosen = times ?? timesFor(stance, perMm);
  const now = stance === undefined ? before : formedWall(before, stance.profile, chosen);
  return {
    times: chosen,
    now,
    extent: extentOf([before, now], tank, drawn),
    view: { axis: 0, base: 0, perMm, scale, ...drawn },
  };
}

/** Growth that is seen: this far on the sheet. */
const SEEN = 5;

function timesFor(stance: Stance | undefined, perMm: number): Times {
  if (stance === undefined) return 1;
  const most = Math.max(...stance.profile.map((p) => Math.hypot(p.r - p.r0, p.z - p.z0)));
  return TIMES.find((times) => times * most * perMm >= SEEN) ?? 20;
}

/** The tank itself: cut and outside, centre line, initial outline on top. */
function tankMarks(sheet: TankSheet, laid: Laid, patches: readonly Patch[]): Mark[] {
  const { view, tank, times, before, now, extent } = laid;
  const branches = sheet.stance?.branches ?? [];
  const formed = sheet.stance !== undefined;
  const past = 12 / view.perMm;
  return [
    ...skirtMarks(view, tank, branches, times),
    ...(sheet.field === undefined ? [] : colours(sheet.field, patches)),
    ...sectionMarks(view, now, sheet.field === undefined),
    ...baffleMarks(view, tank, branches, times),
    ...outsideMarks(view, tank, now, branches, times),
    ...(formed
      ? [
          stroke('initial', outsideFace(view, before), 'initial outline'),
          stroke('initial', insideFace(view, before), 'initial outline'),
        ]
      : []),
    stroke(
      'centre',
      [onRight(view, { r: 0, z: extent.low - past }), onRight(view, { r: 0, z: extent.high + past })],
      'centre line',
    ),
  ];
}

/** Three bands through the wall, inside to outside, so that bending is seen. */
function colours(field: Field, patches: readonly Patch[]): Mark[] {
  return patches.flatMap(({ place, points }) => {
    if (place === undefined) return [];
    const { inside, mid, outside } = field.values[place];
    const [a, b, c, d] = points;
    const along = (p: Patch['points'][number], q: Patch['points'][number], f: number) =>
      [p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])] as const;
    return [inside, mid, outside].map((value, k) =>
      area(
        { kind: 'colour', colour: colourOf(field, value) },
        [along(a, d, k / 3), along(b, c, k / 3), along(b, c, (k + 1) / 3), along(a, d, (k + 1) / 3)],
        'wall colour',
      ),
    );
  });
}

function dimensionMarks(laid: Laid, manner: Manner): Mark[] {
  const { view, tank, before, now, extent } = laid;
  const outside = outsideContour(view, now);
  const carried = (z: number) => carriedOutside(view, before, now, z);
  const bare = { ...view, walls: 0, bosses: 0 };
  const beside = {
    left: laid.beside,
    faces: (z: number) => ({ inside: carriedOutside(bare, before, now, z), outside: carried(z) }),
  };
  return [
    ...chainMarks(view, chainsOf(tank, manner), laid.chains, outside),
    ...levelMarks(
      view,
      levelsOf(tank, manner),
      {
        tankLeft: onLeft(view, { r: extent.r, z: 0 })[0],
        top: FRAME.top + 14 + HEADING + 16,
        bottom: FRAME.bottom - 20,
        names: laid.names,
      },
      carried,
    ),
    ...wallMarks(view, tank, manner, beside),
    ...diameterMarks(view, tank, manner, beside),
    ...headNoteMarks(laid, manner, 'top'),
    ...headNoteMarks(laid, manner, 'bottom'),
  ];
}

function headNoteMarks(
  { view, tank, now, extent, limit }: Laid,
  manner: Manner,
  end: 'top' | 'bottom',
): Mark[] {
  const lines = headLines(tank, end, manner);
  const head = now.filter((piece) => piece.part === `${end} head` && piece.kind === 'head');
  const x = Math.min(view.axis + 0.62 * extent.r * view.perMm, limit - noteWidth(lines));
  const y = (z: number): number => view.base - z * view.perMm;
  const foot = end === 'top' ? y(extent.high) - 8 : y(extent.low) + 8 + noteHeight(lines);
  // The leader comes from the left of its lines, so that it crosses none of them.
  const wanted = Math.min(0.5 * extent.r, (x - 14 - view.axis) / view.perMm);
  const aim = outsideContour(view, head).reduce((best, spot) =>
    Math.abs(spot.r - wanted) < Math.abs(best.r - wanted) ? spot : best,
  );
  return noteMarks(lines, [x, foot], onRight(view, aim), `${end} head`);
}

const stateOf = ({ stance }: TankSheet, manner: Manner): string => {
  if (stance === undefined) return sentence(manner, 'stateWelded');
  if (stance.phase === 'release' && stance.pressure < 1e-9) return sentence(manner, 'stateLeft');
  return sentence(manner, 'stateUnder', { pressure: say(manner, 'pressure', stance.pressure) });
};

function heading(sheet: TankSheet, { times }: Laid, manner: Manner): Mark[] {
  const [x, y] = [FRAME.left + INSET, FRAME.top + 14 + LARGE];
  const growth =
    times === 1 ? sentence(manner, 'growthOne') : sentence(manner, 'growthTimes', { times: String(times) });
  return [
    lettering([x, y], [{ text: stateOf(sheet, manner), bold: true }], { size: LARGE, of: 'heading' }),
    ...(sheet.stance === undefined
      ? []
      : [lettering([x, y + LARGE + 2], growth, { size: SMALL + 2, of: 'growth drawn' })]),
  ];
}

function notesOf(sheet: TankSheet, { view, times, tank }: Laid, manner: Manner): string[] {
  const growth =
    times === 1
      ? sentence(manner, 'noteGrowthOne')
      : sentence(manner, 'noteGrowth', { times: String(times) });
  const walls =
    view.walls === 1
      ? sentence(manner, 'noteWallsOne')
      : view.walls === view.bosses || !hasBoss(tank)
        ? sentence(manner, 'noteWalls', { times: String(view.walls) })
        : sentence(manner, 'noteWallsBosses', { times: String(view.walls), bosses: String(view.bosses) });
  return [
    sentence(manner, 'noteDimensions'),
    ...(sheet.stance === undefined ? [] : [`${sentence(manner, 'noteInitial')} ${growth}`]),
    walls,
    ...standNotes(tank, manner),
    ...(tank.longSeam === undefined
      ? []
      : [sentence(manner, 'noteLongSeam', { width: sayStated(manner, 'length', tank.longSeam.width) })]),
    sentence(manner, 'noteWrinkles'),
    sentence(manner, 'noteCaution'),
  ];
}

const hasBoss = ({ heads }: Tank): boolean => heads.top.boss !== undefined || heads.bottom.boss !== undefined;

function standNotes({ stand }: Tank, manner: Manner): string[] {
  if (stand === undefined) return [];
  if (stand.axis === 'lying') return [sentence(manner, 'noteLying')];
  return [sentence(manner, 'noteUpright', { gauge: sayStated(manner, 'length', stand.gauge) })];
}
