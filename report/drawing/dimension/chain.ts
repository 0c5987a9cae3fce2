/** Upright dimensions to the right of the tank: courses, then head depths and length, then the whole, each farther out. */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../../figure/manner.ts';
import type { Mark, Run } from '../../sheet/mark.ts';
import { figureRuns, type Shown } from '../../sheet/runs.ts';
import { besideDimension, extension, fitsBetween, uprightDimension } from './dimension.ts';
import type { Spot, View } from '../shape/view.ts';
import { depthOf } from '../shape/wall.ts';

interface Link {
  readonly from: number;
  readonly to: number;
  readonly runs: readonly Run[];
  readonly of: string;
}

const FIRST = 16;
const APART = 23;

/** Chains from the inside out; a chain that says nothing new is left out. */
export function chainsOf(tank: Tank, manner: Manner): Link[][] {
  const { bottom, top } = tank.heads;
  const [low, high] = [depthOf(bottom, tank.insideDiameter), depthOf(top, tank.insideDiameter)];
  const runs = (shown: Shown): Run[] => figureRuns(manner, { stated: true, ...shown });
  const length = (value: number, path?: string): Run[] =>
    runs({ quantity: 'length', value, ...(path === undefined ? {} : { path }) });
  const main: Link[] = [
    { from: 0, to: tank.length, runs: length(tank.length, 'barrel.length_mm'), of: 'length' },
  ];
  if (low > 0)
    main.unshift({ from: -low, to: 0, runs: length(low, depthPath(tank, 'bottom')), of: 'bottom depth' });
  if (high > 0)
    main.push({
      from: tank.length,
      to: tank.length + high,
      runs: length(high, depthPath(tank, 'top')),
      of: 'top depth',
    });
  const whole: Link = {
    from: -low,
    to: tank.length + high,
    runs: [{ text: '(' }, ...length(low + tank.length + high), { text: ')' }],
    of: 'whole height',
  };
  return [
    ...(tank.courses.length > 1 ? [courseLinks(tank, length)] : []),
    main,
    ...(main.length > 1 ? [[whole]] : []),
  ];
}

/** A depth can be stated only where the head has one; elsewhere it follows from the radii. */
const depthPath = (tank: Tank, end: 'top' | 'bottom'): string | undefined =>
  tank.heads[end].shape.kind === 'semi-ellipsoidal' ? `heads.${end}.depth_mm` : undefined;

function courseLinks(tank: Tank, length: (value: number, path: string) => Run[]): Link[] {
  let foot = 0;
  return tank.courses.map((course, i) => {
    const from = foot;
    foot += course.length;
    return {
      from,
      to: foot,
      runs: length(course.length, `barrel.courses[${i}].length_mm`),
      of: `course ${i + 1}`,
    };
  });
}

/** Room that one chain takes: more where a figure must stand beside its line. */
function chainWidth(view: Pick<View, 'perMm'>, links: readonly Link[]): number {
  const beside = links.filter((link) => !fitsBetween((link.to - link.from) * view.perMm, link.runs));
  return APART + Math.max(0, ...beside.map(({ runs }) => besideDimension(runs) - 6));
}

/** Room that the chains take beside the tank. */
export const chainsWidth = (view: Pick<View, 'perMm'>, chains: readonly (readonly Link[])[]): number =>
  FIRST + chains.reduce((sum, links) => sum + chainWidth(view, links), 0);

/** @param outside drawn outside contour of the section half: extension lines begin clear of it */
export function chainMarks(
  view: View,
  chains: readonly (readonly Link[])[],
  start: number,
  outside: readonly Spot[],
): Mark[] {
  const y = (z: number): number => view.base - z * view.perMm;
  let next = start + FIRST;
  const lines = chains.map((links) => {
    const x = next + APART / 2;
    next += chainWidth(view, links);
    return { links, x };
  });
  const farthest = new Map<number, number>();
  for (const { links, x } of lines)
    for (const { from, to } of links) for (const z of [from, to]) farthest.set(z, x);
  const clear = (z: number): number => view.axis + clearRadius(outside, z) * view.perMm + 4;
  return [
    ...[...farthest].map(([z, x]) => extension(y(z), clear(z), x)),
    ...lines.flatMap(({ links, x }) =>
      links.flatMap((link) =>
        uprightDimension(x, {
          low: y(link.from),
          high: y(link.to),
          runs: link.runs,
          of: `dimension: ${link.of}`,
        }),
      ),
    ),
  ];
}

/** Radius at which a level line leaves the drawn wall. */
function clearRadius(outside: readonly Spot[], z: number): number {
  let most = 0;
  for (let i = 1; i < outside.length; i++) {
    const [a, b] = [outside[i - 1], outside[i]];
    if (Math.min(a.z, b.z) > z || Math.max(a.z, b.z) < z) continue;
    most = Math.max(most, a.r, b.r);
  }
  return most;
}
