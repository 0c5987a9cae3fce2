/** A dimension that the file does not state itself: the one that the tank on the board has. Inside units. */
import type { Drawn } from '../../work/ask.ts';

export function figureOf({ tank, duty }: Drawn, path: string): number | undefined {
  const head = /^heads\.(top|bottom)\.(\w+)$/.exec(path);
  if (head !== null) return headFigure(head[1] === 'top' ? tank.heads.top : tank.heads.bottom, head[2]);
  const course = /^barrel\.courses\[(\d+)\]\.wall_mm$/.exec(path);
  if (course !== null) return tank.courses[Number(course[1])]?.wall;
  const girth = /^girths\[(\d+)\]\.at_mm$/.exec(path);
  if (girth !== null) return tank.girths[Number(girth[1])]?.at;
  if (path === 'stand.gauge_mm') return tank.stand?.gauge;
  if (path === 'duty.stretchFactor') return duty?.stretchFactor;
  return undefined;
}

function headFigure(head: Drawn['tank']['heads']['top'], key: string): number | undefined {
  const { shape } = head;
  if (key === 'wall_mm') return head.wall;
  if (key === 'straightFlange_mm') return head.straightFlange;
  if (key === 'depth_mm' && shape.kind === 'semi-ellipsoidal') return shape.depth;
  if (key === 'crownRadius_mm' && shape.kind === 'torispherical') return shape.crownRadius;
  if (key === 'knuckleRadius_mm' && 'knuckleRadius' in shape) return shape.knuckleRadius;
  return undefined;
}
