/** All sources, in the order of the page. A new file of checks is one line here. */
import type { Source } from './check.ts';
import { collapse, pcc2, pcc2Later, tankEnergy } from './danger/energy.ts';
import { compression, moduli, tankBalance, waterTable } from './danger/water.ts';
import { dinVolumes, dishedEnds, ug32 } from './head/dished-ends.ts';
import { elasticShells, roundPlates } from './head/elastic-shells.ts';
import { en13445, en13445Sheet } from './head/en-13445.ts';
import { galletlyAllowed, galletlyPerfect, limitPressure } from './head/wrinkling-pressures.ts';
import { wrinklingTests } from './head/wrinkling-tests.ts';
import { convergence } from './shell/convergence.ts';
import { solidHeads } from './shell/solid-heads.ts';
import { solidTank } from './shell/solid-tank.ts';
import { biaxial } from './steel/biaxial.ts';
import { callister, kalpakjian } from './steel/power-law.ts';
import { planByHand } from './plan/day.ts';
import { equippedByHand } from './plan/equipped.ts';
import { tensile304L } from './steel/tensile-304L.ts';
import { twoSlope } from './steel/two-slope.ts';
import { units } from './units.ts';
import { heldCylinder } from './vessel/heldCylinder.ts';
import { hold } from './vessel/hold.ts';
import { growthLimits, hosfordCaddell, powerLawInstability, svensson } from './vessel/instability.ts';
import { thinVessel } from './vessel/thin-vessel.ts';

export const SOURCES: readonly Source[] = [
  tensile304L,
  twoSlope,
  callister,
  kalpakjian,
  biaxial,
  thinVessel,
  solidTank,
  solidHeads,
  convergence,
  powerLawInstability,
  svensson,
  hosfordCaddell,
  growthLimits,
  hold,
  heldCylinder,
  en13445,
  en13445Sheet,
  wrinklingTests,
  galletlyPerfect,
  galletlyAllowed,
  limitPressure,
  dishedEnds,
  dinVolumes,
  ug32,
  elasticShells,
  roundPlates,
  waterTable,
  compression,
  moduli,
  tankBalance,
  tankEnergy,
  pcc2,
  pcc2Later,
  collapse,
  planByHand,
  equippedByHand,
  units,
];

/** What stands in the program and has no figure from outside beside it; printed with the checks. */
export const WITHOUT_CHECK: readonly string[] = [
  'Wrinkling pressures of Galletly (1986) and of Galletly & Blachut (1985): formulas and ranges from memory; only their arithmetic is checked, no worked figure was found. They decide "watch the knuckle" together with EN 13445-3.',
  'Limit pressure of Shield & Drucker (1961): formula and range from memory; only its arithmetic is checked, no worked figure was found. It decides nothing.',
  'EN 13445-3 for the test condition (Rp0.2/1.05) and the validity limits of 7.5.3.1 and 7.5.4: from memory.',
  'Rise of the bulk modulus of water with pressure (5.8): from memory; worth 0.3 % of the compression at 25 bar.',
  'Strain of a long seam as a strip in series: by closed form only; a printed figure (0.67 mm for 20 mm at 0.9 strength and 4 %) treats the seam as a cylinder of its own and is 30 % higher.',
  'Plan: the usual limits, the seating pressure, the first step at half of first yield, the pump ten times faster than rest, the stops of the day: our choices, no source; each says so where it stands.',
  'Plan: wall limits of the published methods, chloride, metal temperature, rule of the final hold, gauge classes and ranges: from memory.',
  'Area replacement for openings: the rule of ASME VIII-1 UG-37 by hand calculation only.',
];
