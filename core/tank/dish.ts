/** Depth and volume of dished ends, inside, without straight flange. Exact geometry; lengths mm. */

export interface Dish {
  readonly depth: number;
  readonly volume: number;
}

/** Crown and knuckle of a head by its standard, from the outside diameter: DIN 28011 and DIN 28013. */
export const DIN_PROPORTIONS = {
  'DIN 28011': { crown: 1, knuckle: 0.1 },
  'DIN 28013': { crown: 0.8, knuckle: 0.154 },
} as const;

export type DinHead = keyof typeof DIN_PROPORTIONS;

/** Inside crown and knuckle radius of a standard head; the standard counts both from the outside diameter. */
export const dinRadii = (
  standard: DinHead,
  insideDiameter: number,
  wall: number,
): { readonly crownRadius: number; readonly knuckleRadius: number } => {
  const outside = insideDiameter + 2 * wall;
  const { crown, knuckle } = DIN_PROPORTIONS[standard];
  return { crownRadius: crown * outside, knuckleRadius: knuckle * outside };
};

/** Torisphere of inside diameter D, crown radius R, knuckle radius r. Throws where R and r do not meet. */
export const torisphere = (D: number, R: number, r: number): Dish => {
  const [a, c] = [D / 2, D / 2 - r];
  if (!(r > 0 && r <= a && R > r && R - r >= c)) {
    throw new Error(`no torisphere has diameter ${D}, crown radius ${R} and knuckle radius ${r} mm`);
  }
  const centre = Math.sqrt((R - r) ** 2 - c ** 2);
  const depth = R - centre;
  // Crown and knuckle meet where the line of the two centres leaves the knuckle, at this height over the tangent line.
  const height = (r * centre) / (R - r);
  const cap = depth - height;
  const capVolume = Math.PI * cap ** 2 * (R - cap / 3);
  // pi times the integral of (c + sqrt(r^2 - z^2))^2 from 0 to the height.
  const root = Math.sqrt(Math.max(r ** 2 - height ** 2, 0));
  const segment = height * root + r ** 2 * Math.asin(Math.min(height / r, 1));
  const knuckleVolume = Math.PI * (c ** 2 * height + c * segment + r ** 2 * height - height ** 3 / 3);
  return { depth, volume: capVolume + knuckleVolume };
};

/** Half an ellipsoid of inside diameter D; `depth` is D/2 for a hemisphere. */
export const ellipsoid = (D: number, depth: number): Dish => ({
  depth,
  volume: (Math.PI / 6) * D ** 2 * depth,
});
