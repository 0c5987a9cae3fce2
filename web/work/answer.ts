/** From a tank file to what the page draws. Keeps the last forecast, so that the hand can move through it. */
import type { SteelDraw } from '@hoopwright/core/steel';
import {
  drawnTank,
  type Forecast,
  forecast,
  type ForecastOrders,
  type Moment,
  STANDARD_RISE,
} from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '@hoopwright/report/figure';
import { type Stance, stanceOf } from '@hoopwright/report/drawing';
import { usualOrders } from '@hoopwright/wire/forecast';
import { type Compared, comparisonOf, type Comparison, compareSheet } from '@hoopwright/wire/compare';
import { parseTankFile, type TankFile } from '@hoopwright/wire/tank';
import type { Ask, Cursor, ForecastView, MomentView, Reply } from './ask.ts';
import type { CouponEntry } from './coupon.ts';
import type { CouponView } from './couponView.ts';
import { momentOf } from './moment.ts';

/**
 * A first, rough answer in a tenth of the work of the exact one, without the log sheet's pressures: coarse mesh, long
 * steps. On the examples growth is within 0.01 % of girth and the maximum within 0.2 %; barrel yield within 1 %; first
 * yield, which is read at a layer, may be 7 % out. The exact answer follows.
 */
const ROUGH: ForecastOrders = {
  shell: { elements: 40, layers: 3 },
  rise: { ...STANDARD_RISE, firstStep: 0.2, largestOfVolume: 0.05, largestOfGrowth: 0.15, quicken: 2.2 },
  hold: { lengthen: 2 },
};

export class Board {
  private last: Forecast | undefined = undefined;
  private readonly clock: () => number;

  /** @param clock monotonic, ms */
  constructor(clock: () => number) {
    this.clock = clock;
  }

  answer({ file, fineness, cursor, steel }: Ask): Reply {
    const began = this.clock();
    const parsed = parseTankFile(file, steel === undefined ? {} : { flow: steel.flow });
    if (!parsed.ok) return { kind: 'refused', issues: parsed.issues };
    const { duty, notes, flowFrom } = parsed;
    const { tank } = parsed;
    const asMade = steel === undefined || parsed.file.steel.flow !== undefined ? tank : made(tank, steel);
    const result = forecast(asMade, duty, fineness === 'rough' ? ROUGH : usualOrders(asMade, duty));
    this.last = result;
    const stance = this.stance(cursor);
    return {
      kind: 'drawn',
      fineness,
      tank,
      ...(duty === undefined ? {} : { duty }),
      flowFrom,
      notes,
      thinnest: Math.min(...asMade.courses.map((course) => course.wall)),
      forecast: viewOf(result),
      ...(stance === undefined ? {} : { stance }),
      took: this.clock() - began,
    };
  }

  /** One row of the sheets compared. `file` was read before. */
  compare(file: unknown, wall: number, steel: SteelDraw | undefined): Compared {
    return compareSheet(
      tankFileOf(file),
      wall,
      steel === undefined ? {} : { withSteel: (tank) => made(tank, steel) },
    );
  }

  /** A coupon file, read by a part of the program that is fetched when the first one comes. */
  async coupon(bytes: Uint8Array, entry: CouponEntry, manner: Manner): Promise<CouponView> {
    const { couponView } = await import('./coupon.ts');
    return couponView(bytes, entry, manner);
  }

  comparison(
    file: unknown,
    rows: readonly Compared['row'][],
    unstretched: Compared['unstretched'],
  ): Comparison {
    return comparisonOf(tankFileOf(file), rows, unstretched);
  }

  /** The tank where the hand stands; undefined as welded, or before the first forecast. */
  stance(cursor: Cursor): Stance | undefined {
    if (this.last === undefined) return undefined;
    const moment = momentOf(this.last, cursor);
    return moment === undefined ? undefined : stanceOf(this.last, moment);
  }
}

function tankFileOf(file: unknown): TankFile {
  const parsed = parseTankFile(file);
  if (parsed.ok) return parsed.file;
  throw new Error('sheets were compared for a tank file that had been refused');
}

/** The tank made of a steel out of the range; its plate is that of the longest course. */
function made(tank: Tank, steel: SteelDraw): Tank {
  const plate = tank.courses.reduce((a, b) => (b.length > a.length ? b : a)).steel;
  return drawnTank(tank, plate, steel);
}

/** A moment of the path and a stop with a name are one record here too. */
export function viewOf(result: Forecast): ForecastView {
  const { target, firstYield, barrelYield, maximum, unstretched, arrived, held, released } = result;
  const path = result.path.map(bare);
  const same = (moment: Moment): MomentView => path[result.path.indexOf(moment)] ?? bare(moment);
  return {
    ...(target === undefined ? {} : { target }),
    ...(firstYield === undefined ? {} : { firstYield }),
    ...(barrelYield === undefined ? {} : { barrelYield }),
    ...(maximum === undefined ? {} : { maximum }),
    ...(unstretched === undefined ? {} : { unstretched }),
    ...(arrived === undefined ? {} : { arrived: same(arrived) }),
    ...(held === undefined ? {} : { held: same(held) }),
    ...(released === undefined
      ? {}
      : { released: { wall: released.wall, newYield: released.newYield, left: same(released.left) } }),
    mass: result.mass,
    remarks: result.remarks,
    start: bare(result.start),
    path,
    volume: result.datum.volume,
    girths: result.datum.girths,
  };
}

const bare = ({ state: _state, ...rest }: Moment): MomentView => rest;
