/** The tank file, version 1: JSON, units in the key names, human units. Structure only; the meaning is in `toTank.ts`. */
import { z } from 'zod';
import { dayFile } from '../../plan/setup/day.ts';
import { headFile } from './headFile.ts';
import { may, oneOf, quantity, text } from './shape.ts';
import { flowFile, partSteelFile, steelFile } from './steelFile.ts';

/** Version of the format that this code reads and writes. */
export const TANK_FILE_VERSION = 1;

const plate = may(text('Plate or heat it was made of'));

const courseFile = z.strictObject({
  length_mm: quantity('courses.length_mm'),
  wall_mm: may(quantity('wall_mm')),
  steel: may(partSteelFile),
  plate,
});

const barrelFile = z
  .strictObject({
    insideDiameter_mm: quantity('barrel.insideDiameter_mm'),
    length_mm: quantity('barrel.length_mm'),
    wall_mm: quantity('wall_mm'),
    plate,
    courses: may(
      z
        .array(courseFile)
        .min(1)
        .meta({ description: "Rolled rings from the bottom up; lengths sum to the barrel's; flush inside" }),
    ),
  })
  .meta({ description: 'The cylinder between the tangent lines' });

const weldRecord = {
  name: may(text('Name of the seam')),
  welder: may(text('Who welded it')),
  process: may(text('Welding process, e.g. 141 (ISO 4063)')),
  date: may(text('Day of welding')),
  note: may(text('Repairs, offset, peaking')),
};

const girthSeamFile = z.strictObject({
  at_mm: quantity('at_mm'),
  width_mm: quantity('girth.width_mm'),
  strength: may(quantity('strength')),
  flow: may(flowFile),
  ...weldRecord,
});

const longSeamFile = z
  .strictObject({ width_mm: quantity('long.width_mm'), strength: may(quantity('strength')), ...weldRecord })
  .meta({ description: 'Seam along the barrel: a strip in series under the hoop force of the plate' });

const seamsFile = z
  .strictObject({
    girth: may(z.array(girthSeamFile).meta({ description: 'Girth seams: rings of weld metal' })),
    long: may(longSeamFile),
  })
  .meta({ description: 'Welds' });

const baffleFile = z
  .strictObject({
    at_mm: quantity('at_mm'),
    width_mm: quantity('baffles.width_mm'),
    thickness_mm: quantity('baffles.thickness_mm'),
    steel: may(partSteelFile),
  })
  .meta({ description: 'Annular plate inside the barrel, wetted on both faces' });

const skirtFile = z
  .strictObject({
    end: oneOf(['top', 'bottom'], 'Tangent line at which it stands'),
    length_mm: quantity('skirts.length_mm'),
    wall_mm: quantity('wall_mm'),
    steel: may(partSteelFile),
  })
  .meta({ description: 'Cylindrical skirt outside' });

const girthFile = z
  .strictObject({ name: may(text('Name of the place')), at_mm: quantity('at_mm') })
  .meta({ description: 'Place where the tape goes round' });

const openingFile = z
  .strictObject({
    part: oneOf(['barrel', 'top', 'bottom'], 'Where the hole is'),
    name: may(text('Name of the opening')),
    diameter_mm: quantity('openings.diameter_mm'),
    at_mm: may(quantity('at_mm')),
    padThickness_mm: may(quantity('padThickness_mm')),
    padWidth_mm: may(quantity('padWidth_mm')),
  })
  .meta({ description: 'Hole off the pole: area replacement only, not in the path' });

const holdFile = z
  .strictObject({
    pressure_bar: quantity('holds.pressure_bar'),
    minutes: quantity('minutes'),
    valve: may(oneOf(['open', 'shut'], 'open: pressure is kept; shut: the water is kept. Default open')),
  })
  .meta({ description: 'Pause at a pressure on the way up' });

const dutyFile = z
  .strictObject({
    workingPressure_bar: quantity('workingPressure_bar'),
    stretchFactor: may(quantity('stretchFactor')),
    pump_L_per_min: may(quantity('pump_L_per_min')),
    holds: may(z.array(holdFile).meta({ description: 'Pauses on the way up, in their order' })),
  })
  .meta({ description: 'What the tank is for and how it is stretched. stretchFactor 1.5 where left out' });

const standFile = z
  .strictObject({
    axis: oneOf(['upright', 'lying'], 'upright: the liquid head acts'),
    gauge_mm: may(quantity('gauge_mm')),
  })
  .meta({ description: 'How the tank stands while it is stretched. Gauge at mid-barrel where left out' });

const waterFile = z
  .strictObject({
    temperature_C: may(quantity('temperature_C')),
    trappedAir_L: may(quantity('trappedAir_L')),
  })
  .meta({ description: 'Test water. 15 °C without air where left out' });

export const tankFile = z
  .strictObject({
    hoopwright: z.literal(TANK_FILE_VERSION).meta({ description: 'Version of the format' }),
    name: may(text('Name of the tank')),
    serial: may(text('Serial number')),
    note: may(text('Anything worth knowing')),
    barrel: barrelFile,
    heads: z.strictObject({ top: headFile, bottom: headFile }).meta({ description: 'Both heads' }),
    seams: may(seamsFile),
    baffles: may(z.array(baffleFile).meta({ description: 'Annular baffles' })),
    skirts: may(z.array(skirtFile).meta({ description: 'Skirts at the tangent lines' })),
    girths: may(
      z.array(girthFile).meta({ description: 'Where the girth is taken. One at mid-barrel where left out' }),
    ),
    openings: may(z.array(openingFile).meta({ description: 'Holes off the pole' })),
    steel: steelFile,
    stand: may(standFile),
    water: may(waterFile),
    duty: may(dutyFile),
    day: may(dayFile),
  })
  .meta({ title: 'Hoopwright tank file', description: 'A welded tank, its steel and its duty' });

/** A tank file as given, in file units, nothing added. */
export type TankFile = z.infer<typeof tankFile>;

/** JSON Schema (draft 2020-12) of the tank file. */
export function tankFileSchema(): object {
  return z.toJSONSchema(tankFile);
}

/** JSON text of a tank file; keys in the order of the format, so that two equal files give the same bytes. */
export function writeTankFile(file: TankFile): string {
  return `${JSON.stringify(tankFile.parse(file), null, 2)}\n`;
}
