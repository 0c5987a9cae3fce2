import { describe, expect, test } from 'vitest';
import { flowOf } from '../flow.ts';
import { type Metal, metalOf } from '../plane.ts';
import { rolled, rollingFinding, stiffening } from './rolling.ts';
import { bentSlowly, bentTo, flatStrip, letGo, momentOf } from './strip.ts';

/**
 * With Poisson's ratio 0.5 the stress along the roll is half the hoop stress in the elastic and in the plastic range, so
 * the closed forms of beam theory hold exactly with E' = E/(1 - nu^2) and Y' = 2Y/sqrt3 (Hosford & Caddell, Metal
 * Forming, ch. "Bending", from memory, re-derived).
 */
const E = 193_000;
const Y = 271;
const wideE = E / 0.75;
const wideY = (2 * Y) / Math.sqrt(3);
const perfect = metalOf(E, 0.5, flowOf({ law: 'voce', yield: Y, rise: 0, steepness: 1 }));
const t = 2.3;

/** Half thickness of the elastic core over half the wall. */
const core = (curvature: number): number => (2 * wideY) / (wideE * curvature * t);
const perfectMoment = (curvature: number): number => ((wideY * t * t) / 4) * (1 - core(curvature) ** 2 / 3);

describe('a strip without hardening', () => {
  // 64 Gauss points see the kink at the edge of the elastic core: 1e-4 of the moment.
  test.each([1 / 170, 1 / 311, 1 / 640])(
    'bent to curvature %f it carries the moment of the closed form',
    (curvature) => {
      const ours = momentOf(bentTo(flatStrip(perfect, t), curvature));
      expect(Math.abs(ours / perfectMoment(curvature) - 1)).toBeLessThan(1e-4);
    },
  );

  test('springs back by the ratio of the closed form', () => {
    // Gardiner, Trans. ASME 79 (1957) 1: R0/Rf = 1 - 3x + 4x^3 with x = Y' R0 / (E' t).
    for (const radius of [95, 170, 311]) {
      const x = (wideY * radius) / (wideE * t);
      const free = letGo(bentTo(flatStrip(perfect, t), 1 / radius));
      expect(Math.abs(free.curvature * radius - (1 - 3 * x + 4 * x ** 3))).toBeLessThan(2e-4);
    }
  });

  test('keeps the residual stress of the closed form at the face and at the edge of its elastic core', () => {
    const curvature = 1 / 170;
    const edge = core(curvature);
    const strip = bentTo(flatStrip(perfect, t, [edge * 0.9999, 1]), curvature);
    const opened = (12 * perfectMoment(curvature)) / (wideE * t ** 3);
    const [atEdge, atFace] = bentTo(strip, curvature - opened).layers;
    const bending = (6 * perfectMoment(curvature)) / t ** 2;
    // The edge is read 0.01 % inside; 0.05 % of the yield stress.
    expect(Math.abs(atFace.hoop - (wideY - bending))).toBeLessThan(5e-4 * wideY);
    expect(Math.abs(atEdge.hoop - (wideY - bending * edge))).toBeLessThan(5e-4 * wideY);
    expect(atFace.hoop).toBeLessThan(0);
  });
});

describe('a strip that hardens in a straight line', () => {
  const H = 2900;
  const linear = metalOf(E, 0.5, flowOf({ law: 'ludwik', yield: Y, K: H, n: 1 }));

  test('carries the moment of the closed form', () => {
    // Hoop stress Y' + T (strain - Y'/E') beyond yield, 1/T = 1/E' + 3/(4H).
    const T = 1 / (1 / wideE + 3 / (4 * H));
    for (const curvature of [1 / 120, 1 / 300]) {
      const c = core(curvature);
      const elastic = (wideE * curvature * t ** 3) / 12;
      const moment =
        elastic * c ** 3 +
        ((wideY * t * t) / 4) * (1 - T / wideE) * (1 - c * c) +
        ((T * curvature * t ** 3) / 12) * (1 - c ** 3);
      expect(Math.abs(momentOf(bentTo(flatStrip(linear, t), curvature)) / moment - 1)).toBeLessThan(1e-4);
    }
  });
});

describe('plate of ordinary Poisson ratio', () => {
  const metal: Metal = metalOf(E, 0.29, flowOf({ law: 'swift', K: 1350, n: 0.45, e0: 0.0155 }));

  test('a layer follows the flow rule integrated in small explicit steps', () => {
    // Second method: forward Euler on the rate equations of plane strain; 40,000 steps leave about 1e-4 of the stress.
    const strain = 0.0061;
    const other = explicitLayer(strain, 40_000);
    const layer = bentSlowly(flatStrip(metal, 2, [1]), strain, 400).layers[0];
    expect(Math.abs(layer.hoop / other.hoop - 1)).toBeLessThan(1e-3);
    expect(Math.abs(layer.meridional / other.along - 1)).toBeLessThan(3e-3);
    expect(Math.abs(layer.plastic / other.plastic - 1)).toBeLessThan(1e-3);
  });

  test('elastic bending takes the plate modulus', () => {
    const curvature = 1e-5;
    const expected = ((E / (1 - 0.29 ** 2)) * curvature * 8) / 12;
    expect(momentOf(bentTo(flatStrip(metal, 2), curvature)) / expected).toBeCloseTo(1, 9);
  });

  const barrel = rolled(metal, { thickness: 2, radius: 301, passes: 3 });

  test('rolled, it has the radius wanted, no moment and the surface strain t/(2R)', () => {
    expect(barrel.passes.length).toBe(3);
    expect(barrel.passes[2].freeRadius).toBeCloseTo(301, 6);
    expect(barrel.passes[2].loadedRadius).toBeLessThan(301);
    expect(barrel.surfaceStrain).toBeCloseTo(2 / 602, 12);
    // The elastic part of the surface strain springs back: what is left is plastic but for the residual stress.
    expect(barrel.surfacePlastic).toBeGreaterThan(barrel.surfaceStrain);
    const net = barrel.layers.reduce((sum, { hoop }) => sum + hoop, 0);
    expect(Math.abs(net)).toBeLessThan(1e-9);
    // Moment of the layers by Simpson's rule on 41 of them; the kink at the elastic core costs 1 MPa of face stress.
    const moment = barrel.layers.reduce((sum, { hoop, depth }, k) => {
      const simpson = k === 0 || k === 40 ? 1 : k % 2 === 1 ? 4 : 2;
      return sum + simpson * hoop * depth;
    }, 0);
    expect(Math.abs(moment / 60)).toBeLessThan(1);
  });

  test('the number of passes matters little, rolling too tight and opening again matters', () => {
    const once = rolled(metal, { thickness: 2, radius: 301, passes: 1 });
    const tight = rolled(metal, { thickness: 2, radius: 301, passes: 3, tightest: 240 });
    expect(Math.abs(barrel.averagePlastic / once.averagePlastic - 1)).toBeLessThan(0.01);
    expect(tight.averagePlastic / once.averagePlastic).toBeGreaterThan(1.2);
    expect(tight.passes[3].freeRadius).toBeCloseTo(301, 6);
  });

  test('a bend under the rolls counts for what it opens to, and only where it is tighter than needed', () => {
    const needed = barrel.passes[2].loadedRadius;
    const at = (tightestUnderRolls: number): number =>
      rolled(metal, { thickness: 2, radius: 301, passes: 3, tightestUnderRolls }).averagePlastic;
    expect(at(1.05 * needed)).toBe(barrel.averagePlastic);
    expect(at(0.8 * needed) / barrel.averagePlastic).toBeGreaterThan(1.2);
    // Bent under the rolls to the radius of the barrel it springs back far beyond it: no over-bending at all.
    expect(at(301)).toBe(barrel.averagePlastic);
    expect(barrel.passes[2].loadedRadius).toBeLessThan(0.7 * 301);
  });

  test('the finding: rolling 2 mm to 600 mm explains one per cent of stiffness, not five', () => {
    const own = stiffening(metal, barrel, 0.04);
    expect(own).toBeGreaterThan(0.003);
    expect(own).toBeLessThan(0.02);
    expect(rollingFinding(metal, barrel, { excess: 0.05, plastic: 0.04 }).explained).toBeCloseTo(
      own / 0.05,
      12,
    );
    expect(rollingFinding(metal, barrel, { excess: 0.002, plastic: 0.04 }).explained).toBe(1);
  });

  test('plate too thick for the radius is refused with its numbers', () => {
    expect(() => rolled(metal, { thickness: 20, radius: 150, passes: 1 })).toThrow('20 mm rolled to 150 mm');
  });

  const explicitLayer = (strain: number, steps: number): { hoop: number; along: number; plastic: number } => {
    const nu = 0.29;
    const stiff = E / (1 - nu * nu);
    const out = new Float64Array(2);
    let [hoop, along, plastic] = [0, 0, 0];
    for (let k = 0; k < steps; k++) {
      const d = strain / steps;
      const trial = [hoop + stiff * d, along + stiff * nu * d];
      const equivalent = (h: number, a: number): number => Math.sqrt(h * h - h * a + a * a);
      metal.flow.at(plastic, out);
      if (equivalent(trial[0], trial[1]) <= out[0]) {
        [hoop, along] = trial;
        continue;
      }
      const eq = equivalent(hoop, along);
      const n = [(2 * hoop - along) / (2 * eq), (2 * along - hoop) / (2 * eq)];
      const back = [stiff * (n[0] + nu * n[1]), stiff * (n[1] + nu * n[0])];
      const step = (n[0] * stiff * d + n[1] * stiff * nu * d) / (n[0] * back[0] + n[1] * back[1] + out[1]);
      hoop += stiff * d - step * back[0];
      along += stiff * nu * d - step * back[1];
      plastic += step;
    }
    return { hoop, along, plastic };
  };
});
