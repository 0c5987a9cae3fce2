/** Heads that cannot be made as stated, and heads that hardly are. */
import type { Issue } from '../../issue/issue.ts';
import type { HeadFile } from '../format/headFile.ts';
import { headWall, type Radii, torisphericalRadii } from '../headRadii.ts';
import { odd } from './plausible.ts';
import type { TankFile } from '../format/tankFile.ts';

/** Contradictions stop; odd shapes stop until they are taken as given. */
export interface Findings {
  readonly wrong: readonly Issue[];
  readonly odd: readonly Issue[];
}

export const joined = (findings: readonly Findings[]): Findings => ({
  wrong: findings.flatMap((each) => each.wrong),
  odd: findings.flatMap((each) => each.odd),
});

/** EN 13445-3 7.5.3.1 asks for a knuckle of at least two walls (from memory). */
const LEAST_KNUCKLE_IN_WALLS = 2;
/** EN 13445-3 7.5.3.1 ends at a crown of the outside diameter (from memory); flatter heads are made up to here. */
const FLATTEST_CROWN_IN_DIAMETERS = 1.5;

export function headFindings(file: TankFile, end: 'top' | 'bottom'): Findings {
  const head = file.heads[end];
  const path = `heads.${end}`;
  const radius = file.barrel.insideDiameter_mm / 2;
  return joined([shapeFindings(head, file, path), bossFindings(head, radius, path)]);
}

function shapeFindings(head: HeadFile, file: TankFile, path: string): Findings {
  if (head.shape === 'torispherical') return torisphericalFindings(head, file, path);
  if (head.shape === 'semi-ellipsoidal') return { wrong: twoDepths(head, path), odd: [] };
  if (head.shape !== 'conical') return { wrong: [], odd: [] };
  const radius = file.barrel.insideDiameter_mm / 2;
  return {
    wrong: [...knuckleTooLarge(head.knuckleRadius_mm, radius, path), ...flatCone(head.halfAngle_deg, path)],
    odd: knuckleTooSmall(head.knuckleRadius_mm, headWall(head, file.barrel.wall_mm), path),
  };
}

function flatCone(halfAngle: number, path: string): Issue[] {
  if (halfAngle < 90) return [];
  return [
    {
      path: `${path}.halfAngle_deg`,
      expected: 'an angle under 90 degrees between axis and cone wall',
      received: `${halfAngle}`,
      suggestion: 'give half of the apex angle, or shape "flat"',
    },
  ];
}

function twoDepths(head: Extract<HeadFile, { shape: 'semi-ellipsoidal' }>, path: string): Issue[] {
  if (head.ratio === undefined || head.depth_mm === undefined) return [];
  return [
    {
      path: `${path}.depth_mm`,
      expected: 'either ratio or depth_mm',
      received: `ratio ${head.ratio} and depth_mm ${head.depth_mm}`,
      suggestion: 'leave one of the two out',
    },
  ];
}

function torisphericalFindings(
  head: Extract<HeadFile, { shape: 'torispherical' }>,
  { barrel }: TankFile,
  path: string,
): Findings {
  const radius = barrel.insideDiameter_mm / 2;
  const wall = headWall(head, barrel.wall_mm);
  const given = [head.crownRadius_mm, head.knuckleRadius_mm].filter((each) => each !== undefined);
  const radii = torisphericalRadii(head, barrel.insideDiameter_mm, wall);
  if (radii === undefined) return { wrong: [radiiMissing(head, path)], odd: [] };
  const twice =
    head.standard !== undefined && given.length > 0 ? [radiiAndStandard(head.standard, path)] : [];
  return {
    wrong: [
      ...twice,
      ...crownTooSmall(radii.crown, radius, path),
      ...knuckleTooLarge(radii.knuckle, radius, path),
      ...noKnuckle(radii, radius, path),
    ],
    odd: [
      ...crownTooFlat(radii.crown, barrel.insideDiameter_mm + 2 * wall, path),
      ...knuckleTooSmall(radii.knuckle, wall, path),
    ],
  };
}

const radiiMissing = (head: Extract<HeadFile, { shape: 'torispherical' }>, path: string): Issue => ({
  path: head.crownRadius_mm === undefined ? `${path}.crownRadius_mm` : `${path}.knuckleRadius_mm`,
  expected: 'crownRadius_mm and knuckleRadius_mm, or a standard',
  received: 'nothing',
  suggestion: 'give both inside radii, or "standard": "DIN 28011"',
});

const radiiAndStandard = (standard: string, path: string): Issue => ({
  path: `${path}.standard`,
  expected: 'either radii or a standard',
  received: `${standard} and radii`,
  suggestion: 'leave one of the two out',
});

function crownTooSmall(crown: number, radius: number, path: string): Issue[] {
  if (crown >= radius) return [];
  return [
    {
      path: `${path}.crownRadius_mm`,
      expected: `a crown radius of at least the inside radius of the barrel, ${radius} mm`,
      received: `${crown}`,
      suggestion: `give at least ${radius}`,
    },
  ];
}

function crownTooFlat(crown: number, outside: number, path: string): Issue[] {
  const most = FLATTEST_CROWN_IN_DIAMETERS * outside;
  if (crown <= most) return [];
  return [
    odd(`${path}.crownRadius_mm`, `a crown radius of at most 1.5 outside diameters, ${most} mm`, `${crown}`),
  ];
}

function knuckleTooLarge(knuckle: number, radius: number, path: string): Issue[] {
  if (knuckle <= radius) return [];
  return [
    {
      path: `${path}.knuckleRadius_mm`,
      expected: `a knuckle radius of at most the inside radius of the barrel, ${radius} mm`,
      received: `${knuckle}`,
      suggestion: `give at most ${radius}; a common knuckle is a tenth of the diameter`,
    },
  ];
}

/** Crown and knuckle of the barrel's radius are one sphere. */
function noKnuckle({ crown, knuckle }: Radii, radius: number, path: string): Issue[] {
  if (crown > knuckle || crown < radius || knuckle > radius) return [];
  return [
    {
      path: `${path}.knuckleRadius_mm`,
      expected: `a knuckle radius under the crown radius, ${crown} mm`,
      received: `${knuckle}`,
      suggestion: 'give "shape": "hemispherical" without radii',
    },
  ];
}

function knuckleTooSmall(knuckle: number, wall: number, path: string): Issue[] {
  const least = LEAST_KNUCKLE_IN_WALLS * wall;
  if (knuckle >= least) return [];
  return [
    odd(
      `${path}.knuckleRadius_mm`,
      `a knuckle radius of at least 2 x wall ${wall} mm, ${least} mm`,
      `${knuckle}`,
    ),
  ];
}

function bossFindings({ boss }: HeadFile, radius: number, path: string): Findings {
  if (boss === undefined || boss.diameter_mm < 2 * radius) return { wrong: [], odd: [] };
  const wrong = {
    path: `${path}.boss.diameter_mm`,
    expected: `a boss smaller than the inside diameter, ${2 * radius} mm`,
    received: `${boss.diameter_mm}`,
    suggestion: `give less than ${2 * radius}`,
  };
  return { wrong: [wrong], odd: [] };
}
