/**
 * How strong a closed cylinder is for its tensile curve. The stress is 2 : 1 (plane strain), the evidence is uniaxial,
 * and yield criteria differ there most: von Mises is the highest of those in use. Source keys: hosford-1972, zhu-leis.
 */

/**
 * Hoop stress at yield of a closed cylinder over the tensile yield stress, after Hosford's criterion
 * (|s1 - s2|^a + |s1|^a + |s2|^a = 2 Y^a); exponent 2 is von Mises, 6 and 8 are used for cubic metals.
 */
export const hosfordClosedCylinder = (exponent: number): number =>
  ((1 + 2 ** (1 - exponent)) / 2) ** (-1 / exponent);

/** The same for the average shear stress criterion: midway between Tresca (1) and von Mises (2/sqrt3). */
export const AVERAGE_SHEAR_CLOSED_CYLINDER = 0.5 + 1 / Math.sqrt(3);

/** Factor on the flow stress that makes a von Mises calculation of a closed cylinder follow another criterion. */
export const biaxialFactorOf = (closedCylinder: number): number => closedCylinder / (2 / Math.sqrt(3));
