/** A plan as people read it. */
export { figuresFor, type Figures, rangedText } from './figures.ts';
export { planSheet, type PlanSheet, type SheetOrders, type StepRow } from './planSheet.ts';
export type { Block, Section } from './sections.ts';
export { type PaperOrders, type PaperSource, planPaper } from './paper/paper.ts';
export { planText } from './planText.ts';
export { type Caution, type CautionId, cautionsOf, type SheetPart } from './words/caution.ts';
export { limitText } from './words/limit.ts';
export { refusalText } from './words/refusal.ts';
export { stepName, stepText } from './words/step.ts';
