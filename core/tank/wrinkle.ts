/**
 * Published formulas for dished heads under pressure inside: thicknesses of EN 13445-3 7.5.3, the wrinkling pressures
 * of the knuckle, the limit pressure of Shield & Drucker. Each with the range it was made for.
 * Source keys: en-13445-3, galletly-1986, galletly-blachut-1985, shield-drucker-1961. All written from memory of the
 * sources and checked against worked figures (checks/head/); ranges from memory, medium confidence.
 */

/** Inside dimensions and wall of a torispherical head, mm. */
export interface Torisphere {
  readonly insideDiameter: number;
  readonly crownRadius: number;
  readonly knuckleRadius: number;
  readonly wall: number;
}

/** Torisphere that stands for a half ellipsoid of inside depth h: EN 13445-3 7.5.4, made for D/(2h) from 1.7 to 2.2. */
export const nominalTorisphere = (insideDiameter: number, depth: number, wall: number): Torisphere => {
  const K = insideDiameter / (2 * depth);
  return {
    insideDiameter,
    crownRadius: insideDiameter * (0.44 * K + 0.02),
    knuckleRadius: insideDiameter * (0.5 / K - 0.08),
    wall,
  };
};

/** Why EN 13445-3 7.5.3.1 does not cover this head; empty where it does. */
export const enOutside = (head: Torisphere): string[] => {
  const { insideDiameter: Di, crownRadius: R, knuckleRadius: r, wall: e } = head;
  const De = Di + 2 * e;
  const reasons: string[] = [];
  if (r > 0.2 * Di)
    reasons.push(`knuckle radius ${say(r)} mm is over 0.2 x inside diameter (${say(0.2 * Di)} mm)`);
  if (r < 0.06 * Di)
    reasons.push(`knuckle radius ${say(r)} mm is under 0.06 x inside diameter (${say(0.06 * Di)} mm)`);
  if (r < 2 * e) reasons.push(`knuckle radius ${say(r)} mm is under twice the wall (${say(2 * e)} mm)`);
  if (e > 0.08 * De) reasons.push(`wall ${say(e)} mm is over 0.08 x outside diameter`);
  if (e < 0.001 * De)
    reasons.push(`wall ${say(e)} mm is under 0.001 x outside diameter (${say(0.001 * De)} mm)`);
  if (R > De) reasons.push(`crown radius ${say(R)} mm is over the outside diameter ${say(De)} mm`);
  return reasons;
};

const say = (length: number): string => String(Number(length.toPrecision(4)));

/** Factor beta of EN 13445-3 7.5.3.5 for Y = wall / crown radius and X = knuckle radius / inside diameter. */
export const enBeta = (wallOverCrown: number, knuckleOverDiameter: number): number => {
  const Y = Math.min(wallOverCrown, 0.04);
  const X = knuckleOverDiameter;
  const Z = Math.log10(1 / Y);
  const N = 1.006 - 1 / (6.2 + (90 * Y) ** 4);
  const b06 = N * (-0.3635 * Z ** 3 + 2.2124 * Z ** 2 - 3.2937 * Z + 1.8873);
  const b10 = N * (-0.1833 * Z ** 3 + 1.0383 * Z ** 2 - 1.2943 * Z + 0.837);
  const b20 = Math.max(0.95 * (0.56 - 1.94 * Y - 82.5 * Y ** 2), 0.5);
  if (X <= 0.1) return 25 * ((0.1 - X) * b06 + (X - 0.06) * b10);
  return 10 * ((0.2 - X) * b10 + (X - 0.1) * b20);
};

/** Stresses the thicknesses are worked out for, MPa. */
export interface HeadDesign {
  readonly pressure: number;
  /** Nominal design stress. */
  readonly allowable: number;
  /** Design stress against buckling: Rp0.2/1.5, for cold-spun austenitic heads 1.6 times that. */
  readonly buckling: number;
  readonly jointCoefficient: number;
}

export interface HeadThickness {
  /** Against the membrane stress of the crown. */
  readonly crown: number;
  /** Against yielding of the knuckle, axisymmetric. */
  readonly knuckle: number;
  /** Against plastic buckling (wrinkling) of the knuckle. */
  readonly wrinkling: number;
}

/** Required walls e_s, e_y, e_b of EN 13445-3 7.5.3.2, mm. e_y stands on both sides of its equation: it is iterated. */
export const enThicknesses = (head: Omit<Torisphere, 'wall'>, design: HeadDesign): HeadThickness => {
  const { insideDiameter: Di, crownRadius: R, knuckleRadius: r } = head;
  const { pressure: P, allowable: f } = design;
  const length = 0.75 * R + 0.2 * Di;
  const crown = (P * R) / (2 * f * design.jointCoefficient - 0.5 * P);
  let knuckle = crown;
  for (let i = 0; i < 200; i++) {
    // Damped: beta falls as the wall grows.
    const next = 0.5 * (knuckle + (enBeta(knuckle / R, r / Di) * P * length) / f);
    if (Math.abs(next - knuckle) < 1e-12 * knuckle) break;
    knuckle = next;
  }
  const wrinkling = length * ((P / (111 * design.buckling)) * (Di / r) ** 0.825) ** (1 / 1.5);
  return { crown, knuckle, wrinkling };
};

/** Pressure at which e_b of EN 13445-3 equals the wall, for a design stress against buckling (MPa). */
export const enWrinklingPressure = (head: Torisphere, buckling: number): number => {
  const length = 0.75 * head.crownRadius + 0.2 * head.insideDiameter;
  return 111 * buckling * (head.wall / length) ** 1.5 * (head.knuckleRadius / head.insideDiameter) ** 0.825;
};

/** Wrinkling pressure of the knuckle, MPa, for a perfect head of yield stress Sy (Galletly & Blachut). */
export const galletlyWrinkling = (head: Torisphere, Sy: number, young: number): number => {
  const { rD, Dt, LD } = ratios(head);
  return (Sy * 285 * (1 - (125 * Sy) / young) * rD ** 0.84) / (Dt ** 1.53 * LD ** 1.1);
};

/** The same author's design pressure, MPa: at least 1.5 under every test then known (Galletly 1986). */
export const galletlyDesign = (head: Torisphere, Sy: number): number => {
  const { rD, Dt, LD } = ratios(head);
  return (80 * Sy * rD ** 0.825) / (Dt ** 1.5 * LD ** 1.15);
};

/** Why Galletly's formulas were not made for this head; empty where they were. */
export const galletlyOutside = (head: Torisphere): string[] => {
  const { rD, Dt, LD } = ratios(head);
  const reasons: string[] = [];
  if (Dt < 300 || Dt > 1500)
    reasons.push(`diameter over wall is ${say(Dt)}, the formula was made for 300 to 1500`);
  if (rD < 0.05 || rD > 0.18)
    reasons.push(`knuckle radius over diameter is ${say(rD)}, made for 0.05 to 0.18`);
  if (LD < 0.75 || LD > 1.5) reasons.push(`crown radius over diameter is ${say(LD)}, made for 0.75 to 1.5`);
  return reasons;
};

/** Plastic limit pressure of the head, small displacements, MPa (Shield & Drucker). */
export const shieldDrucker = (head: Torisphere, yieldStress: number): number => {
  const { rD } = ratios(head);
  const tL = head.wall / head.crownRadius;
  return yieldStress * ((0.33 + 5.5 * rD) * tL + 28 * (1 - 2.2 * rD) * tL ** 2 - 0.0006);
};

/** Why Shield & Drucker's fit was not made for this head; empty where it was. */
export const shieldDruckerOutside = (head: Torisphere): string[] => {
  const { rD, LD } = ratios(head);
  const tL = head.wall / head.crownRadius;
  const reasons: string[] = [];
  if (tL < 0.002 || tL > 0.04)
    reasons.push(`wall over crown radius is ${say(tL)}, the fit was made for 0.002 to 0.04`);
  if (rD < 0.06 || rD > 0.16)
    reasons.push(`knuckle radius over diameter is ${say(rD)}, made for 0.06 to 0.16`);
  if (LD < 0.6 || LD > 1) reasons.push(`crown radius over diameter is ${say(LD)}, made for 0.6 to 1`);
  return reasons;
};

const ratios = (head: Torisphere): { rD: number; Dt: number; LD: number } => ({
  rD: head.knuckleRadius / head.insideDiameter,
  Dt: head.insideDiameter / head.wall,
  LD: head.crownRadius / head.insideDiameter,
});
