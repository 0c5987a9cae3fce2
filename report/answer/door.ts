/** What a forecast says: ten lines, remarks, and its two sheets. */
export { headVerdict, knuckleSentence } from './knuckles.ts';
export { remarkSentence, standingNotes } from './remark.ts';
export { curveSvg, drawingSvg, growthBand, type SheetOrders } from './sheets.ts';
export { tenLines } from './tenLines.ts';
