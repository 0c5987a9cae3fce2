/**
 * Plate rolled to a barrel: what the rolls leave in it. In each pass the plate is bent past the radius wanted and springs
 * back; the last pass leaves the radius of the barrel. Three or four rolls differ in the flat ends they leave, not in this.
 */
import { root } from '../../math/root.ts';
import type { Metal } from '../plane.ts';
import { bentSlowly, bentTo, flatStrip, letGo, momentOf, type Strip } from './strip.ts';

/** State of one layer of rolled plate: the form in which the shell takes it. */
export interface RolledLayer {
  /** -1 inside face, +1 outside face. */
  readonly depth: number;
  /** Equivalent plastic strain. */
  readonly plastic: number;
  /** Residual Kirchhoff stresses, MPa: along the barrel, around the hoop. */
  readonly meridional: number;
  readonly hoop: number;
}

export interface Rolling {
  readonly thickness: number;
  /** Mid-surface radius of the finished barrel, mm. */
  readonly radius: number;
  readonly passes: number;
  /** Mid-surface radius, let go, of a pass that was bent too tight and opened again. */
  readonly tightest?: number;
  /** The same, as it was under the rolls. Springing back opens it by half and more; no tighter than needed: nothing. */
  readonly tightestUnderRolls?: number;
}

export interface Rolled {
  /** Inside to outside. */
  readonly layers: readonly RolledLayer[];
  /** Each pass: radius under the rolls and after letting go, moment per width (N). */
  readonly passes: readonly Pass[];
  /** Largest hoop strain of the finished shape, thickness/(2 radius). */
  readonly surfaceStrain: number;
  /** Equivalent plastic strain at the surface, and on average through the wall. */
  readonly surfacePlastic: number;
  readonly averagePlastic: number;
}

export interface Pass {
  readonly loadedRadius: number;
  readonly freeRadius: number;
  readonly moment: number;
}

/** Layers handed to the shell: enough that straight lines between them follow the residual stress. */
const LAYERS = 41;

/**
 * Rolls flat plate to a radius. Passes share the curvature equally. Throws where the wall is thicker than a tenth of the
 * radius: then the middle surface no longer stays unstretched.
 */
export const rolled = (metal: Metal, rolling: Rolling): Rolled => {
  const { thickness, radius, passes } = rolling;
  if (!(radius >= 10 * thickness && passes >= 1 && Number.isInteger(passes)))
    throw new Error(
      `plate of ${thickness} mm rolled to ${radius} mm in ${passes} passes: needs radius >= 10 x wall, passes >= 1`,
    );
  const free = freeCurvatures(metal, rolling);
  let strip = flatStrip(metal, thickness);
  const done: { loaded: number; pass: Pass }[] = [];
  for (const target of free) {
    const loaded = loadedCurvature(strip, target);
    const bent = bentSlowly(strip, loaded);
    strip = letGo(bent);
    done.push({
      loaded,
      pass: { loadedRadius: 1 / loaded, freeRadius: 1 / strip.curvature, moment: momentOf(bent) },
    });
  }
  return {
    layers: layersOf(
      metal,
      thickness,
      done.map(({ loaded }, k) => [loaded, free[k]]),
    ),
    passes: done.map(({ pass }) => pass),
    surfaceStrain: thickness / (2 * radius),
    surfacePlastic: layerPlastic(
      metal,
      thickness,
      done.map(({ loaded }, k) => [loaded, free[k]]),
    ),
    averagePlastic: strip.layers.reduce((sum, { plastic }, k) => sum + strip.weights[k] * plastic, 0),
  };
};

/** More passes than these leave the same strain to 0.01 % of it, and take as much longer. */
const MOST_PASSES = 8;

const freeCurvatures = (metal: Metal, rolling: Rolling): number[] => {
  const { radius, tightest = radius } = rolling;
  const passes = Math.min(rolling.passes, MOST_PASSES);
  const end = Math.min(radius, tightest, openedRadius(metal, rolling));
  const closing = Array.from({ length: passes }, (_, k) => (k + 1) / (passes * end));
  return end < radius ? [...closing, 1 / radius] : closing;
};

/** Radius that the tightest bend under the rolls opens to. */
const openedRadius = (metal: Metal, { thickness, tightestUnderRolls }: Rolling): number => {
  if (tightestUnderRolls === undefined) return Infinity;
  const { curvature } = letGo(bentSlowly(flatStrip(metal, thickness), 1 / tightestUnderRolls));
  return curvature > 0 ? 1 / curvature : Infinity;
};

/** Curvature under the rolls that leaves the target after letting go. */
const loadedCurvature = (strip: Strip, target: number): number => {
  const left = (curvature: number): number => letGo(bentSlowly(strip, curvature)).curvature - target;
  const wanted = target - strip.curvature;
  let beyond = target + 0.2 * wanted;
  while (left(beyond) * wanted < 0) beyond += 0.5 * (beyond - strip.curvature);
  return root(left, target, beyond, { width: 1e-9 * Math.abs(target) });
};

/** The history of loaded and free curvatures, run again at the depths wanted. */
const statesAt = (
  metal: Metal,
  thickness: number,
  { depths, history }: { depths: readonly number[]; history: readonly (readonly [number, number])[] },
): Strip =>
  history.reduce(
    (strip, [loaded, free]) => bentTo(bentSlowly(strip, loaded), free),
    flatStrip(metal, thickness, depths),
  );

const layersOf = (
  metal: Metal,
  thickness: number,
  history: readonly (readonly [number, number])[],
): RolledLayer[] => {
  const half = (LAYERS - 1) / 2;
  const depths = Array.from({ length: half + 1 }, (_, k) => k / half);
  const outer = statesAt(metal, thickness, { depths, history }).layers.map(
    ({ depth, plastic, meridional, hoop }) => ({ depth, plastic, meridional, hoop }),
  );
  const inner = outer
    .slice(1)
    .map(({ depth, plastic, meridional, hoop }) => ({
      depth: -depth,
      plastic,
      meridional: -meridional,
      hoop: -hoop,
    }))
    .reverse();
  return [...inner, ...outer];
};

const layerPlastic = (
  metal: Metal,
  thickness: number,
  history: readonly (readonly [number, number])[],
): number => statesAt(metal, thickness, { depths: [1], history }).layers[0].plastic;

/**
 * How much stiffer rolling makes the wall at a plastic strain of the stretch: mean flow stress over the layers against
 * the curve without rolling, as a fraction. Residual stress is left out: the stretch has wiped it out by then.
 */
export const stiffening = (metal: Metal, { layers }: Pick<Rolled, 'layers'>, plastic: number): number => {
  const flowAt = (ep: number): number => {
    metal.flow.at(ep, out);
    return out[0];
  };
  const plain = flowAt(plastic);
  // Trapezium over equal distances of depth.
  const sum = layers.reduce(
    (total, layer, k) =>
      total + flowAt(plastic + layer.plastic) * (k === 0 || k === layers.length - 1 ? 0.5 : 1),
    0,
  );
  return sum / (layers.length - 1) / plain - 1;
};

const out = new Float64Array(2);

/** The finding in figures: can rolling explain a tank that proved stiffer than its coupons? */
export interface RollingFinding {
  readonly surfacePlastic: number;
  readonly averagePlastic: number;
  /** Stiffening by rolling at that strain, fraction. */
  readonly stiffening: number;
  /** How much of the excess seen rolling explains, 0 to 1; the rest has another cause. */
  readonly explained: number;
}

/** `excess`: flow stress of the tank over its coupons' at that plastic strain, as a fraction above zero. */
export const rollingFinding = (
  metal: Metal,
  result: Rolled,
  { excess, plastic }: { readonly excess: number; readonly plastic: number },
): RollingFinding => {
  if (!(excess > 0)) throw new Error(`an excess of flow stress above zero is to be explained, got ${excess}`);
  const own = stiffening(metal, result, plastic);
  return {
    surfacePlastic: result.surfacePlastic,
    averagePlastic: result.averagePlastic,
    stiffening: own,
    explained: Math.min(1, own / excess),
  };
};
