import { describe, expect, test } from 'vitest';
import { assemble, workFor } from '../shell/assemble.ts';
import { elementWork, emptyShape, runLayers, shapeOf, toSlopes } from '../shell/element.ts';
import { meridianOf } from '../shell/meridian/meridian.ts';
import { type Mesh, meshOf, type Piece } from '../shell/meridian/mesh.ts';
import { profileOf } from '../shell/profile.ts';
import { heightOf, insideVolume, massOf, outsideRadius, squeeze, thicknessAt } from '../shell/read.ts';
import { type Shell, shellOf, shellOn } from '../shell/shell.ts';
import { type Solver, solverFor } from '../shell/solve.ts';
import { EVEN, EVERYTHING } from '../shell/specimen.ts';
import { cloneState, type State, unformed } from '../shell/state.ts';
import { pressureStep, pumpStep, walkFrom } from './walk.ts';

const SETTINGS = { elements: 60, layers: 5 };
/** Far finer than usual, so that what is left unbalanced does not count. */
const TIGHT = 1e-9;

/** Up to a pressure in the elastic range, then room in equal steps; rate effects out. */
function loaded(solver: Solver, pressure: number, litres: number, steps: number): State {
  const walk = walkFrom(solver);
  const kept = [pressureStep(walk, 0.01, 0), pressureStep(walk, pressure, 0)];
  for (let k = 0; k < steps; k++) kept.push(pumpStep(walk, (1e6 * litres) / steps, 0));
  for (const step of kept) if (step.kind === 'failed') throw new Error(step.reason);
  return walk.now;
}

/** Gradient of the work of one element by (r', z', kappa, r, phi), of its metal alone, as it stands. */
function forceOf(shell: Shell, state: State, i: number): Float64Array {
  const work = elementWork();
  const shape = emptyShape();
  shapeOf(shell, i, state.move, shape);
  const thinning = shell.link[i] === 1 ? 1 : shell.radius[i] / (shape.r * shape.e);
  runLayers(shell, i, shape, thinning, state, cloneState(state), 0, work);
  toSlopes(work, shape, shell.shear[i]);
  return work.force;
}

test('half a tank and the whole of it move alike to rounding', () => {
  const half = meshOf(meridianOf(EVEN), 24);
  const shells = [half, doubled(half, EVEN.length)].map((mesh) => shellOn(mesh, EVEN, SETTINGS));
  const [a, b] = shells.map((shell) => loaded(solverFor(shell, 0, 0, TIGHT), 0.4, 1.2, 24));
  expect(b.pressure / a.pressure).toBeCloseTo(1, 9);
  expect(b.volume / a.volume).toBeCloseTo(1, 12);
  for (const height of [60, 150, 308.5, 400, 600])
    expect(outsideRadius(shells[1], b, height)).toBeCloseTo(outsideRadius(shells[0], a, height), 8);
  expect(heightOf(shells[1], b)).toBeCloseTo(heightOf(shells[0], a), 7);
  expect(insideVolume(shells[1], b) / insideVolume(shells[0], a)).toBeCloseTo(1, 10);
  expect(massOf(shells[1]) / massOf(shells[0])).toBeCloseTo(1, 12);
});

/** The half and its mirror image, numbered on. */
function doubled(half: Mesh, height: number): Mesh {
  const last = half.nodes - 1;
  const flipped = half.pieces.toReversed().map(
    ({ from, to, a, b, ...rest }): Piece => ({
      ...rest,
      from: 2 * last - to,
      to: 2 * last - from,
      a: { r: b.r, z: height - b.z, angle: Math.PI - b.angle },
      b: { r: a.r, z: height - a.z, angle: Math.PI - a.angle },
    }),
  );
  const nodes = 2 * last + 1;
  const spine = Array.from({ length: nodes }, (_, i) => i);
  return { nodes, pieces: [...half.pieces, ...flipped], spine, half: false };
}

describe('the wall carries what the water presses', () => {
  const lying = { ...EVERYTHING, stand: { axis: 'lying', gauge: 255 } } as const;
  const shell = shellOf(lying, SETTINGS);
  const state = loaded(solverFor(shell, 0, 0, TIGHT), 0.4, 1.1, 22);

  test('the axial force of every barrel ring is pressure on the area inside its mid-surface', () => {
    const shape = emptyShape();
    shell.mesh.pieces.forEach(({ span, a }, i) => {
      if (span.part !== 'barrel' || span.root !== undefined) return;
      shapeOf(shell, i, state.move, shape);
      const thinning = shell.radius[i] / (shape.r * shape.e);
      const r = shape.r + shell.offset[i] * thinning * shape.sine;
      const force = forceOf(shell, state, i)[1] / shell.length[i];
      // Where the mid-surface bends away, the slope of what lies between it and the line counts: 1e-4 at the steps of wall.
      expect(Math.abs(force / (Math.PI * r * r * state.pressure) - 1), `z ${a.z}`).toBeLessThan(3e-4);
    });
  });

  test('the hoop of a ring cut from mid-course carries pressure times radius', () => {
    const i = shell.mesh.pieces.findIndex(({ span, a }) => span.part === 'barrel' && a.z > 470);
    let hoop = 0;
    for (let point = 5 * i; point < 5 * i + 5; point++) hoop += shell.weight[point] * state.stressH[point];
    // Work of hoop stress on a uniform swelling is that of the pressure: sum of tau dV = p x 2 pi r L x r.
    const shape = emptyShape();
    shapeOf(shell, i, state.move, shape);
    const r = shape.r + (shell.offset[i] * shell.radius[i]) / (shape.r * shape.e);
    const length = shell.length[i] * shape.e;
    // Curvature along the meridian carries the rest: under 1 % here.
    expect(Math.abs(hoop / (state.pressure * 2 * Math.PI * r * length * r) - 1)).toBeLessThan(0.01);
  });

  test('the volume of water is that of a polygon through the inside faces turned about the axis, less the baffle', () => {
    const scale = 1 + squeeze(shell, state.pressure);
    const line = profileOf(shell, state).map(({ r, z, wall }, k, all) => {
      const [before, after] = [all[Math.max(0, k - 1)], all[Math.min(all.length - 1, k + 1)]];
      const angle = Math.atan2(after.z - before.z, after.r - before.r);
      return { r: r - 0.5 * wall * Math.sin(angle), z: z + 0.5 * wall * Math.cos(angle) };
    });
    const ends = [{ r: 0, z: line[0].z }, ...line, { r: 0, z: line[line.length - 1].z }];
    let volume = 0;
    ends.slice(1).forEach((b, k) => {
      const a = ends[k];
      volume += (Math.PI / 3) * (b.z - a.z) * (a.r * a.r + a.r * b.r + b.r * b.r);
    });
    const baffle = Math.PI * ((431 / 2) ** 2 - (431 / 2 - 47) ** 2) * 1.6;
    // Chords of the polygon: 160 of them leave 3e-4 of the volume.
    expect(Math.abs((volume * scale - baffle) / insideVolume(shell, state) - 1)).toBeLessThan(6e-4);
  });
});

test('a tank on its foot weighs on it what its water weighs', () => {
  const weight = 9.8e-6;
  const shell = shellOf(EVERYTHING, SETTINGS);
  const solver = solverFor(shell, weight, 255, TIGHT);
  const state = loaded(solver, 0.6, 0, 0);
  const work = workFor(shell);
  work.thinning.set(solver.work.thinning);
  assemble(shell, state, cloneState(state), { pressure: 0.6, weight, gauge: 255 }, 0, work);
  const upward = work.residual.filter((_, k) => k % 3 === 1).reduce((sum, force) => sum + force, 0);
  // The column stands inside the line, half a wall outside the inside face: 2 % more than the water itself.
  expect(upward / (weight * insideVolume(shell, state))).toBeGreaterThan(1.01);
  expect(upward / (weight * insideVolume(shell, state))).toBeLessThan(1.03);
  const foot = solver.grips.find(({ freedom }) => freedom === 1)?.node ?? -1;
  expect(shell.Z[foot]).toBe(-83);
  expect(work.residual[3 * foot + 1] / upward).toBeCloseTo(1, 6);
});

test('Newton squares what is left: balance 1e-4 to 1e-8 takes one iteration, and 1e-8 to the rounding one more', () => {
  const shell = shellOf(EVEN, SETTINGS);
  const from = loaded(solverFor(shell, 0, 0, TIGHT), 0.4, 1.2, 24);
  const iterations = [1e-4, 1e-8, 1e-10].map((balance) => {
    const walk = walkFrom(solverFor(shell, 0, 0, balance), from);
    // The first step has no direction: the second is the one that is looked at.
    pumpStep(walk, 1e3, 0);
    const settled = pumpStep(walk, 4e3, 0);
    expect(settled.kind).toBe('settled');
    return settled.iterations;
  });
  expect(iterations[1] - iterations[0]).toBeLessThanOrEqual(1);
  expect(iterations[2] - iterations[1]).toBeLessThanOrEqual(1);
});

describe('what is read off', () => {
  const shell = shellOf(EVEN, SETTINGS);

  test('the wall of a stretched ring is what its strains leave: plastic flow keeps the volume of the metal', () => {
    const state = loaded(solverFor(shell, 0, 0), 0.4, 4.2, 60);
    const i = shell.mesh.pieces.findIndex(({ span, a }) => span.part === 'barrel' && a.z > 280);
    const [place] = profileOf(shell, state).filter(({ z0 }) => z0 > 280 && z0 < 308.5);
    // Elastic strain swells the metal by (1 - 2 nu) times the sum of the stresses over the modulus; plastic strain does not.
    const stress = state.stressM[5 * i + 2] + state.stressH[5 * i + 2];
    const swollen = ((1 - 2 * 0.29) * stress) / 193_000 + 2 * squeeze(shell, state.pressure);
    const through = swollen - (place.hoop.mid + place.meridional.mid);
    expect(Math.log(thicknessAt(shell, state, i) / 2.1)).toBeCloseTo(through, 4);
    expect(place.hoop.mid).toBeGreaterThan(0.019);
  });

  test('unformed it has the volume, the height and the mass of its drawing', () => {
    const still = unformed(shell);
    const inside = 431 / 2;
    const volume = Math.PI * inside ** 2 * 617 + (4 / 3) * Math.PI * inside ** 2 * 103;
    expect(insideVolume(shell, still) / volume).toBeCloseTo(1, 3);
    expect(heightOf(shell, still)).toBeCloseTo(617 + 2 * (103 + 2.1 / 2), 6);
    const barrel = Math.PI * ((inside + 2.1) ** 2 - inside ** 2) * (617 - 42);
    const flanges = Math.PI * ((inside + 1.7) ** 2 - inside ** 2) * 42;
    // Area of an oblate spheroid by its closed form, mid-surface.
    const [a, c] = [inside + 0.85, 103 + 0.85];
    const e = Math.sqrt(1 - (c / a) ** 2);
    const heads = 2 * Math.PI * a * a * (1 + ((1 - e * e) / e) * Math.atanh(e)) * 1.7;
    expect(massOf(shell) / (7.9e-9 * (barrel + flanges + heads))).toBeCloseTo(1, 3);
  });
});

test('the work of the pressure is stored in the wall or spent in it', () => {
  const tank = { ...EVERYTHING, stand: { axis: 'lying', gauge: 255 } } as const;
  const shell = shellOf(tank, SETTINGS);
  const walk = walkFrom(solverFor(shell, 0, 0));
  let pressed = 0;
  let spent = 0;
  let before = cloneState(walk.now);
  const count = (): void => {
    pressed += 0.5 * (before.pressure + walk.now.pressure) * (walk.now.volume - before.volume);
    spent += plasticWork(shell, before, walk.now);
    before = cloneState(walk.now);
  };
  for (const pressure of [0.01, 0.2, 0.4]) {
    pressureStep(walk, pressure, 0);
    count();
  }
  for (let k = 0; k < 150; k++) {
    expect(pumpStep(walk, 2.2e4, 0).kind).toBe('settled');
    count();
  }
  const stored = elasticWork(shell, walk.now);
  expect(spent).toBeGreaterThan(2 * stored);
  // Backward Euler counts the stress at the end of each of 150 steps: 0.1 %; shear strain energy is left out.
  expect(Math.abs((stored + spent) / pressed - 1)).toBeLessThan(2e-3);
});

/** Per unformed volume: stress times increment of equivalent plastic strain, mean of both ends. */
function plasticWork(shell: Shell, before: State, now: State): number {
  const equivalent = ({ stressM: m, stressH: h }: State, k: number): number =>
    Math.sqrt(m[k] * m[k] - m[k] * h[k] + h[k] * h[k]);
  let work = 0;
  for (let k = 0; k < shell.weight.length; k++) {
    const gained = now.plasticEq[k] - before.plasticEq[k];
    if (gained > 0) work += shell.weight[k] * 0.5 * (equivalent(before, k) + equivalent(now, k)) * gained;
  }
  return work;
}

function elasticWork(shell: Shell, { stressM: m, stressH: h }: State): number {
  let work = 0;
  for (let k = 0; k < shell.weight.length; k++) {
    const { young: E, poisson: nu } = shell.metals[shell.metal[Math.floor(k / shell.settings.layers)]];
    work += (shell.weight[k] * (m[k] * m[k] + h[k] * h[k] - 2 * nu * m[k] * h[k])) / (2 * E);
  }
  return work;
}
