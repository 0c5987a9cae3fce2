/** The whole contract of a store. */
import type { Claim } from './claim.ts';
import { KEEPING_CLAIMS } from './keepings.ts';
import { PLAN_CLAIMS } from './plans.ts';
import { PROJECT_CLAIMS } from './projects.ts';
import { RECORD_CLAIMS } from './records.ts';

export const STORE_CONTRACT: readonly Claim[] = [
  ...PROJECT_CLAIMS,
  ...KEEPING_CLAIMS,
  ...PLAN_CLAIMS,
  ...RECORD_CLAIMS,
];
