/** The growth curve. */
export { type Axis, axisFor } from './axis.ts';
export type { Band, Range, Ranges } from './band.ts';
export { type Ceiling, PUBLISHED_CEILING } from './ceiling.ts';
export { type CurveSheet, growthCurve, panelsFor } from './growthCurve.ts';
export { axisMarks, between, lineOn, onPanel, type Panel, type Place, xOf, yOf } from './panel.ts';
export type { CurveForecast, CurveMoment } from './path.ts';
