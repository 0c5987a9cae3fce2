/**
 * How far people stand off, after the published method for gas tests (ASME PCC-2, Article 5.1, later 501). It is a method
 * for gas: for water it only puts the energy of trapped air into proportion. Editions differ by a factor 2 inside the root.
 */

/** `2008`: 20 TNT^(1/3). `later`: 20 (2 TNT)^(1/3), in the editions with Appendix 501-III. */
export type Pcc2Edition = '2008' | 'later';

export interface StandOff {
  readonly edition: Pcc2Edition;
  /** TNT equivalent, kg. */
  readonly tnt: number;
  /** By the cube root alone, mm. */
  readonly byEnergy: number;
  /** Distance to keep, mm: the larger of the cube root and the floor. */
  readonly distance: number;
  /** Smallest distance of the method at this energy, mm; undefined over 271 MJ. */
  readonly floor: number | undefined;
  readonly floorGoverns: boolean;
}

/** N mm of energy per kg of TNT: 4 266 920 J. */
const ENERGY_PER_TNT = 4_266_920e3;
/** mm/kg^(1/3): 20 m. */
const SCALE = 20e3;
const FLOORS = [
  { upTo: 135.5e9, floor: 30e3 },
  { upTo: 271e9, floor: 60e3 },
] as const;

/** Stand-off for an energy in N mm. */
export const standOff = (energy: number, edition: Pcc2Edition): StandOff => {
  const tnt = energy / ENERGY_PER_TNT;
  const byEnergy = SCALE * Math.cbrt(edition === '2008' ? tnt : 2 * tnt);
  const floor = FLOORS.find(({ upTo }) => energy <= upTo)?.floor;
  const distance = Math.max(byEnergy, floor ?? 0);
  return { edition, tnt, byEnergy, distance, floor, floorGoverns: distance > byEnergy };
};

/** Energy up to which the 30 m floor governs, N mm. */
export const floorGovernsUpTo = (edition: Pcc2Edition): number =>
  (ENERGY_PER_TNT * (FLOORS[0].floor / SCALE) ** 3) / (edition === '2008' ? 1 : 2);
