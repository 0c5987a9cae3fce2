/**
 * A hole in barrel or head, checked by area replacement: the metal cut out is made up by metal to spare close by.
 * Method: ASME VIII-1 UG-37 and UG-40 (source key asme-viii-1), without credit for nozzle neck and welds.
 * The opening is not in the path: the forecast knows nothing of the strain beside it.
 */

export interface HolePlace {
  readonly diameter: number;
  readonly wall: number;
  /** Wall that the pressure alone needs there, without the hole. */
  readonly neededWall: number;
  /** Inside diameter of the tank: the method covers holes up to half of it (UG-36). */
  readonly vesselDiameter: number;
  readonly pad?: { readonly thickness: number; readonly width: number };
}

export interface AreaReplacement {
  /** mm². */
  readonly removed: number;
  readonly spareWall: number;
  readonly pad: number;
  readonly enough: boolean;
  /** Pad area that is still wanting, mm². */
  readonly missing: number;
  readonly because: string;
}

/** Said wherever the check is shown. */
export const NOT_IN_THE_PATH =
  'not in this path: the forecast takes the wall as whole; area replacement is a rule for design pressure, not for stretching';

/**
 * Wall that a pressure needs at a design stress, mm: ASME VIII-1 UG-27 for the barrel (inside radius), and for a sphere
 * or the crown of a dished head (inside crown radius). Joint efficiency 1: the hole is taken off the seams.
 */
export const neededWall = (
  part: 'barrel' | 'sphere',
  pressure: number,
  insideRadius: number,
  allowable: number,
): number =>
  part === 'barrel'
    ? (pressure * insideRadius) / (allowable - 0.6 * pressure)
    : (pressure * insideRadius) / (2 * allowable - 0.2 * pressure);

/** Area replacement in the worst plane (F = 1); metal counts within one diameter each side of the middle (UG-40). */
export const replaceArea = (hole: HolePlace): AreaReplacement => {
  const { diameter: d, wall: t, neededWall: tr } = hole;
  const reach = Math.max(d, d / 2 + t);
  const removed = d * tr;
  const spareWall = Math.max(2 * (reach - d / 2) * (t - tr), 0);
  const pad = hole.pad
    ? 2 * Math.min(hole.pad.width, reach - d / 2) * Math.min(hole.pad.thickness, 2.5 * t)
    : 0;
  const missing = Math.max(removed - spareWall - pad, 0);
  const enough = missing === 0 && tr <= t && d <= hole.vesselDiameter / 2;
  return {
    removed,
    spareWall,
    pad,
    enough,
    missing,
    because: reasonOf(hole, enough, removed, spareWall + pad),
  };
};

const reasonOf = (hole: HolePlace, enough: boolean, removed: number, found: number): string => {
  if (hole.diameter > hole.vesselDiameter / 2) {
    return `a hole of ${hole.diameter} mm is over half the diameter: area replacement does not cover it`;
  }
  const areas = `${removed.toFixed(0)} mm² cut out, ${found.toFixed(0)} mm² to spare beside it`;
  if (hole.neededWall > hole.wall) return `the wall of ${hole.wall} mm is too thin even without the hole`;
  return enough ? areas : `${areas}: give a pad`;
};
