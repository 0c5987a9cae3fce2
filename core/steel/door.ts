/** The steel, for other packages. */
export type { Flow, FlowLaw } from './hardening.ts';
export type { RateEffect, Steel } from './steel.ts';
