/** How figures are written for the person who reads: units as a whole, decimal mark, language. */

/** Units switch as a whole. `bar` and `MPa`: mm, L, kg beside it; `psi`: in, gal, lb. */
export type Units = 'bar' | 'MPa' | 'psi';

export interface Manner {
  readonly units: Units;
  readonly decimal: '.' | ',';
  readonly language: 'en';
}

export const USUAL_MANNER: Manner = { units: 'bar', decimal: '.', language: 'en' };
