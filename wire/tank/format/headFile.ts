/** The heads of the tank file, one structure per shape. */
import { z } from 'zod';
import { may, oneOf, quantities, quantity, text } from './shape.ts';
import { partSteelFile } from './steelFile.ts';

const bossFile = z
  .strictObject({ diameter_mm: quantity('boss.diameter_mm'), thickness_mm: quantity('boss.thickness_mm') })
  .meta({ description: 'Thickened disc at the pole, flush inside' });

const anyHead = {
  wall_mm: may(quantity('wall_mm')),
  measuredWall_mm: may(quantities('measuredWall_mm')),
  straightFlange_mm: may(quantity('straightFlange_mm')),
  formingStrain_percent: may(quantity('formingStrain_percent')),
  steel: may(partSteelFile),
  plate: may(text('Plate or heat the head was made of')),
  boss: may(bossFile),
  note: may(text('Anything worth knowing about this head')),
};

const head = <const K extends string, S extends z.core.$ZodLooseShape>(
  shape: K,
  description: string,
  keys: S,
) =>
  z
    .strictObject({ shape: z.literal(shape).meta({ description: 'Shape of the head' }), ...keys, ...anyHead })
    .meta({ description });

export const DIN_HEADS = ['DIN 28011', 'DIN 28013'] as const;

export const headFile = z
  .discriminatedUnion('shape', [
    head('semi-ellipsoidal', 'Half an ellipse; ratio 2 where neither ratio nor depth is given', {
      ratio: may(quantity('ratio')),
      depth_mm: may(quantity('depth_mm')),
    }),
    head('torispherical', 'Crown and knuckle by their inside radii, or by the standard', {
      crownRadius_mm: may(quantity('crownRadius_mm')),
      knuckleRadius_mm: may(quantity('knuckleRadius_mm')),
      standard: may(
        oneOf(
          DIN_HEADS,
          'DIN 28011: R = Da, r = 0.1 Da; DIN 28013: R = 0.8 Da, r = 0.154 Da; Da outside diameter',
        ),
      ),
    }),
    head('hemispherical', 'Half a sphere of the inside diameter', {}),
    head('conical', 'Cone with a knuckle, closed at the tip by a cap of the knuckle radius', {
      halfAngle_deg: quantity('halfAngle_deg'),
      knuckleRadius_mm: quantity('knuckleRadius_mm'),
    }),
    head('flat', 'Flat plate; refused above a sensible pressure', {}),
  ])
  .meta({ description: 'Head; without wall_mm it has the wall of the barrel' });

export type HeadFile = z.infer<typeof headFile>;
