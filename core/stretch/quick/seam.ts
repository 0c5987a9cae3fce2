/** A drawn long seam beside its plate: what it is strained by, and where it carries no more. */
import { peak, root } from '../../math/root.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { flowOf } from '../../steel/flow.ts';
import { type QuickPath, valueAt } from './path.ts';

const PLASTIC_PER_HOOP = 2 / Math.sqrt(3);
const scratch = new Float64Array(2);

/** Growth of girth (fraction); undefined for a seam as strong as the plate. Strip in series, plane strain, flush. */
export function seamLimit(draw: SteelDraw): number | undefined {
  if (draw.seamStrength >= 1) return undefined;
  const flow = flowOf(draw.flow, draw.biaxialFactor);
  const force = (hoop: number, worked: number): number => {
    flow.at(PLASTIC_PER_HOOP * hoop + worked, scratch);
    return scratch[0] * Math.exp(-hoop);
  };
  const plateTop = peak((hoop) => force(hoop, draw.coldWork), 0, 2);
  const bears = draw.seamStrength * peak((hoop) => force(hoop, 0), 0, 2).value;
  if (bears >= plateTop.value) return undefined;
  if (bears <= force(0, draw.coldWork)) return 0;
  return Math.expm1(root((hoop) => force(hoop, draw.coldWork) - bears, 0, plateTop.x));
}

/**
 * Strain across the long seam (fraction of its own width) by the growth of the plate beside it; Infinity where it parts.
 * A flush strip under the hoop force of the plate, plane strain, not cold worked: welding takes the rolling out of it.
 * Rates are taken as alike, and so are the elastic shares of both.
 */
export function seamStrain(draw: SteelDraw, path: QuickPath): (growth: number) => number {
  const flow = flowOf(draw.flow, draw.biaxialFactor);
  const force = (hoop: number): number => {
    flow.at(PLASTIC_PER_HOOP * hoop, scratch);
    return draw.seamStrength * scratch[0] * Math.exp(-hoop);
  };
  const top = peak(force, 0, 2);
  const yielded = path.pressure[path.plastic.findIndex((ep) => ep > 0)];
  return (growth) => {
    const at = Math.max(growth, path.growth[0]);
    const plate = valueAt(path.growth, path.plastic, at) / PLASTIC_PER_HOOP;
    const share = plate > 0 ? 1 : Math.min(1, valueAt(path.growth, path.pressure, at) / yielded);
    const asked = share * valueAt(path.growth, path.flow, at) * Math.exp(-plate);
    if (asked > top.value) return Infinity;
    const seam = asked <= force(0) ? 0 : root((hoop) => force(hoop) - asked, 0, top.x);
    return Math.expm1(Math.log1p(growth) - plate + seam);
  };
}
