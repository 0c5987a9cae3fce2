/** Growth of the plate at which a drawn long seam carries no more. */
import { peak, root } from '../../math/root.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { flowOf } from '../../steel/flow.ts';

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
