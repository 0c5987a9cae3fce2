/** A sound tank file to the nouns of the core: inside units, defaults filled in. */
import { fromBar, fromLitre, fromMinutes, fromPercent } from '@hoopwright/core/units';
import type { FlowLaw, Steel } from '@hoopwright/core/steel';
import type { Course, Duty, Girth, GirthSeam, Head, HeadShape, Opening, Tank } from '@hoopwright/core/tank';
import type { HeadFile } from './format/headFile.ts';
import { headWall, torisphericalRadii, USUAL_RATIO } from './headRadii.ts';
import type { PartSteelFile } from './format/steelFile.ts';
import type { TankFile } from './format/tankFile.ts';
import { rolledLayers } from './rolledAs.ts';
import { partSteel, seamSteel, toFlowLaw } from './toSteel.ts';

/** What is taken where the file is silent. */
export const TANK_DEFAULTS = {
  name: 'unnamed tank',
  temperature_C: 15,
  trappedAir_L: 0,
  stretchFactor: 1.5,
  valve: 'open',
  seamStrength: 1,
} as const;

/** @param flow curve of the plate, for every part that has none of its own */
export function toTank(file: TankFile, flow: FlowLaw): Tank {
  const { barrel, heads } = file;
  const plate = partSteel({}, file.steel, flow);
  // Parts of the plate's steel share one record, so that they are seen to be equal.
  const steelOf = (part?: PartSteelFile) => (part === undefined ? plate : partSteel(part, file.steel, flow));
  const courses = toCourses(file, steelOf);
  return {
    name: file.name ?? TANK_DEFAULTS.name,
    ...(file.serial === undefined ? {} : { serial: file.serial }),
    insideDiameter: barrel.insideDiameter_mm,
    length: barrel.length_mm,
    courses,
    heads: { top: toHead(heads.top, file, steelOf), bottom: toHead(heads.bottom, file, steelOf) },
    girthSeams: toGirthSeams(file, courses),
    ...toLongSeam(file),
    baffles: (file.baffles ?? []).map(({ at_mm, width_mm, thickness_mm, steel }) => ({
      at: at_mm,
      width: width_mm,
      thickness: thickness_mm,
      steel: steelOf(steel),
    })),
    skirts: (file.skirts ?? []).map(({ end, length_mm, wall_mm, steel }) => ({
      end,
      length: length_mm,
      wall: wall_mm,
      steel: steelOf(steel),
    })),
    girths: toGirths(file),
    openings: (file.openings ?? []).map(toOpening),
    ...toStand(file),
    water: {
      temperature: file.water?.temperature_C ?? TANK_DEFAULTS.temperature_C,
      trappedAir: fromLitre(file.water?.trappedAir_L ?? TANK_DEFAULTS.trappedAir_L),
    },
  };
}

type SteelOf = (part?: PartSteelFile) => Steel;

function toCourses({ barrel, steel: file }: TankFile, steelOf: SteelOf): Course[] {
  const whole = {
    length_mm: barrel.length_mm,
    ...(barrel.plate === undefined ? {} : { plate: barrel.plate }),
  };
  const given: NonNullable<TankFile['barrel']['courses']> = barrel.courses ?? [whole];
  return given.map((course) => {
    const plate = course.plate ?? barrel.plate;
    const wall = course.wall_mm ?? barrel.wall_mm;
    const steel = steelOf(course.steel);
    const radius = (barrel.insideDiameter_mm + wall) / 2;
    const layers = rolledLayers(file, steel, { wall, radius });
    return {
      length: course.length_mm,
      wall,
      steel,
      ...(plate === undefined ? {} : { plate }),
      ...(layers === undefined ? {} : { layers }),
    };
  });
}

function toHead(head: HeadFile, { barrel }: TankFile, steelOf: SteelOf): Head {
  const { boss, plate, formingStrain_percent: forming, measuredWall_mm: measured } = head;
  return {
    shape: toShape(head, barrel.insideDiameter_mm, headWall(head, barrel.wall_mm)),
    wall: headWall(head, barrel.wall_mm),
    straightFlange: head.straightFlange_mm ?? 0,
    steel: steelOf(head.steel),
    ...(boss === undefined ? {} : { boss: { diameter: boss.diameter_mm, thickness: boss.thickness_mm } }),
    ...(plate === undefined ? {} : { plate }),
    ...(forming === undefined ? {} : { formingStrain: fromPercent(forming) }),
    ...(measured === undefined ? {} : { measuredWalls: measured }),
  };
}

function toShape(head: HeadFile, insideDiameter: number, wall: number): HeadShape {
  switch (head.shape) {
    case 'semi-ellipsoidal':
      return { kind: head.shape, depth: head.depth_mm ?? insideDiameter / 2 / (head.ratio ?? USUAL_RATIO) };
    case 'torispherical': {
      const radii = torisphericalRadii(head, insideDiameter, wall);
      if (radii === undefined)
        throw new Error('a torispherical head without radii passed the check of the file');
      return { kind: head.shape, crownRadius: radii.crown, knuckleRadius: radii.knuckle };
    }
    case 'conical':
      return {
        kind: head.shape,
        halfAngle: (head.halfAngle_deg * Math.PI) / 180,
        knuckleRadius: head.knuckleRadius_mm,
      };
    default:
      return { kind: head.shape };
  }
}

/** A seam has a curve of its own, or that of the course it lies in times its strength. */
function toGirthSeams({ seams }: TankFile, courses: readonly Course[]): GirthSeam[] {
  return (seams?.girth ?? []).map(({ at_mm, width_mm, strength, flow }) => {
    const plate = courseAt(courses, at_mm).steel;
    const place = { at: at_mm, width: width_mm };
    if (flow !== undefined) return { ...place, steel: { ...plate, flow: toFlowLaw(flow) } };
    const factor = strength ?? TANK_DEFAULTS.seamStrength;
    return { ...place, steel: seamSteel(plate, factor), strength: factor };
  });
}

function courseAt(courses: readonly Course[], height: number): Course {
  let top = 0;
  for (const course of courses) {
    top += course.length;
    if (height <= top) return course;
  }
  return courses[courses.length - 1];
}

function toLongSeam({ seams }: TankFile): Pick<Tank, 'longSeam'> {
  if (seams?.long === undefined) return {};
  return {
    longSeam: { width: seams.long.width_mm, strength: seams.long.strength ?? TANK_DEFAULTS.seamStrength },
  };
}

/** One girth at mid-barrel where none is named. */
function toGirths({ barrel, girths }: TankFile): Girth[] {
  if (girths === undefined || girths.length === 0) return [{ name: 'middle', at: barrel.length_mm / 2 }];
  return girths.map(({ name, at_mm }) => ({ name: name ?? `at ${at_mm} mm`, at: at_mm }));
}

function toOpening(opening: NonNullable<TankFile['openings']>[number]): Opening {
  const {
    part,
    diameter_mm: diameter,
    at_mm: at,
    padThickness_mm: padThickness,
    padWidth_mm: padWidth,
  } = opening;
  return {
    part,
    diameter,
    ...(at === undefined ? {} : { at }),
    ...(padThickness === undefined ? {} : { padThickness }),
    ...(padWidth === undefined ? {} : { padWidth }),
  };
}

function toStand({ stand, barrel }: TankFile): Pick<Tank, 'stand'> {
  if (stand === undefined) return {};
  return { stand: { axis: stand.axis, gauge: stand.gauge_mm ?? barrel.length_mm / 2 } };
}

/** Duty of the file, undefined where it states none. */
export function toDuty({ duty }: TankFile): Duty | undefined {
  if (duty === undefined) return undefined;
  const { pump_L_per_min: pump } = duty;
  return {
    workingPressure: fromBar(duty.workingPressure_bar),
    stretchFactor: duty.stretchFactor ?? TANK_DEFAULTS.stretchFactor,
    ...(pump === undefined ? {} : { pump: fromLitre(pump) / fromMinutes(1) }),
    holds: (duty.holds ?? []).map(({ pressure_bar, minutes, valve }) => ({
      pressure: fromBar(pressure_bar),
      time: fromMinutes(minutes),
      valve: valve ?? TANK_DEFAULTS.valve,
    })),
  };
}
