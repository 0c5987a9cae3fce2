/** A plan as people read it. */
export { figuresFor, type Figures } from './figures.ts';
export {
  type Block,
  planSheet,
  type PlanSheet,
  type Section,
  type SheetOrders,
  type StepRow,
} from './planSheet.ts';
export { type PaperOrders, type PaperSource, planPaper } from './paper/paper.ts';
export { planText } from './planText.ts';
export { type Caution, type CautionId, cautionsOf, type SheetPart } from './words/caution.ts';
export { refusalText } from './words/refusal.ts';
