/**
 * The draft as it was when a figure began to be typed: every key press counts from there, so that what belongs together
 * follows the figure meant and not the ones typed on the way to it.
 */
import type { FileDraft } from './edit.ts';

let base: { readonly path: string; readonly draft: FileDraft } | undefined;

export const beginEdit = (path: string, draft: FileDraft): void => {
  base = { path, draft };
};

/** The draft that the figure at this path is changed in. */
export const baseFor = (path: string, draft: FileDraft): FileDraft =>
  base?.path === path ? base.draft : draft;

/** The figure is done, or another draft has come onto the board. */
export const endEdit = (): void => {
  base = undefined;
};
