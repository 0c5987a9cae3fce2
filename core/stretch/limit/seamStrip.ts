/**
 * A long seam under the hoop force of the plate beside it: a strip in series. It does not soften the wall, it strains.
 * Plane strain along the seam, rigid-plastic: what is asked is the strain at several percent.
 */
import { peak, root } from '../../math/root.ts';
import type { Flow } from '../../steel/hardening.ts';

export interface SeamStrip {
  /** mm, before stretching. */
  readonly width: number;
  /** Flow stress of the seam over that of the plate. */
  readonly strength: number;
  /** Wall of the seam over that of the plate; 1 where it is flush. */
  readonly thickness: number;
}

export type SeamAnswer =
  | {
      readonly kind: 'held';
      /** Logarithmic hoop strain of the seam. */
      readonly hoop: number;
      /** What the seam adds to the girth beside plate of its width, mm. */
      readonly extraGirth: number;
      /** Hoop force of the plate over the largest the seam can carry. */
      readonly use: number;
    }
  /** The seam cannot carry what the plate carries at this strain. */
  | { readonly kind: 'parts'; readonly use: number };

const scratch = new Float64Array(2);
const PLASTIC_PER_HOOP = 2 / Math.sqrt(3);

/** Hoop force per length of seam or plate, over its initial thickness, at a hoop strain: flow stress x thinning. */
const hoopForce = (flow: Flow, hoop: number): number => {
  flow.at(PLASTIC_PER_HOOP * hoop, scratch);
  return PLASTIC_PER_HOOP * scratch[0] * Math.exp(-hoop);
};

/** What the seam does when the plate beside it stands at a hoop strain (logarithmic). */
export const seamBeside = (flow: Flow, seam: SeamStrip, plateHoop: number): SeamAnswer => {
  const share = seam.strength * seam.thickness;
  const asked = hoopForce(flow, plateHoop) / share;
  const top = peak((hoop) => hoopForce(flow, hoop), 0, 2);
  const use = asked / top.value;
  if (use > 1) return { kind: 'parts', use };
  const hoop = asked <= hoopForce(flow, 0) ? 0 : root((x) => hoopForce(flow, x) - asked, 0, top.x);
  return { kind: 'held', hoop, extraGirth: seam.width * (Math.exp(hoop) - Math.exp(plateHoop)), use };
};
