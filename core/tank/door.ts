/** The tank, for other packages. */
export * from './tank.ts';
