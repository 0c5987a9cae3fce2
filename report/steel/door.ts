/** The steel in words and as a drawing. */
export { STEEL_ENGLISH } from './english.ts';
export { steelCurveSvg } from './steelCurve.ts';
export { accountText, steelText } from './steelText.ts';
