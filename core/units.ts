/**
 * The inside system is N, mm, MPa, s and °C. Everything else is converted here, at the edge, by name.
 * Conversion factors are exact by definition (SI Brochure 9th ed.; international inch, pound and US gallon of 1959).
 */

/** Standard acceleration of gravity, mm/s² (ISO 80000-3). */
export const GRAVITY = 9806.65;
/** Standard atmosphere, MPa (ISO 2533): gauge pressure counts from here. */
export const ATMOSPHERE = 0.101325;

export const MPA_PER_BAR = 0.1;
export const MPA_PER_PSI = 4.4482216152605 / 25.4 ** 2;
export const MPA_PER_KSI = 1000 * MPA_PER_PSI;
export const MM_PER_INCH = 25.4;
export const MM3_PER_LITRE = 1e6;
export const MM3_PER_GALLON = 231 * 25.4 ** 3;
export const KG_PER_POUND = 0.45359237;

export const fromBar = (bar: number): number => bar * MPA_PER_BAR;
export const toBar = (pressure: number): number => pressure / MPA_PER_BAR;
export const fromLitre = (litre: number): number => litre * MM3_PER_LITRE;
export const toLitre = (volume: number): number => volume / MM3_PER_LITRE;
export const fromMinutes = (minutes: number): number => minutes * 60;
export const fromPercent = (percent: number): number => percent / 100;
export const toPercent = (fraction: number): number => fraction * 100;
/** kg/m³ to the inside unit of density, t/mm³ (so that density x mm/s² x mm is MPa). */
export const fromKgPerM3 = (density: number): number => density * 1e-12;
/** Mass of the inside system is the tonne (N s²/mm); people want kilograms. */
export const toKilogram = (tonne: number): number => tonne * 1e3;
