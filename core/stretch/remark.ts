/** What the person should know of a forecast, as codes with their numbers; the sentences are made at the edge. */
import type { Duty } from '../tank/tank.ts';
import type { Finish } from './course.ts';
import type { FlatLimit } from './limit/flatHead.ts';
import type { Moment } from './growth.ts';
import type { Limit } from './limit/limit.ts';
import type { SeamState } from './limit/seams.ts';

export type Remark =
  | { readonly code: 'no maximum'; readonly reason: string }
  | { readonly code: 'bursts before target'; readonly target: number; readonly limit: Limit }
  /** Growth that was asked for (a fraction), and where the tank ends before. */
  | { readonly code: 'growth not reached'; readonly asked: number; readonly limit: Limit }
  | {
      readonly code: 'beyond evidence';
      readonly plastic: number;
      readonly evidence: number;
      readonly pressure: number;
    }
  | { readonly code: 'hold above target'; readonly pressure: number }
  /** In a hold at this pressure the wall thinned faster than it hardened, `after` seconds of it. */
  | { readonly code: 'gives way in hold'; readonly pressure: number; readonly after: number }
  /** A flat head dishes at `limit`; the path ends there. */
  | { readonly code: 'flat head'; readonly end: 'top' | 'bottom'; readonly limit: number }
  /** The long seam is strained more than the plate beside it (logarithmic hoop strains) at the release pressure. */
  | {
      readonly code: 'seam strain';
      readonly strain: number;
      readonly plate: number;
      readonly use: number;
    }
  | { readonly code: 'release stuck'; readonly reason: string }
  | { readonly code: 'no rate effect' }
  | { readonly code: 'power law' }
  | { readonly code: 'path stuck'; readonly reason: string; readonly pressure: number };

/** What the remarks are made from. */
export interface Findings {
  readonly target: number | undefined;
  readonly duty: Duty | undefined;
  readonly finish: Finish;
  readonly maximum: Limit | undefined;
  /** Where the tank is released; undefined where it does not get there. */
  readonly branch: Moment | undefined;
  readonly last: Moment;
  readonly flat: FlatLimit | undefined;
  readonly seam: SeamState | undefined;
  /** Plastic strain up to which every curve rests on evidence. */
  readonly evidence: number;
  readonly creeps: boolean;
  readonly powerLaw: boolean;
  /** Why the release did not come to its end, if it did not. */
  readonly releaseStuck: string | undefined;
}

export const remarksOn = (findings: Findings): Remark[] => [
  ...(findings.powerLaw ? [{ code: 'power law' } as const] : []),
  ...releaseRemarks(findings),
  ...holdRemarks(findings),
  ...endRemarks(findings),
  ...burstRemarks(findings),
  ...evidenceRemarks(findings),
  ...seamRemarks(findings),
];

const releaseRemarks = ({ releaseStuck }: Findings): Remark[] =>
  releaseStuck === undefined ? [] : [{ code: 'release stuck', reason: releaseStuck }];

function holdRemarks({ duty, target, creeps }: Findings): Remark[] {
  const holds = duty?.holds ?? [];
  const above = holds.filter((h) => target !== undefined && h.pressure > target * (1 + 1e-9));
  return [
    ...above.map(({ pressure }): Remark => ({ code: 'hold above target', pressure })),
    ...(holds.length > 0 && !creeps ? [{ code: 'no rate effect' } as const] : []),
  ];
}

function endRemarks({ finish, maximum, last, flat }: Findings): Remark[] {
  switch (finish.kind) {
    case 'stopped':
    case 'landed':
      return [];
    case 'flat head':
      return flat === undefined ? [] : [{ code: 'flat head', end: flat.end, limit: flat.pressure }];
    case 'gives way':
      return [{ code: 'gives way in hold', pressure: finish.pressure, after: finish.after }];
    case 'past maximum':
      return maximum === undefined ? [{ code: 'no maximum', reason: finish.kind }] : [];
    case 'stuck': {
      const stuck: Remark = { code: 'path stuck', reason: finish.reason, pressure: last.pressure };
      return maximum === undefined ? [stuck, { code: 'no maximum', reason: finish.reason }] : [stuck];
    }
  }
}

function burstRemarks({ target, maximum, branch }: Findings): Remark[] {
  if (target === undefined || maximum === undefined) return [];
  const held = branch !== undefined && maximum.growth >= branch.largest.growth;
  return held ? [] : [{ code: 'bursts before target', target, limit: maximum }];
}

function evidenceRemarks({ branch, evidence }: Findings): Remark[] {
  const plastic = branch?.plastic.anywhere ?? 0;
  if (branch === undefined || plastic <= evidence) return [];
  return [{ code: 'beyond evidence', plastic, evidence, pressure: branch.pressure }];
}

/** Strain of a seam over that of its plate that is worth a word: what a tape beside it can tell. Common practice, no source. */
const TELLING = 0.002;

function seamRemarks({ seam }: Findings): Remark[] {
  if (seam?.strain === undefined || seam.strain < seam.plate + TELLING) return [];
  const { strain, plate, use } = seam;
  return [{ code: 'seam strain', strain, plate, use }];
}
