/**
 * Computed for this project by a second program of independent solid finite elements: axisymmetric 8-node elements with
 * 2 x 2 Gauss points, two through the wall and about 1.2 mm long beside the joints, finite-strain J2 plasticity in
 * logarithmic strain with an exponential map, follower pressure on the wetted faces. It gives the first one's figures of
 * the tank with 2:1 heads (V0 188.011120 L). With elements half as large again litres differ by 0.0016 L or less.
 * All tanks: inside diameter 498 mm, 800 mm between tangent lines, wall 2 mm, E 193000 MPa, Poisson 0.29.
 * Radii are those of the outside face at the material height named, mm from the bottom tangent line.
 */
import type { FlowLaw } from '../../core/steel/hardening.ts';

export interface SolidRow {
  readonly p_MPa: number;
  readonly dV_L: number;
  /** In the order of `girths_mm`. */
  readonly radii_mm: readonly number[];
  /** Growth of the height from pole to pole, at mid-wall. */
  readonly rise_mm: number;
}

export interface SolidHeads {
  readonly name: string;
  readonly flow: FlowLaw;
  readonly top: 'ellipsoid' | 'torisphere';
  readonly bottom: 'ellipsoid' | 'torisphere';
  /** Inside depth of an ellipsoid. */
  readonly depth_mm: number;
  readonly headWall_mm: number;
  readonly ring?: { readonly at_mm: number; readonly width_mm: number; readonly thickness_mm: number };
  readonly V0_L: number;
  readonly girths_mm: readonly number[];
  readonly rows: readonly SolidRow[];
}

/** Torisphere: inside crown radius 498, inside knuckle radius 49.8 mm. */
export const CROWN_MM = 498;
export const KNUCKLE_MM = 49.8;

const SOFT: FlowLaw = { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 };
const FLAT: FlowLaw = { law: 'swift', K: 1000, n: 0.25, e0: 0.002 };

const row = (p_MPa: number, dV_L: number, radii_mm: readonly number[], rise_mm: number): SolidRow => ({
  p_MPa,
  dV_L,
  radii_mm,
  rise_mm,
});

export const SOLID_HEADS: readonly SolidHeads[] = [
  {
    name: 'torispherical heads',
    flow: SOFT,
    top: 'torisphere',
    bottom: 'torisphere',
    depth_mm: 0,
    headWall_mm: 2,
    V0_L: 180.271296,
    girths_mm: [400, 601.6],
    rows: [
      row(0.8, 0.4287623, [251.110441, 251.11044], 2.509922),
      row(1.6, 1.5530131, [251.221151, 251.221152], 12.50729),
      row(2.1, 3.2922713, [252.156633, 252.154772], 22.078012),
      row(2.6, 7.1210811, [255.191693, 255.104915], 31.396484),
      row(3.1, 12.143531, [259.612608, 259.183101], 39.884898),
      row(3.5, 17.4205479, [264.633262, 263.524689], 46.083674),
    ],
  },
  {
    name: '2:1 heads and a ring baffle at mid-barrel',
    flow: SOFT,
    top: 'ellipsoid',
    bottom: 'ellipsoid',
    depth_mm: 124,
    headWall_mm: 2,
    ring: { at_mm: 400, width_mm: 60, thickness_mm: 2 },
    V0_L: 187.845998,
    girths_mm: [602.749, 497.535],
    rows: [
      row(0.8, 0.2056635, [251.110441, 251.110471], 0.884426),
      row(1.6, 0.4170794, [251.221152, 251.221316], 1.820006),
      row(2.1, 1.5794404, [252.149058, 252.050153], 6.517268),
      row(2.6, 4.8316493, [255.045104, 254.561028], 14.2605),
      row(3.1, 8.9985648, [258.897165, 257.812394], 21.935778),
      row(3.5, 13.3001673, [262.797657, 261.264035], 27.806844),
    ],
  },
  {
    name: '2:1 heads of 1.5 mm, flush inside',
    flow: SOFT,
    top: 'ellipsoid',
    bottom: 'ellipsoid',
    depth_mm: 124.5,
    headWall_mm: 1.5,
    V0_L: 188.159301,
    girths_mm: [400, 601.6],
    rows: [
      row(0.8, 0.2261831, [251.110441, 251.110441], 1.126572),
      row(1.6, 0.6618258, [251.221151, 251.221151], 6.564032),
      row(2.1, 2.4190151, [252.156629, 252.15442], 17.274496),
      row(2.6, 6.4103677, [255.192049, 255.115488], 27.99456),
      row(3.1, 11.7109387, [259.617212, 259.23077], 38.195972),
      row(3.5, 17.3276592, [264.655063, 263.640254], 46.138204),
    ],
  },
  {
    name: '2:1 heads, another steel (1000, 0.25, 0.002)',
    flow: FLAT,
    top: 'ellipsoid',
    bottom: 'ellipsoid',
    depth_mm: 124,
    headWall_mm: 2,
    V0_L: 188.01112,
    girths_mm: [400, 601.6],
    rows: [
      row(0.8, 0.2093523, [251.110441, 251.110441], 0.881572),
      row(1.6, 0.420923, [251.221151, 251.221152], 1.777568),
      row(2.1, 0.8139797, [251.444641, 251.444599], 3.812596),
      row(2.6, 2.1063211, [252.349952, 252.349511], 7.831856),
      row(3.1, 4.2916553, [254.044231, 254.019464], 12.955058),
      row(3.5, 7.0414272, [256.41038, 256.256608], 17.402604),
    ],
  },
  {
    name: 'one head of each kind and a ring of 50 x 1.5 mm at 300 mm',
    flow: SOFT,
    top: 'ellipsoid',
    bottom: 'torisphere',
    depth_mm: 124.5,
    headWall_mm: 2,
    ring: { at_mm: 300, width_mm: 50, thickness_mm: 1.5 },
    V0_L: 184.109741,
    girths_mm: [551.022, 197.384],
    rows: [
      row(0.8, 0.3158038, [251.110441, 251.110398], 1.695277),
      row(1.6, 0.9822302, [251.221151, 251.22115], 7.160014),
      row(2.1, 2.3502914, [252.154897, 252.065305], 14.220765),
      row(2.6, 5.6808884, [255.142234, 254.593024], 22.746159),
      row(3.1, 10.152967, [259.330554, 257.938305], 30.952839),
    ],
  },
];
