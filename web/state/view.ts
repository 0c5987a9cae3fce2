/** How the drawing is looked at: growth drawn how many times, what colours the wall, which place is pointed at. */
import type { FieldName, Times } from '@hoopwright/report/drawing';
import { create } from 'zustand';

export interface Looking {
  /** Absent: as many times as can be seen. */
  readonly times: Times | undefined;
  readonly colour: FieldName | undefined;
  /** Height as welded (mm over the bottom tangent line) and part of the place pointed at. */
  readonly place: { readonly part: string; readonly z: number } | undefined;
  /** The figure that is being changed on the drawing: its path, and which of those that show it. */
  readonly editing: { readonly path: string; readonly name: string } | undefined;
}

export const useLooking = create<Looking>(() => ({
  times: undefined,
  colour: undefined,
  place: undefined,
  editing: undefined,
}));

export const look = (change: Partial<Looking>): void => useLooking.setState(change);
