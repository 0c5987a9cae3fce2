/** The steel in words and as a drawing. */
export { booksText } from './books.ts';
export { STEEL_ENGLISH } from './english.ts';
export { quickText, reachText } from './quick.ts';
export { rollingText } from './rolling.ts';
export { steelCurveSvg } from './steelCurve.ts';
export { accountText, steelText } from './steelText.ts';
