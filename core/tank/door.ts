/** The tank, for other packages. */
export * from './tank.ts';
export { DIN_PROPORTIONS, type DinHead, dinRadii, type Dish, ellipsoid, torisphere } from './dish.ts';
export { knuckleVerdict, type KnuckleLoad, type KnuckleVerdict, type PublishedPressure } from './knuckle.ts';
export { type AreaReplacement, neededWall, NOT_IN_THE_PATH, replaceArea } from './opening.ts';
export { plateDeflection, plateLimitPressure, plateStress, type RoundPlate } from './plate.ts';
