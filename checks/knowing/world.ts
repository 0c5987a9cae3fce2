/** Steels, evidence and the quick tank of the invented tanks: everything that is there before the vent is shut. */
import { diceOf } from '../../core/math/dice.ts';
import { believe } from '../../core/steel/belief/belief.ts';
import type { SteelDraw } from '../../core/steel/belief/draw.ts';
import type { Evidence } from '../../core/steel/evidence/evidence.ts';
import { fitQuickTank, type QuickTank } from '../../core/stretch/quick/quick.ts';
import { shellRun } from '../../core/stretch/quick/run.ts';
import { inventedCertificate, inventedCoupons, inventedTruth, PLATE } from '../calibration/plates.ts';
import { STEEL, TANK } from './tank.ts';

/** Wall known to 2 %. */
const WALL = 0.02;

export interface World {
  readonly truth: SteelDraw;
  readonly draws: readonly SteelDraw[];
}

/** An invented plate and what its certificate, or its certificate and coupons, say of it. */
export function worldOf(seed: number, coupons: number, draws: number): World {
  const dice = diceOf(seed);
  const truth = inventedTruth(dice.named('truth'));
  const evidence: Evidence = {
    plate: PLATE,
    certificates: [inventedCertificate(truth, dice.named('certificate'))],
    coupons: inventedCoupons(truth, coupons, dice.named('coupons')),
    seams: [],
    walls: [],
    rolling: [],
    trials: [],
  };
  const wall = (of: SteelDraw, z: number): SteelDraw => ({ ...of, wallFactor: Math.exp(WALL * z) });
  const walls = dice.named('walls');
  return {
    truth: wall(truth.draw, dice.named('wall').normal()),
    draws: believe(evidence, { seed, draws }).draws.map((draw) => wall(draw, walls.normal())),
  };
}

/** MPa at which the runs are held: about where the tanks of the trials are planned to. */
const TARGET = 2.6;

/** The quick tank, fitted once to steels out of many certificates: `runs` shell solutions, a third held back. */
export function quickOf(runs: number, seed: number): QuickTank {
  const draws = Array.from({ length: runs }, (_, k) => worldOf(seed + k, 0, 50).draws[0]);
  const solved = draws.map((draw) => ({ draw, run: shellRun(TANK, STEEL, draw, TARGET) }));
  return fitQuickTank(TANK, STEEL, solved);
}
