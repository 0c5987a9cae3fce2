/** How soon a reading is on a screen. */

declare global {
  interface Window {
    litresShown?: Record<string, number>;
  }
}

/** In the page: when each figure of litres was first on the screen, in the frame after it was drawn, ms. */
export function noteLitres(): void {
  const shown: Record<string, number> = {};
  window.litresShown = shown;
  const look = (): void => {
    const text = document.querySelector('[data-figure="litres"]')?.textContent ?? '';
    const litres = /\d+\.\d\d/.exec(text)?.[0];
    if (litres !== undefined) shown[litres] ??= Date.now();
    requestAnimationFrame(look);
  };
  look();
}

/** From the instrument's word to the viewer's pixels, ms. Figures that come round again only make it longer. */
export function delaysOf(
  spoken: ReadonlyMap<string, number>,
  shown: readonly [string, number][],
): readonly number[] {
  const delays = shown.flatMap(([litres, at]) => {
    const said = spoken.get(litres);
    return said === undefined ? [] : [at - said];
  });
  return delays.sort((a, b) => a - b);
}
