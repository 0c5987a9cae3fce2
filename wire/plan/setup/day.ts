/**
 * What a plan needs beyond the tank: pump, site, gauges, who reads what from where. Optional keys under `day` of the tank
 * file; what is left out is assumed and listed as such, or stays open on the checklist.
 */
import { z } from 'zod';
import { DAY_QUANTITIES } from './dayQuantity.ts';
import { may, oneOf, quantity, text } from '../../tank/format/shape.ts';

/** Where somebody or something stands when a reading is taken. */
export const READING_PLACES = ['behind the wall', 'at the tank'] as const;
export type ReadingPlace = (typeof READING_PLACES)[number];

export const GIRTH_MEANS = [
  'draw-wire',
  'laser',
  'taped scale and camera',
  'taped scale and telescope',
  'tape',
] as const;
export type GirthMeans = (typeof GIRTH_MEANS)[number];

/** Editions of the stand-off method (ASME PCC-2). */
export const STAND_OFF_EDITIONS = ['2008', 'later'] as const;
export const PAPERS = ['A4', 'Letter'] as const;
export type Paper = (typeof PAPERS)[number];

const place = oneOf(
  READING_PLACES,
  'Where it is read from. A reading at the tank is taken at or below the approach pressure',
);

const pumpFile = z
  .strictObject({
    mL_per_stroke: may(quantity('pump.mL_per_stroke')),
    strokes_per_min: may(quantity('pump.strokes_per_min')),
    highest_bar: may(quantity('pump.highest_bar')),
  })
  .meta({ description: 'The pump. duty.pump_L_per_min is what it draws where it has no strokes' });

const gaugeFile = z
  .strictObject({
    name: text('Name of the gauge'),
    range_bar: quantity('gauges.range_bar'),
    resolution_bar: quantity('gauges.resolution_bar'),
    noise_bar: may(quantity('gauges.noise_bar')),
    error_percent: may(quantity('gauges.error_percent')),
    from: may(place),
  })
  .meta({ description: 'Pressure gauge; with two of them one that fails is noticed' });

const readingFile = z
  .strictObject({
    girth: text('Name of the girth that is read'),
    by: oneOf(GIRTH_MEANS, 'How the girth is read'),
    from: may(place),
    range_mm: may(quantity('readings.range_mm')),
    resolution_mm: quantity('readings.resolution_mm'),
    noise_mm: may(quantity('readings.noise_mm')),
    every_s: may(quantity('readings.every_s')),
  })
  .meta({
    description: 'How and from where a girth is read. A tape is read at the tank where nothing else is said',
  });

const supplyFile = z
  .strictObject({
    by: oneOf(['strokes', 'weighing', 'meter'], 'How the water drawn is known'),
    resolution_mL: quantity('supply.resolution_mL'),
  })
  .meta({ description: 'The water that the pump draws from' });

const plugFile = z
  .strictObject({
    name: text('Name of the plug, cover or fitting'),
    diameter_mm: quantity('plugs.diameter_mm'),
  })
  .meta({ description: 'What the pressure would push out' });

const reliefFile = z
  .strictObject({
    opens_bar: quantity('relief.opens_bar'),
    flow_L_per_min: may(quantity('relief.flow_L_per_min')),
  })
  .meta({ description: 'Relief valve between pump and tank' });

const limit = (id: string) =>
  may(
    z
      .strictObject({
        value: quantity(`${id}.value`),
        by: text('Who set it'),
        why: text('Why it is not the default'),
      })
      .meta({ description: DAY_QUANTITIES[`${id}.value`].means }),
  );

const limitsFile = z
  .strictObject({
    trappedAir_L: limit('trappedAir_L'),
    leak_mL_per_min: limit('leak_mL_per_min'),
    growthLeft_percent: limit('growthLeft_percent'),
    girthsApart_percent: limit('girthsApart_percent'),
    gaugesApart_bar: limit('gaugesApart_bar'),
    slopeShare: limit('slopeShare'),
    seamStrain_percent: limit('seamStrain_percent'),
    growthWithoutPressure_percent: limit('growthWithoutPressure_percent'),
    marginToMaximum: limit('marginToMaximum'),
  })
  .meta({ description: 'Limits that the team sets; each stands beside its default with name and reason' });

const rolesFile = z
  .strictObject({
    director: may(text('Who decides')),
    pump: may(text('Who pumps')),
    noteTaker: may(text('Who writes')),
  })
  .meta({ description: 'Who does what on the day' });

export const dayFile = z
  .strictObject({
    pump: may(pumpFile),
    chloride_ppm: may(quantity('chloride_ppm')),
    site: may(
      z
        .strictObject({ temperature_C: quantity('site.temperature_C') })
        .meta({ description: 'Where it is done' }),
    ),
    approachPressure_bar: may(quantity('approachPressure_bar')),
    distance_m: may(quantity('distance_m')),
    standOffEdition: may(
      oneOf(STAND_OFF_EDITIONS, 'Edition of the stand-off method. The later one where left out'),
    ),
    gauges: may(z.array(gaugeFile).min(1).meta({ description: 'Pressure gauges' })),
    readings: may(z.array(readingFile).min(1).meta({ description: 'How each girth is read' })),
    supply: may(supplyFile),
    thermometer: may(
      z
        .strictObject({ resolution_K: quantity('thermometer.resolution_K') })
        .meta({ description: 'Thermometer in the water of the tank' }),
    ),
    plugs: may(z.array(plugFile).min(1).meta({ description: 'Plugs, covers and fittings' })),
    hose: may(
      z
        .strictObject({ insideDiameter_mm: quantity('hose.insideDiameter_mm') })
        .meta({ description: 'Pressure hose' }),
    ),
    relief: may(reliefFile),
    floor: may(
      z
        .strictObject({ carries_kg: quantity('floor.carries_kg') })
        .meta({ description: 'What floor and stand carry' }),
    ),
    release: may(
      z
        .strictObject({
          first: text('How the pressure is let out from behind the wall'),
          second: may(text('The second way if the first fails')),
        })
        .meta({ description: 'Release' }),
    ),
    roles: may(rolesFile),
    limits: may(limitsFile),
    paper: may(oneOf(PAPERS, 'Size of the papers. A4 where left out')),
  })
  .meta({
    description: 'Set-up of the day of the stretch: pump, site, instruments, limits. All of it optional',
  });

export type DayFile = z.infer<typeof dayFile>;
