/** Sheets compared. */
export {
  type Compared,
  comparisonOf,
  type Comparison,
  type CompareOrders,
  compareSheet,
  compareSheets,
  type SheetRow,
  withSheet,
} from './compare.ts';
