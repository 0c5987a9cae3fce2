/** What a rolling note says of the barrel: plastic strain and residual stress, layer by layer. */
import {
  flowOf,
  gradeNamed,
  type Metal,
  metalOf,
  priorMetal,
  type Rolled,
  rolled,
  type Steel,
} from '@hoopwright/core/steel';
import type { SteelFile } from './format/steelFile.ts';

/** The bending of plate is only computed where the wall is thin beside the radius (core/steel/rolling). */
const THIN = 10;

/** Plate of a metal rolled as a note says; undefined where the wall is thicker than a tenth of the radius. */
export function rolledAs(
  {
    passes,
    overbendRadius_mm: under,
  }: Pick<NonNullable<SteelFile['rolling']>, 'passes' | 'overbendRadius_mm'>,
  metal: Metal,
  { wall, radius }: { readonly wall: number; readonly radius: number },
): Rolled | undefined {
  if (radius < THIN * wall) return undefined;
  return rolled(metal, {
    thickness: wall,
    radius,
    passes: Math.max(1, Math.round(passes)),
    ...(under === undefined ? {} : { tightestUnderRolls: under + wall / 2 }),
  });
}

/** What one course of the barrel brings along; undefined without a note, and where it is too thick to tell. */
export function rolledLayers(
  file: SteelFile,
  steel: Steel,
  place: { readonly wall: number; readonly radius: number },
): Rolled['layers'] | undefined {
  const { rolling } = file;
  return rolling && rolledAs(rolling, rolledMetal(file, steel, place.wall), place)?.layers;
}

/**
 * The stated curve, or the typical one of the grade: then a certificate that changes leaves the layers as they are. The
 * rolls are slow: no rate effect.
 */
const rolledMetal = (file: SteelFile, { young, poisson, flow, biaxialFactor }: Steel, wall: number): Metal =>
  file.flow === undefined
    ? priorMetal({ grade: gradeNamed(file.grade ?? '') ?? '1.4307', form: 'cold-rolled', thickness: wall })
    : metalOf(young, poisson, flowOf(flow, biaxialFactor));
