/** The kinds of rows in the grade library. */

export type Grade =
  | '1.4301'
  | '1.4306'
  | '1.4307'
  | '1.4404'
  | '1.4311'
  | 'ASTM 304'
  | 'ASTM 304L'
  | 'ASTM 316L';

export type ProductForm = 'cold-rolled' | 'hot-rolled' | 'plate' | 'bar';

/** How a figure came to stand here. */
export type Confidence =
  /** Read in a source that was open at the time. */
  | 'seen'
  /** From memory, with high or middling confidence: never an acceptance limit without saying so. */
  | 'memory, high'
  | 'memory, middling';

export interface Sourced {
  readonly source: string;
  readonly confidence: Confidence;
}

/** What the standard promises at 20 °C, MPa; elongation after fracture as a fraction. */
export interface Minimum extends Sourced {
  readonly grade: Grade;
  /** Absent: the standard has one figure for every form of flat product. */
  readonly form?: ProductForm;
  readonly proof02: number;
  readonly proof10?: number;
  readonly strength: number;
  readonly strengthTo?: number;
  readonly elongation?: number;
}

/** What mills deliver, MPa. */
export interface Typical extends Sourced {
  readonly grade: Grade;
  readonly form: ProductForm;
  readonly thickness: number;
  readonly proof02: number;
  readonly proof10: number;
  readonly strength: number;
}

/** Young's modulus in MPa, density in t/mm³. */
export interface Physical extends Sourced {
  readonly grades: readonly Grade[];
  readonly young?: number;
  readonly poisson?: number;
  readonly density?: number;
}

/** Strengthened proof stress that a vessel standard allows after cold stretching, MPa. */
export interface Strengthened extends Sourced {
  readonly grade: Grade;
  readonly proof: number;
}
