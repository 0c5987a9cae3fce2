/** What the numbers of a tank file say against each other: places outside the barrel, courses that do not add up. */
import type { Issue } from '../../issue/issue.ts';
import { type Findings, headFindings, joined } from './headContradictions.ts';
import { odd } from './plausible.ts';
import { steelFindings } from './steelContradictions.ts';
import type { TankFile } from '../format/tankFile.ts';

/** Heights of courses may miss the length of the barrel by the rounding of a drawing in inches, relative. */
const COURSE_ROUNDING = 1e-6;
/** Thin shells end where the wall is a fifth of the radius (common practice: a tenth; 0.2 leaves room). */
const THICKEST_IN_RADII = 0.2;

export function contradictions(file: TankFile): Findings {
  return joined([
    { wrong: [...longFlanges(file), ...unequalCourses(file), ...offBarrel(file)], odd: [] },
    {
      wrong: [...wideBaffles(file), ...overlapping(file), ...badOpenings(file), ...doubles(file)],
      odd: thickWalls(file),
    },
    headFindings(file, 'top'),
    headFindings(file, 'bottom'),
    { wrong: steelFindings(file), odd: trappedAir(file) },
  ]);
}

function longFlanges({ barrel, heads }: TankFile): Issue[] {
  const flanges = (heads.top.straightFlange_mm ?? 0) + (heads.bottom.straightFlange_mm ?? 0);
  if (flanges <= barrel.length_mm) return [];
  return [
    {
      path: 'barrel.length_mm',
      expected: `at least the two straight flanges, ${flanges} mm (they lie within the length)`,
      received: `${barrel.length_mm}`,
      suggestion: 'give the length from tangent line to tangent line, straight flanges included',
    },
  ];
}

function unequalCourses({ barrel }: TankFile): Issue[] {
  if (barrel.courses === undefined) return [];
  const sum = barrel.courses.reduce((total, course) => total + course.length_mm, 0);
  if (Math.abs(sum - barrel.length_mm) <= COURSE_ROUNDING * barrel.length_mm) return [];
  return [
    {
      path: 'barrel.courses',
      expected: `lengths that sum to barrel.length_mm, ${barrel.length_mm}`,
      received: `${sum}`,
      suggestion: `change a course, or give barrel.length_mm ${sum}`,
    },
  ];
}

/** Everything that has a height must have it on the barrel. */
function offBarrel({ barrel, girths, baffles, seams, openings }: TankFile): Issue[] {
  const at = (list: readonly { readonly at_mm?: number }[] | undefined, path: string) =>
    (list ?? []).map((each, place) => ({ path: `${path}[${place}].at_mm`, at: each.at_mm ?? 0 }));
  const onBarrel = [
    ...at(girths, 'girths'),
    ...at(baffles, 'baffles'),
    ...at(seams?.girth, 'seams.girth'),
    ...at(openings, 'openings'),
  ];
  return onBarrel
    .filter((place) => place.at > barrel.length_mm)
    .map((place) => ({
      path: place.path,
      expected: `a place on the barrel, 0 to ${barrel.length_mm} mm over the bottom tangent line`,
      received: `${place.at}`,
      suggestion: `give at most ${barrel.length_mm}`,
    }));
}

function wideBaffles({ barrel, baffles }: TankFile): Issue[] {
  const radius = barrel.insideDiameter_mm / 2;
  return (baffles ?? [])
    .map((baffle, place) => ({ baffle, path: `baffles[${place}].width_mm` }))
    .filter(({ baffle }) => baffle.width_mm >= radius)
    .map(({ baffle, path }) => ({
      path,
      expected: `a width under the inside radius, ${radius} mm, measured from the wall inwards`,
      received: `${baffle.width_mm}`,
      suggestion: `give less than ${radius}`,
    }));
}

/** Two rings of weld metal, or two baffles, in one place. */
function overlapping({ seams, baffles }: TankFile): Issue[] {
  const rings = (seams?.girth ?? []).map(({ at_mm, width_mm }) => ({ at: at_mm, width: width_mm }));
  const discs = (baffles ?? []).map(({ at_mm, thickness_mm }) => ({ at: at_mm, width: thickness_mm }));
  return [...overlaps(rings, 'seams.girth'), ...overlaps(discs, 'baffles')];
}

function overlaps(list: readonly { readonly at: number; readonly width: number }[], path: string): Issue[] {
  const ranked = list.map((each, place) => ({ ...each, place })).sort((a, b) => a.at - b.at);
  return ranked.slice(1).flatMap((upper, place) => {
    const lower = ranked[place];
    const room = (upper.width + lower.width) / 2;
    if (upper.at - lower.at >= room) return [];
    return [
      {
        path: `${path}[${upper.place}].at_mm`,
        expected: `at least ${room} mm from ${path}[${lower.place}] at ${lower.at} mm`,
        received: `${upper.at}`,
        suggestion: 'they overlap: move one, or make it one',
      },
    ];
  });
}

function badOpenings({ barrel, openings }: TankFile): Issue[] {
  return (openings ?? []).flatMap((hole, place) => {
    const path = `openings[${place}]`;
    if (hole.diameter_mm >= barrel.insideDiameter_mm) {
      const expected = `less than the inside diameter, ${barrel.insideDiameter_mm} mm`;
      return [
        {
          path: `${path}.diameter_mm`,
          expected,
          received: `${hole.diameter_mm}`,
          suggestion: 'give the hole',
        },
      ];
    }
    if (hole.part !== 'barrel' || hole.at_mm !== undefined) return [];
    const expected = 'its height over the bottom tangent line, mm';
    return [{ path: `${path}.at_mm`, expected, received: 'nothing', suggestion: 'give at_mm' }];
  });
}

/** Names that the results are told apart by, and skirts of which there is one at each end. */
function doubles({ girths, skirts }: TankFile): Issue[] {
  const twice = (names: readonly (string | undefined)[], path: (place: number) => string, expected: string) =>
    names.flatMap((name, place) =>
      name === undefined || names.indexOf(name) === place
        ? []
        : [
            {
              path: path(place),
              expected,
              received: JSON.stringify(name),
              suggestion: 'give another, or take one out',
            },
          ],
    );
  return [
    ...twice(
      (girths ?? []).map(({ name }) => name),
      (place) => `girths[${place}].name`,
      'each name once',
    ),
    ...twice(
      (skirts ?? []).map(({ end }) => end),
      (place) => `skirts[${place}].end`,
      'one skirt at each end',
    ),
  ];
}

/** Walls that no thin shell describes. Those outside the table's range are told already. */
function thickWalls({ barrel }: TankFile): Issue[] {
  const most = (THICKEST_IN_RADII * barrel.insideDiameter_mm) / 2;
  if (barrel.wall_mm <= most || barrel.wall_mm > 30) return [];
  return [
    odd('barrel.wall_mm', `a wall of at most a fifth of the inside radius, ${most} mm`, `${barrel.wall_mm}`),
  ];
}

function trappedAir({ barrel, water }: TankFile): Issue[] {
  const litres = ((Math.PI / 4) * barrel.insideDiameter_mm ** 2 * barrel.length_mm) / 1e6;
  const air = water?.trappedAir_L ?? 0;
  if (air <= litres || air > 500) return [];
  return [odd('water.trappedAir_L', `less than the barrel holds, ${litres.toPrecision(3)} L`, `${air}`)];
}
