/** Arithmetic only: the formulas as remembered, worked out by hand. No figure from print was found for any of them. */
import {
  galletlyDesign,
  galletlyWrinkling,
  shieldDrucker,
  type Torisphere,
} from '../../core/tank/wrinkle.ts';
import { type Check, plusMinus, type Source } from '../check.ts';

const PROOF = 235;
const YOUNG = 193e3;
const SHALLOW: Torisphere = { insideDiameter: 600, crownRadius: 600, knuckleRadius: 60, wall: 2 };
const DEEP: Torisphere = {
  insideDiameter: 820,
  crownRadius: 0.8 * 820,
  knuckleRadius: 0.154 * 820,
  wall: 2,
};

const hand = (key: string, pressure: (head: Torisphere) => number, shallow: number, deep: number): Check[] =>
  [
    { name: 'R 600, r 60, D 600, wall 2 mm', head: SHALLOW, theirs: shallow },
    { name: 'R 656, r 126.28, D 820, wall 2 mm', head: DEEP, theirs: deep },
  ].map(({ name, head, theirs }) => ({
    id: `${key}/${head.insideDiameter}`,
    what: `${name}, Sy 235 MPa, E 193 GPa`,
    ours: () => pressure(head),
    theirs,
    unit: 'MPa',
    tolerance: plusMinus(5e-5),
    reason: 'arithmetic by hand; says nothing about the formula',
    standing: 'computed from memory',
  }));

export const galletlyPerfect: Source = {
  key: 'galletly-blachut-1985',
  citation: 'Galletly & Blachut, Proc. IMechE C 199 (1985) 225: wrinkling pressure of perfect torispheres',
  checks: hand('galletly-blachut-1985', (head) => galletlyWrinkling(head, PROOF, YOUNG), 1.3311, 1.5162),
};

export const galletlyAllowed: Source = {
  key: 'galletly-1986',
  citation: 'Galletly, J. Pressure Vessel Technol. 108 (1986) 521: design pressure against wrinkling',
  checks: hand('galletly-1986', (head) => galletlyDesign(head, PROOF), 0.5413, 0.6254),
};

export const limitPressure: Source = {
  key: 'shield-drucker-1961',
  citation: 'Shield & Drucker, J. Appl. Mech. 28 (1961) 292: limit pressure of torispherical heads',
  checks: hand('shield-drucker-1961', (head) => shieldDrucker(head, PROOF), 0.6054, 0.7427),
};
