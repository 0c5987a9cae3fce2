/** Kinds of danger on the day, each with its figures. */

export type Danger =
  | {
      readonly kind: 'energy';
      readonly of: 'wall' | 'water';
      readonly energy_J: number;
      readonly volume_L?: number;
    }
  | {
      readonly kind: 'energy';
      readonly of: 'air';
      readonly energy_J: number;
      readonly filling_L: number;
      readonly underPressure_L: number;
      readonly perLitre_J: number;
    }
  | {
      readonly kind: 'stand-off';
      readonly edition: '2008' | 'later';
      /** Air alone, as the method has it; and all the energy as if it were gas. */
      readonly air: StandOffFigures;
      readonly all: StandOffFigures;
      readonly stated_m?: number;
    }
  | { readonly kind: 'plug'; readonly name: string; readonly diameter_mm: number; readonly force_kN: number }
  | { readonly kind: 'hose'; readonly diameter_mm?: number; readonly force_kN?: number }
  | { readonly kind: 'release'; readonly first?: string; readonly second?: string }
  | {
      readonly kind: 'relief';
      readonly opens_bar?: number;
      readonly over_percent?: number;
      readonly flow_L_per_min?: number;
      readonly pump_L_per_min?: number;
    }
  | {
      readonly kind: 'mass';
      readonly tank_kg: number;
      readonly water_kg: number;
      readonly all_kg: number;
      readonly carries_kg?: number;
    }
  | {
      readonly kind: 'collapse';
      readonly pressure_bar?: number;
      /** Over one atmosphere. */
      readonly margin?: number;
      readonly ventMustBeOpen: boolean;
    }
  | {
      readonly kind: 'knuckle';
      readonly head: 'top' | 'bottom';
      readonly verdict: string;
      /** Why, where no published pressure applies. */
      readonly because: string;
      /** Pressure at the knuckle, and the lowest published one that applies, with its name. */
      readonly at_bar: number;
      readonly lowest?: { readonly name: string; readonly pressure_bar: number };
    }
  | { readonly kind: 'water'; readonly chloride_ppm?: number; readonly limit_ppm: number }
  | {
      readonly kind: 'cold';
      readonly site_C?: number;
      readonly water_C: number;
      readonly metalFrom_C: number;
    };

export interface StandOffFigures {
  readonly energy_J: number;
  readonly tnt_kg: number;
  readonly byEnergy_m: number;
  readonly distance_m: number;
  readonly floorGoverns: boolean;
}
