import type { Tank } from '@hoopwright/core/tank';
import type { Stretchable } from '@hoopwright/wire/advice';
import type { Plan } from '@hoopwright/wire/plan';
import type { Draft } from '@hoopwright/wire/record';
import { expect, test } from 'vitest';
import { MESH, planFrom, tankFrom, TEST_TANK } from '../../day/rehearsed.ts';
import { sha256 } from '../../store/hash.ts';
import { rehearsal } from '../rehearsal.ts';
import { worldOf } from './days.ts';

/** A weak seam is also what bounds the pressure that the tank bears: its margin would be called first, or with it. */
const SEAM_ALONE = { value: 1.01, by: 'A. Invented', why: 'the seam alone is looked at' };

/** The test tank with a long seam of so much of the plate's strength, rehearsed as its own file has it. */
function rehearsedSeam(strength: number) {
  const file = {
    ...TEST_TANK,
    seams: { long: { width_mm: 6, strength } },
    day: { ...TEST_TANK.day, limits: { marginToMaximum: SEAM_ALONE } },
  };
  const { tank } = tankFrom(file);
  const plan = planFrom(file);
  const stretch = stretchFor(tank, plan, strength);
  const given = { tank, plan, seed: 5, faults: [], hash: sha256, program: 'test', mesh: MESH, stretch };
  const drafts: Draft[] = [];
  for (const { draft } of rehearsal(given).happenings) drafts.push(draft);
  const says = (draft: Draft): string => JSON.stringify(draft.body);
  return { plan, drafts, stops: drafts.filter((one) => says(one).includes('"stop and release"')), says };
}

let solved: { readonly stretch: Stretchable; readonly strength: number } | undefined;

/** The shell knows nothing of a long seam: solved once, with the seam's strength about that of the file. */
function stretchFor(tank: Tank, plan: Plan, strength: number): Stretchable {
  solved ??= { stretch: worldOf({ tank, plan }, 71).stretch, strength };
  const { stretch, strength: then } = solved;
  const draws = stretch.draws.map((draw) => ({ ...draw, seamStrength: draw.seamStrength + strength - then }));
  return { quick: { ...stretch.quick, tank }, draws };
}

test('a weak long seam is called by its strain while every girth is far from its own limit', () => {
  const { plan, drafts, stops, says } = rehearsedSeam(0.74);
  expect(plan.remarks).toContain('seam strained over its limit');
  const [stop] = stops;
  expect(stop?.body['reasons']).toContainEqual(
    expect.stringMatching(/^The long seam is strained by .* allows 9\.0 %\.$/),
  );
  const ceiling = plan.limits.find(({ limit }) => limit === 'growthUnderPressure_percent')?.value ?? NaN;
  const grown = Number(/has grown by (\d+\.\d+) %/.exec(says(stop))?.[1]);
  expect(grown).toBeGreaterThan(0.5);
  expect(grown).toBeLessThan(0.5 * ceiling);
  // The readings behind it are in the record, and the crew lets the pressure out.
  const readings = stop.body['readings'];
  const kinds = Array.isArray(readings) ? readings.map((seq) => drafts[Number(seq) - 1]?.kind) : [];
  expect(kinds).toContain('reading');
  expect(drafts.at(-1)?.body['end']).toBe('broken off');
});

test('a long seam as strong as its plate is never called', () => {
  const { plan, drafts, stops, says } = rehearsedSeam(1.04);
  expect(plan.remarks).not.toContain('seam strained over its limit');
  expect(stops).toEqual([]);
  const forecast = drafts.findLast(({ kind }) => kind === 'forecast');
  expect(forecast === undefined ? '' : says(forecast)).toContain('seam_percent');
});
