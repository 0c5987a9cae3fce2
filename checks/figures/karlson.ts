/**
 * Annealed 304L bar at room temperature: figures read off the tensile tests reported by Karlson et al., Tomography of
 * Materials and Structures 2 (2023) 100007, doi 10.1016/j.tmater.2023.100007 (data BSD-3-Clause).
 */

/** Mean of eight standard round bars: true plastic strain, and true stress in MPa. */
export const MEAN_304L = {
  plastic: [0.002, 0.005, 0.01, 0.02, 0.03, 0.04, 0.05, 0.07, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4],
  stress: [
    225.7, 254.7, 275.2, 301.3, 323.3, 344.0, 363.4, 401.8, 454.1, 533.3, 606.0, 675.3, 740.2, 800.9, 857.1,
  ],
} as const;

/** Small bars of the same material, true stress in MPa at the same strains, at two rates (1/s). */
export const SMALL_BARS_304L = [
  { rate: 1e-4, stress: [251, 290, 319, 351, 371, 390, 408, 442, 489, 561, 629, 693, 755, 813, 863] },
  { rate: 1e-2, stress: [279, 310, 335, 362, 382, 401, 420, 454, 501, 574, 642, 708, 769, 826, 876] },
] as const;

/** Fits to the mean between 0.002 and 0.40, worked out for this project. */
export const FITS_304L = {
  ludwigson: { law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 },
  ludwik: { law: 'ludwik', yield: 224, K: 1230, n: 0.724 },
  swift: { law: 'swift', K: 1343, n: 0.562, e0: 0.0466 },
  voce: { law: 'voce', yield: 249, rise: 1031, steepness: 2.18 },
  hollomon: { law: 'hollomon', K: 916, n: 0.26 },
} as const;
