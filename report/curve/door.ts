/** The growth curve. */
export type { Band, Range, Ranges } from './band.ts';
export { type Ceiling, PUBLISHED_CEILING } from './ceiling.ts';
export { type CurveSheet, growthCurve, panelsFor } from './growthCurve.ts';
export { onPanel, type Panel, type Place } from './panel.ts';
export type { CurveForecast, CurveMoment } from './path.ts';
