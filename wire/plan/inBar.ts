/** Figures of a plan as people state them: 1.5 bar, not 1.4999999999999998; 0.5 L/min, not 0.5000000000000001. */
import { toBar } from '@hoopwright/core/units';

const tidy = (value: number): number => Number(value.toPrecision(12));

export const inBar = (pressure: number): number => tidy(toBar(pressure));
/** mm³/s to L/min. */
export const perMinute = (flow: number): number => tidy((flow * 60) / 1e6);
