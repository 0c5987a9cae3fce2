/** Where the shell is held: the poles on the axis, the cut at mid-height, and one height. */
import type { Work } from './work.ts';
import type { Shell } from './shell.ts';

/** A degree of freedom that does not move: node, and 0 radius, 1 height, 2 turn. */
export interface Grip {
  readonly node: number;
  readonly freedom: 0 | 1 | 2;
  /** Nodes whose parent is `node`. */
  readonly children: readonly number[];
}

export function gripsOf(shell: Shell): Grip[] {
  const { spine, half } = shell.mesh;
  const last = spine[spine.length - 1];
  const held: [number, 0 | 1 | 2][] = [
    [spine[0], 0],
    [spine[0], 2],
    [last, half ? 1 : 0],
    [last, 2],
  ];
  if (!half) held.push([foot(shell), 1]);
  return held.map(([node, freedom]) => ({ node, freedom, children: childrenOf(shell, node) }));
}

/** The tank stands on the free edge of its bottom skirt, else on its bottom tangent line. */
function foot(shell: Shell): number {
  const { pieces } = shell.mesh;
  const skirt = pieces.find((p) => p.span.part === 'skirt' && p.a.z < 0);
  const tangent = pieces.find((p) => p.span.part === 'barrel');
  if (skirt) return skirt.from;
  if (!tangent) throw new Error('a tank without a barrel has no tangent line to stand on');
  return tangent.from;
}

function childrenOf(shell: Shell, node: number): number[] {
  const children: number[] = [];
  shell.parent.forEach((parent, child) => {
    if (parent === node) children.push(child);
  });
  return children;
}

/** Turns the held rows and columns into those of the identity; their residual and area vanish. */
export function applyGrips(grips: readonly Grip[], work: Work): void {
  const { diagonal: D, link: U } = work.matrix;
  for (const { node, freedom, children } of grips) {
    const o = 9 * node;
    for (let k = 0; k < 3; k++) {
      D[o + 3 * freedom + k] = D[o + 3 * k + freedom] = 0;
      U[o + 3 * freedom + k] = 0;
      for (const child of children) U[9 * child + 3 * k + freedom] = 0;
    }
    D[o + 4 * freedom] = 1;
    work.residual[3 * node + freedom] = 0;
    work.area[3 * node + freedom] = 0;
  }
}
